package io.github.platenwire.device;

import java.io.ByteArrayOutputStream;

/**
 * Bytes as a definition file writes them: printable ASCII as it is, any other byte as {@code \xNN},
 * a backslash as {@code \\}. Control characters that TOML's own escapes give are taken too.
 * Stateless.
 */
final class ByteText {
  private ByteText() {}

  /**
   * The bytes that a text stands for.
   *
   * @throws IllegalArgumentException if an escape is wrong or a character is no ASCII; the message
   *     is fit for a person
   */
  static byte[] parse(String text) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    int at = 0;
    while (at < text.length()) {
      bytes.write(byteAt(text, at));
      at += lengthAt(text, at);
    }
    return bytes.toByteArray();
  }

  /** The byte, 0 to 255, that is written at an index. */
  static int byteAt(String text, int at) {
    char c = text.charAt(at);
    if (c > 0x7F) {
      throw new IllegalArgumentException(
          "'" + c + "' is no ASCII character; write the bytes that the device sends as \\xNN");
    }
    if (c != '\\') {
      return c;
    }
    if (text.startsWith("\\\\", at)) {
      return '\\';
    }
    if (text.startsWith("\\x", at) && at + 4 <= text.length()) {
      int high = Character.digit(text.charAt(at + 2), 16);
      int low = Character.digit(text.charAt(at + 3), 16);
      if (high >= 0 && low >= 0) {
        return high * 16 + low;
      }
    }
    throw new IllegalArgumentException(
        "after a backslash must come x and two hexadecimal digits, as in \\x03, or a second"
            + " backslash");
  }

  /** How many characters the byte at an index is written with. */
  static int lengthAt(String text, int at) {
    return text.charAt(at) != '\\' ? 1 : text.startsWith("\\x", at) ? 4 : 2;
  }

  /** A byte as a person reads it in a message. */
  static String show(int unsignedByte) {
    return unsignedByte > 0x20 && unsignedByte < 0x7F
        ? "'" + (char) unsignedByte + "'"
        : unsignedByte == ' ' ? "a space" : "the byte \\x" + hex(unsignedByte);
  }

  private static String hex(int unsignedByte) {
    String digits = "0123456789ABCDEF";
    return "" + digits.charAt(unsignedByte >> 4) + digits.charAt(unsignedByte & 15);
  }
}
