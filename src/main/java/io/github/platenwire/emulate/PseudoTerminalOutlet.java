package io.github.platenwire.emulate;

import java.io.IOException;
import java.time.Duration;
import java.util.Arrays;

/**
 * Sends an emulated device's bytes through a pseudo-terminal, as a serial line does: a byte that
 * nobody reads in time is gone. On closing it waits until what was sent has been read, for the
 * system throws away bytes in flight when a line hangs up.
 */
public final class PseudoTerminalOutlet implements TwoWayOutlet {
  private static final Duration DRAIN_LIMIT = Duration.ofSeconds(5);

  private final PseudoTerminal line;
  private final byte[] received = new byte[4096];
  private long bytesUnheard;

  /** Sends to a line. */
  public PseudoTerminalOutlet(PseudoTerminal line) {
    this.line = line;
  }

  @Override
  public void send(byte[] bytes, int from, int length, long emulatedNanos) throws IOException {
    bytesUnheard += length - line.tryWrite(bytes, from, length);
  }

  @Override
  public byte[] receive() throws IOException {
    return Arrays.copyOf(received, Math.max(0, line.read(received)));
  }

  /** Bytes that found the line full, because nobody read it. */
  public long bytesUnheard() {
    return bytesUnheard;
  }

  /**
   * Waits until somebody has read what was sent.
   *
   * @param limit longest wait, in real time
   * @return whether it was read
   * @throws IOException if the line is closed
   */
  public boolean awaitReader(Duration limit) throws IOException {
    return line.awaitRead(limit);
  }

  @Override
  public void close() throws IOException {
    try {
      line.awaitRead(DRAIN_LIMIT);
    } finally {
      line.close();
    }
  }
}
