package io.github.platenwire.bench;

import io.github.platenwire.port.Chunk;
import io.github.platenwire.port.Port;
import io.github.platenwire.reading.SystemClocks;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Optional;
import java.util.concurrent.TimeUnit;

/**
 * The least that a logger with a seal must do, and as fast as that can be done in Java: a number
 * and a time before each line as it came, the SHA-256 of it all, the file forced each quarter of a
 * second. It decodes nothing and follows nothing.
 */
final class BareReader implements LineReader {
  private static final long FORCE_NANOS = TimeUnit.MILLISECONDS.toNanos(250);
  private static final int LONGEST_PREFIX = 44;

  private byte[] rows = new byte[1 << 20];
  private int length;
  private long seq;
  private boolean atLineStart = true;

  @Override
  public void read(Port port, Path file, long lines) throws IOException {
    MessageDigest seal = sha256();
    long forced = SystemClocks.monotonic().nanos();
    long origin = forced;
    try (FileChannel channel =
        FileChannel.open(file, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE)) {
      while (seq < lines || !atLineStart) {
        Optional<Chunk> chunk = port.read();
        if (chunk.isPresent()) {
          append(chunk.get().bytes(), (chunk.get().arrivalNanos() - origin) / 1000);
          seal.update(rows, 0, length);
          write(channel);
        }
        long now = SystemClocks.monotonic().nanos();
        if (now - forced >= FORCE_NANOS) {
          channel.force(false);
          forced = now;
        }
      }
      channel.force(false);
    }
    seal.digest();
  }

  private void append(byte[] bytes, long elapsedMicros) {
    byte[] elapsed = decimal(elapsedMicros);
    for (byte each : bytes) {
      if (atLineStart) {
        seq++;
        room();
        put(decimal(seq));
        put(elapsed);
        atLineStart = false;
      }
      if (length == rows.length) {
        room();
      }
      rows[length++] = each;
      atLineStart = each == '\n';
    }
  }

  private void room() {
    if (rows.length - length < LONGEST_PREFIX) {
      rows = java.util.Arrays.copyOf(rows, 2 * rows.length);
    }
  }

  private void put(byte[] number) {
    System.arraycopy(number, 0, rows, length, number.length);
    length += number.length;
  }

  /** A number and a comma. */
  private static byte[] decimal(long number) {
    int digits = 1;
    for (long left = number / 10; left > 0; left /= 10) {
      digits++;
    }
    byte[] text = new byte[digits + 1];
    text[digits] = ',';
    long left = number;
    for (int at = digits - 1; at >= 0; at--) {
      text[at] = (byte) ('0' + left % 10);
      left /= 10;
    }
    return text;
  }

  private void write(FileChannel channel) throws IOException {
    ByteBuffer buffer = ByteBuffer.wrap(rows, 0, length);
    while (buffer.hasRemaining()) {
      channel.write(buffer);
    }
    length = 0;
  }

  static MessageDigest sha256() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }
}
