package io.github.platenwire.reading;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Locale;

/**
 * Writes any bytes as printable ASCII that a person can read, and reads them back.
 *
 * <p>Bytes 0x20 to 0x7E stand as they are, but a backslash is written {@code \\} and a number sign
 * {@code \x23}, so that no text can begin a comment line. Every other byte is written {@code \xNN}
 * with two upper-case hexadecimal digits. Each byte sequence has exactly one such text, and reading
 * back accepts no other: a text that was altered by hand shows. Stateless; safe for use by any
 * thread.
 */
public final class EscapedBytes {
  /** The most bytes of text that one byte can become. */
  public static final int LONGEST = 4;

  private static final byte[] HEX = "0123456789ABCDEF".getBytes(StandardCharsets.US_ASCII);

  private EscapedBytes() {}

  /**
   * Appends the text of some bytes to a buffer; allocates nothing.
   *
   * @param from holds the bytes
   * @param offset index of the first byte
   * @param length how many bytes, 0 or more
   * @param to where the text goes; needs room for {@value #LONGEST} times the length
   * @param at index in {@code to} of the first byte of text
   * @return index in {@code to} after the last byte of text
   * @throws IndexOutOfBoundsException if a range does not fit; {@code to} may then hold a part
   */
  public static int encode(byte[] from, int offset, int length, byte[] to, int at) {
    int end = at;
    for (int i = offset; i < offset + length; i++) {
      byte b = from[i];
      if (b >= ' ' && b <= '~' && b != '#' && b != '\\') {
        to[end++] = b;
      } else {
        end = escape(b, to, end);
      }
    }
    return end;
  }

  private static int escape(byte b, byte[] to, int at) {
    to[at] = '\\';
    if (b == '\\') {
      to[at + 1] = '\\';
      return at + 2;
    }
    to[at + 1] = 'x';
    to[at + 2] = HEX[(b >> 4) & 0xF];
    to[at + 3] = HEX[b & 0xF];
    return at + LONGEST;
  }

  /** The text of some bytes. */
  public static String encode(byte[] from) {
    byte[] text = new byte[Math.multiplyExact(from.length, LONGEST)];
    int end = encode(from, 0, from.length, text, 0);
    return new String(text, 0, end, StandardCharsets.US_ASCII);
  }

  /**
   * The bytes that have this text.
   *
   * @throws IllegalArgumentException if the text is not what {@link #encode(byte[])} writes; the
   *     message names the character, counted from 1
   */
  public static byte[] decode(String text) {
    byte[] bytes = new byte[text.length()];
    int count = 0;
    int i = 0;
    while (i < text.length()) {
      char c = text.charAt(i);
      if (c == '\\') {
        bytes[count++] = unescape(text, i);
        i += text.charAt(i + 1) == '\\' ? 2 : LONGEST;
      } else {
        bytes[count++] = plain(c, i);
        i++;
      }
    }
    return Arrays.copyOf(bytes, count);
  }

  private static byte plain(char c, int index) {
    if (!standsAsItIs(c)) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "character %d: U+%04X must be written as an escape, such as \\x23",
              index + 1,
              (int) c));
    }
    return (byte) c;
  }

  /** The byte of the escape that begins at the index; checks that it is there whole. */
  private static byte unescape(String text, int index) {
    if (text.startsWith("\\\\", index)) {
      return '\\';
    }
    int high = text.startsWith("\\x", index) ? digit(text, index + 2) : -1;
    int low = high < 0 ? -1 : digit(text, index + 3);
    if (low < 0) {
      throw new IllegalArgumentException(
          "character "
              + (index + 1)
              + ": a backslash must be followed by another one or by x and two of 0-9 A-F");
    }
    int value = high << 4 | low;
    if (value == '\\' || standsAsItIs((char) value)) {
      throw new IllegalArgumentException(
          "character " + (index + 1) + ": " + (char) value + " is not written in hexadecimal");
    }
    return (byte) value;
  }

  private static boolean standsAsItIs(char c) {
    return c >= ' ' && c <= '~' && c != '#' && c != '\\';
  }

  /** The value of an upper-case hexadecimal digit, or -1 if there is none at the index. */
  private static int digit(String text, int index) {
    char c = index < text.length() ? text.charAt(index) : '?';
    if (c >= '0' && c <= '9') {
      return c - '0';
    }
    return c >= 'A' && c <= 'F' ? c - 'A' + 10 : -1;
  }
}
