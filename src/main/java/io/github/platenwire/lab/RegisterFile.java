package io.github.platenwire.lab;

import io.github.platenwire.record.DurableFile;
import io.github.platenwire.record.TornFile;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.List;

/** The bytes of one register: whole lines, appended to and never changed. Stateless. */
final class RegisterFile {
  private RegisterFile() {}

  /** All whole lines; a torn last line is passed over. Empty if there is no file. */
  static List<String> wholeLines(Path file) throws IOException {
    return Files.exists(file) ? lines(Files.readAllBytes(file)) : List.of();
  }

  private static List<String> lines(byte[] bytes) {
    List<String> lines = new ArrayList<>();
    int from = 0;
    for (int i = 0; i < bytes.length; i++) {
      if (bytes[i] == '\n') {
        lines.add(new String(bytes, from, i - from, StandardCharsets.ISO_8859_1));
        from = i + 1;
      }
    }
    return lines;
  }

  /** Bytes after the last whole line. */
  static int tornBytes(Path file) throws IOException {
    if (!Files.exists(file)) {
      return 0;
    }
    byte[] bytes = Files.readAllBytes(file);
    return bytes.length - wholeLength(bytes);
  }

  private static int wholeLength(byte[] bytes) {
    int length = bytes.length;
    while (length > 0 && bytes[length - 1] != '\n') {
      length--;
    }
    return length;
  }

  /** Appends lines and forces them; a torn last line is set aside first. */
  static void append(Path file, List<String> lines) throws IOException {
    Path folder = file.toAbsolutePath().getParent();
    if (folder != null) {
      Files.createDirectories(folder);
    }
    long end = endOfWholeLines(file);
    try (FileChannel channel =
        FileChannel.open(file, StandardOpenOption.CREATE, StandardOpenOption.WRITE)) {
      channel.truncate(end);
      channel.position(end);
      ByteBuffer bytes =
          StandardCharsets.UTF_8.encode(String.join("\n", lines) + (lines.isEmpty() ? "" : "\n"));
      while (bytes.hasRemaining()) {
        channel.write(bytes);
      }
      channel.force(true);
    }
    DurableFile.forceName(file);
  }

  private static long endOfWholeLines(Path file) throws IOException {
    if (!Files.exists(file)) {
      return 0;
    }
    byte[] bytes = Files.readAllBytes(file);
    int whole = wholeLength(bytes);
    TornFile.keepTail(file, bytes, whole);
    return whole;
  }
}
