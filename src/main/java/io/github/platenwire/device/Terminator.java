package io.github.platenwire.device;

import io.github.platenwire.toml.TomlException;
import io.github.platenwire.toml.TomlSection;

/**
 * The bytes that end a line. Immutable.
 *
 * <p>A terminator of LF alone takes a CR just before it along; one of CR alone takes LFs just after
 * it along. So a device that is set to send CR LF is read by either.
 */
final class Terminator {
  /** Longest terminator that a definition may state; real ones have one to three bytes. */
  static final int LONGEST = 8;

  private final byte[] bytes;
  private final int[] fallBack;

  Terminator(byte[] bytes) {
    if (bytes.length == 0 || bytes.length > LONGEST) {
      throw new IllegalArgumentException("a terminator has 1 to " + LONGEST + " bytes");
    }
    this.bytes = bytes.clone();
    this.fallBack = fallBacks(bytes);
  }

  /** Reads the key {@code terminator}. */
  static Terminator parse(TomlSection line) throws TomlException {
    String text = line.string("terminator");
    return switch (text) {
      case "CR" -> new Terminator(new byte[] {'\r'});
      case "LF" -> new Terminator(new byte[] {'\n'});
      case "CRLF" -> new Terminator(new byte[] {'\r', '\n'});
      default -> parseEscaped(line, text);
    };
  }

  private static Terminator parseEscaped(TomlSection line, String text) throws TomlException {
    String possible = "'" + text + "' is no terminator; possible: CR, LF, CRLF, or escaped bytes";
    try {
      int at = 0;
      while (at < text.length()) {
        int b = ByteText.byteAt(text, at);
        int length = ByteText.lengthAt(text, at);
        if (length != 4 && b >= 0x20) {
          // A misspelt name such as "crlf" must not pass for four letters.
          throw line.error("terminator", possible + " such as \"\\\\x03\"");
        }
        at += length;
      }
      return new Terminator(ByteText.parse(text));
    } catch (IllegalArgumentException e) {
      throw line.error("terminator", String.valueOf(e.getMessage()));
    }
  }

  // Knuth, Morris and Pratt: fallBack[m] is the length of the longest proper prefix that also ends
  // the first m bytes, so that a terminator is found however its bytes are split and repeated.
  private static int[] fallBacks(byte[] bytes) {
    int[] fallBack = new int[bytes.length + 1];
    int matched = 0;
    for (int i = 1; i < bytes.length; i++) {
      while (matched > 0 && bytes[i] != bytes[matched]) {
        matched = fallBack[matched];
      }
      if (bytes[i] == bytes[matched]) {
        matched++;
      }
      fallBack[i + 1] = matched;
    }
    return fallBack;
  }

  int length() {
    return bytes.length;
  }

  /**
   * How many bytes of the terminator the stream ends in after one more byte.
   *
   * @param matched how many it ended in before, less than {@link #length}
   */
  int advance(int matched, byte b) {
    int m = matched;
    while (m > 0 && bytes[m] != b) {
      m = fallBack[m];
    }
    return bytes[m] == b ? m + 1 : m;
  }

  /**
   * How many bytes the first line has that is not empty, with its terminator; -1 if none is whole.
   */
  int firstLine(byte[] stream, int length) {
    int matched = 0;
    boolean empty = true;
    for (int i = 0; i < length; i++) {
      matched = advance(matched, stream[i]);
      if (matched == bytes.length) {
        if (!empty) {
          return i + 1;
        }
        matched = 0;
      } else {
        empty &= matched > 0 || stream[i] == '\r' || stream[i] == '\n';
      }
    }
    return -1;
  }

  byte[] bytes() {
    return bytes.clone();
  }

  /** Whether a CR just before the terminator belongs to it. */
  boolean takesReturnBefore() {
    return bytes.length == 1 && bytes[0] == '\n';
  }

  /** Whether LFs just after the terminator belong to it. */
  boolean takesFeedsAfter() {
    return bytes.length == 1 && bytes[0] == '\r';
  }

  /** Whether a literal of a layout holds the whole terminator and so could never be met. */
  boolean isWithin(byte[] literal) {
    int matched = 0;
    for (byte b : literal) {
      matched = advance(matched, b);
      if (matched == bytes.length) {
        return true;
      }
    }
    return false;
  }

  /** How many lines that are not empty end in some bytes; the first may have begun before them. */
  int count(byte[] stream) {
    ByteSet own = ByteSet.of(bytes, 0, bytes.length).with(ByteSet.of('\r', '\n'));
    int lines = 0;
    int matched = 0;
    boolean empty = false;
    for (byte b : stream) {
      matched = advance(matched, b);
      empty &= own.contains(b);
      if (matched == bytes.length) {
        lines += empty ? 0 : 1;
        empty = true;
        matched = 0;
      }
    }
    return lines;
  }
}
