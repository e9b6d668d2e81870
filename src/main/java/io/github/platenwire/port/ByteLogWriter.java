package io.github.platenwire.port;

import io.github.platenwire.reading.EscapedBytes;
import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

/**
 * Writes a byte log: what came out of a port and when, for playing it again.
 *
 * <p>The format, {@code platenwire-bytes 1}: ASCII, each line ended by LF. The first line is {@code
 * # platenwire-bytes 1}. Every other line is a chunk, whole microseconds since the origin, one
 * space, the bytes as {@link EscapedBytes} writes them; or a comment that begins with {@code #}.
 * Times never fall. Not thread-safe.
 */
public final class ByteLogWriter implements AutoCloseable {
  static final String FIRST_LINE = "# platenwire-bytes 1";
  private static final long NANOS_PER_MICRO = 1_000;

  private final OutputStream out;
  private final long originNanos;
  private long lastNanos;
  private byte[] line = new byte[1 << 12];

  private ByteLogWriter(OutputStream out, long originNanos) {
    this.out = out;
    this.originNanos = originNanos;
    lastNanos = originNanos;
  }

  /**
   * Begins a log.
   *
   * @param file must not exist yet
   * @param originNanos monotonic time from which the log counts
   * @throws IOException if the file exists or cannot be written
   */
  public static ByteLogWriter create(Path file, long originNanos) throws IOException {
    OutputStream out =
        new BufferedOutputStream(Files.newOutputStream(file, StandardOpenOption.CREATE_NEW));
    try {
      out.write((FIRST_LINE + "\n").getBytes(StandardCharsets.US_ASCII));
    } catch (IOException e) {
      out.close();
      throw e;
    }
    return new ByteLogWriter(out, originNanos);
  }

  /**
   * Appends a chunk.
   *
   * @throws IllegalArgumentException if it is empty, or older than the one before or the origin
   * @throws IOException if it cannot be written
   */
  public void append(Chunk chunk) throws IOException {
    if (chunk.bytes().length == 0 || chunk.arrivalNanos() - lastNanos < 0) {
      throw new IllegalArgumentException(
          "a chunk must hold bytes and be no older than the one before, bytes="
              + chunk.bytes().length
              + " arrivalNanos="
              + chunk.arrivalNanos()
              + " lastNanos="
              + lastNanos);
    }
    lastNanos = chunk.arrivalNanos();
    byte[] stamp =
        ((lastNanos - originNanos) / NANOS_PER_MICRO + " ").getBytes(StandardCharsets.US_ASCII);
    int most = stamp.length + chunk.bytes().length * EscapedBytes.LONGEST + 1;
    if (line.length < most) {
      line = new byte[most];
    }
    System.arraycopy(stamp, 0, line, 0, stamp.length);
    int end = EscapedBytes.encode(chunk.bytes(), 0, chunk.bytes().length, line, stamp.length);
    line[end] = '\n';
    out.write(line, 0, end + 1);
  }

  /**
   * Hands what was appended to the file system.
   *
   * @throws IOException if it cannot be written
   */
  public void flush() throws IOException {
    out.flush();
  }

  @Override
  public void close() throws IOException {
    out.close();
  }
}
