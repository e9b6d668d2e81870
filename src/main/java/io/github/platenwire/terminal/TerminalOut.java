package io.github.platenwire.terminal;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.Charset;

/**
 * Where text for a person goes. A display may never stop a test: once writing has failed, because
 * the terminal is gone or a pipe was closed, everything more is dropped. Safe for any thread; each
 * call is written whole.
 */
public final class TerminalOut {
  private final OutputStream out;
  private final Charset charset;
  private boolean broken;

  /**
   * Writes to a stream.
   *
   * @param out is flushed at the end of each call
   * @param charset a character it cannot write becomes a question mark
   */
  public TerminalOut(OutputStream out, Charset charset) {
    this.out = out;
    this.charset = charset;
  }

  /** Writes a text as it is. */
  public synchronized void print(String text) {
    if (broken) {
      return;
    }
    try {
      out.write(text.getBytes(charset));
      out.flush();
    } catch (IOException e) {
      broken = true;
    }
  }

  /** Writes lines, each with an end of line. */
  public void lines(Iterable<String> lines) {
    StringBuilder text = new StringBuilder();
    lines.forEach(line -> text.append(line).append('\n'));
    print(text.toString());
  }

  /** Whether writing has failed. */
  public synchronized boolean broken() {
    return broken;
  }
}
