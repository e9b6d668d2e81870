package io.github.platenwire.terminal;

import java.util.ArrayList;
import java.util.List;

/**
 * How many columns a text takes on a terminal, and texts cut, padded and wrapped to columns. For
 * texts without control characters. Stateless.
 */
final class TextWidth {
  private TextWidth() {}

  static int columns(String text) {
    return text.codePoints().map(TextWidth::columns).sum();
  }

  private static int columns(int point) {
    int type = Character.getType(point);
    if (type == Character.NON_SPACING_MARK || type == Character.ENCLOSING_MARK) {
      return 0;
    }
    return wide(point) ? 2 : 1;
  }

  /** The blocks whose characters are wide by Unicode Standard Annex 11 (from memory, roughly). */
  private static boolean wide(int point) {
    return (point >= 0x1100 && point <= 0x115F)
        || (point >= 0x2E80 && point <= 0xA4CF)
        || (point >= 0xAC00 && point <= 0xD7A3)
        || (point >= 0xF900 && point <= 0xFAFF)
        || (point >= 0xFE30 && point <= 0xFE6F)
        || (point >= 0xFF00 && point <= 0xFF60)
        || (point >= 0xFFE0 && point <= 0xFFE6)
        || (point >= 0x1F300 && point <= 0x1FAFF)
        || (point >= 0x20000 && point <= 0x3FFFD);
  }

  /** The whole text if it fits, else its beginning with a sign that something was cut. */
  static String clip(String text, int columns, String cutSign) {
    if (columns(text) <= columns) {
      return text;
    }
    String sign = columns(cutSign) < columns ? cutSign : "";
    return head(text, columns - columns(sign)) + sign;
  }

  /** As much of the beginning as fits. */
  static String head(String text, int columns) {
    int used = 0;
    int end = 0;
    while (end < text.length()) {
      int point = text.codePointAt(end);
      used += columns(point);
      if (used > columns) {
        break;
      }
      end += Character.charCount(point);
    }
    return text.substring(0, end);
  }

  static String padRight(String text, int columns) {
    return text + " ".repeat(Math.max(0, columns - columns(text)));
  }

  static String padLeft(String text, int columns) {
    return " ".repeat(Math.max(0, columns - columns(text))) + text;
  }

  /** Lines of at most so many columns, broken at spaces, within a word only if it must be. */
  static List<String> wrap(String text, int columns) {
    int room = Math.max(2, columns);
    List<String> lines = new ArrayList<>();
    StringBuilder line = new StringBuilder();
    for (String word : text.strip().split("\\s+", -1)) {
      if (line.length() > 0 && columns(line.toString()) + 1 + columns(word) > room) {
        lines.add(line.toString());
        line.setLength(0);
      }
      line.append(line.length() > 0 ? " " : "").append(word);
      while (columns(line.toString()) > room) {
        String head = head(line.toString(), room);
        lines.add(head);
        line.delete(0, head.length());
      }
    }
    lines.add(line.toString());
    return lines;
  }
}
