package io.github.platenwire.commission;

import io.github.platenwire.port.ByteLogReader;
import io.github.platenwire.port.Chunk;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Bytes that a device sent, in order. Immutable; safe for any thread.
 *
 * @param source where they come from, for messages
 * @param chunks the bytes as they arrived
 * @param timed whether the chunks' times are those of their arrival
 */
public record Sample(String source, List<Chunk> chunks, boolean timed) {
  /** More than a day of a fast line; what is longer is no sample. */
  private static final long MOST_BYTES = 64L << 20;

  /** Keeps the list from being changed. */
  public Sample {
    chunks = List.copyOf(chunks);
  }

  /**
   * Reads a byte log, or any other file as the bytes that a device sent.
   *
   * @throws IOException if it cannot be read, is empty or longer than 64 MiB, or is a byte log with
   *     a fault, named with its line
   */
  public static Sample read(Path file) throws IOException {
    if (Files.size(file) > MOST_BYTES) {
      throw new IOException(
          file + ": longer than 64 MiB; a minute of the device's bytes is enough");
    }
    List<Chunk> chunks = new ArrayList<>();
    boolean timed = ByteLogReader.isByteLog(file);
    if (timed) {
      try (ByteLogReader log = ByteLogReader.open(file)) {
        for (Optional<Chunk> c = log.next(); c.isPresent(); c = log.next()) {
          chunks.add(c.get());
        }
      }
    } else if (Files.size(file) > 0) {
      chunks.add(new Chunk(Files.readAllBytes(file), 0));
    }
    if (chunks.isEmpty()) {
      throw new IOException(file + ": there is not one byte in it that a device sent");
    }
    return new Sample(file.toString(), chunks, timed);
  }

  /** Bytes without times. */
  public static Sample of(String source, byte[] bytes) {
    return new Sample(source, List.of(new Chunk(bytes, 0)), /* timed= */ false);
  }

  /** All bytes, one after the other. */
  public byte[] bytes() {
    ByteArrayOutputStream all = new ByteArrayOutputStream();
    chunks.forEach(chunk -> all.writeBytes(chunk.bytes()));
    return all.toByteArray();
  }
}
