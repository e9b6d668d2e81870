package io.github.platenwire.lab;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;

/** Reads the text files of a lab folder; never writes. Stateless. */
final class TextFile {
  private TextFile() {}

  /** A file's bytes; {@code source} is its name for messages, relative to the lab folder. */
  static byte[] bytes(Path file, String source) throws LabException {
    try {
      return Files.readAllBytes(file);
    } catch (NoSuchFileException e) {
      throw new LabException(
          source
              + ": there is no such file in the lab folder "
              + file.toAbsolutePath().getParent()
              + "; 'platenwire init' on that folder puts back what is missing",
          e);
    } catch (IOException e) {
      throw new LabException(
          source
              + ": cannot be read ("
              + e
              + "); close it in other programs and check who may read it",
          e);
    }
  }

  /** A file as UTF-8 text, without the byte order mark that some editors put first. */
  static String utf8(Path file, String source) throws LabException {
    byte[] bytes = bytes(file, source);
    try {
      return withoutMark(decode(bytes, StandardCharsets.UTF_8));
    } catch (CharacterCodingException e) {
      throw new LabException(
          source
              + ":"
              + firstBadLine(bytes)
              + ": a letter here is not UTF-8; save the file as UTF-8 text",
          e);
    }
  }

  /** Decodes without passing over or replacing anything. */
  static String decode(byte[] bytes, Charset charset) throws CharacterCodingException {
    return charset
        .newDecoder()
        .onMalformedInput(CodingErrorAction.REPORT)
        .onUnmappableCharacter(CodingErrorAction.REPORT)
        .decode(ByteBuffer.wrap(bytes))
        .toString();
  }

  static String withoutMark(String text) {
    return text.startsWith("\uFEFF") ? text.substring(1) : text;
  }

  /** The line, from 1, of the first byte that is no UTF-8. */
  private static int firstBadLine(byte[] bytes) {
    String replaced = new String(bytes, StandardCharsets.UTF_8);
    int bad = replaced.indexOf('\uFFFD');
    return 1 + (int) replaced.substring(0, Math.max(0, bad)).chars().filter(c -> c == '\n').count();
  }
}
