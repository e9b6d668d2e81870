package io.github.platenwire.report;

/** Makes any text safe to stand in XHTML. Stateless. */
final class Markup {
  private static final char UNPRINTABLE = '\uFFFD';

  private Markup() {}

  /**
   * The text with every character that means something to XML written out, and every character that
   * XML cannot hold at all shown as the replacement character.
   */
  static String escape(String text) {
    StringBuilder safe = new StringBuilder(text.length() + 16);
    text.codePoints().forEach(point -> append(safe, point));
    return safe.toString();
  }

  private static void append(StringBuilder safe, int point) {
    switch (point) {
      case '&' -> safe.append("&amp;");
      case '<' -> safe.append("&lt;");
      case '>' -> safe.append("&gt;");
      case '"' -> safe.append("&quot;");
      case '\'' -> safe.append("&#39;");
      default -> safe.appendCodePoint(isAllowed(point) ? point : UNPRINTABLE);
    }
  }

  /** Production 2 of XML 1.0 (from memory). */
  private static boolean isAllowed(int point) {
    boolean blank = point == '\t' || point == '\n' || point == '\r';
    boolean surrogate = point >= 0xD800 && point <= 0xDFFF;
    boolean never = point == 0xFFFE || point == 0xFFFF;
    return blank || (point >= 0x20 && !surrogate && !never);
  }
}
