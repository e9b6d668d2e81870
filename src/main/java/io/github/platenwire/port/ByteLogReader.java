package io.github.platenwire.port;

import io.github.platenwire.reading.EscapedBytes;
import java.io.BufferedInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Optional;

/** Reads the chunks of a byte log in order, one line at a time. Not thread-safe. */
public final class ByteLogReader implements AutoCloseable {
  private static final int LONGEST_LINE = 1 << 24;
  private static final long NANOS_PER_MICRO = 1_000;

  private final Path file;
  private final InputStream in;
  private final ByteArrayOutputStream line = new ByteArrayOutputStream();
  private int lineNumber;
  private long lastMicros;

  private ByteLogReader(Path file, InputStream in) {
    this.file = file;
    this.in = in;
  }

  /**
   * Opens a log and reads its first line.
   *
   * @throws IOException if it cannot be read or is no byte log; the message begins with file and
   *     line where there is one
   */
  public static ByteLogReader open(Path file) throws IOException {
    InputStream in = new BufferedInputStream(Files.newInputStream(file), 1 << 16);
    try {
      ByteLogReader reader = new ByteLogReader(file, in);
      if (!reader.nextLine() || !reader.text().equals(ByteLogWriter.FIRST_LINE)) {
        reader.lineNumber = 1;
        throw reader.wrong("this is no byte log: the first line must be " + firstLine());
      }
      return reader;
    } catch (IOException e) {
      in.close();
      throw e;
    }
  }

  /**
   * Whether a file begins as a byte log does.
   *
   * @throws IOException if it cannot be read
   */
  public static boolean isByteLog(Path file) throws IOException {
    byte[] first = (ByteLogWriter.FIRST_LINE + "\n").getBytes(StandardCharsets.US_ASCII);
    try (InputStream in = Files.newInputStream(file)) {
      return Arrays.equals(first, in.readNBytes(first.length));
    }
  }

  private static String firstLine() {
    return "'" + ByteLogWriter.FIRST_LINE + "'";
  }

  /**
   * Reads a whole log to see that it is sound.
   *
   * @throws IOException naming file and line of the first fault
   */
  static void check(Path file) throws IOException {
    try (ByteLogReader reader = open(file)) {
      while (reader.next().isPresent()) {
        // each line is checked as it is read
      }
    }
  }

  /**
   * The next chunk, its time counted from the log's origin; empty at the end of the log.
   *
   * @throws IOException naming file and line of a fault
   */
  public Optional<Chunk> next() throws IOException {
    while (nextLine()) {
      String text = text();
      if (!text.startsWith("#")) {
        return Optional.of(chunk(text));
      }
    }
    return Optional.empty();
  }

  private Chunk chunk(String text) throws IOException {
    int space = text.indexOf(' ');
    String digits = text.substring(0, Math.max(0, space));
    if (!digits.matches("0|[1-9][0-9]{0,14}")) {
      throw wrong("a line must be whole microseconds, one space, and the bytes");
    }
    long micros = Long.parseLong(digits);
    if (micros < lastMicros) {
      throw wrong("the time " + micros + " is earlier than " + lastMicros + " of the line before");
    }
    lastMicros = micros;
    byte[] bytes = bytes(text.substring(space + 1));
    if (bytes.length == 0) {
      throw wrong("there are no bytes after the time");
    }
    return new Chunk(bytes, micros * NANOS_PER_MICRO);
  }

  private byte[] bytes(String escaped) throws IOException {
    try {
      return EscapedBytes.decode(escaped);
    } catch (IllegalArgumentException e) {
      throw wrong("in the bytes, " + e.getMessage());
    }
  }

  /** Reads one line into {@link #line}; false at the end of the file. */
  private boolean nextLine() throws IOException {
    line.reset();
    lineNumber++;
    int b = in.read();
    if (b < 0) {
      return false;
    }
    while (b >= 0 && b != '\n') {
      if (line.size() == LONGEST_LINE) {
        throw wrong("the line is longer than any that a byte log has");
      }
      line.write(b);
      b = in.read();
    }
    if (b < 0) {
      throw wrong("the last line is cut short; remove it to play the rest");
    }
    return true;
  }

  /** The line; bytes beyond ASCII become characters that no rule accepts. */
  private String text() {
    return line.toString(StandardCharsets.ISO_8859_1);
  }

  private IOException wrong(String what) {
    return new IOException(file + ":" + lineNumber + ": " + what);
  }

  @Override
  public void close() throws IOException {
    in.close();
  }
}
