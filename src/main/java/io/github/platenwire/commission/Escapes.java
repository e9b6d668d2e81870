package io.github.platenwire.commission;

import java.util.Locale;

/** Writes bytes, one character of ISO 8859-1 each, as a definition writes them. Stateless. */
final class Escapes {
  private Escapes() {}

  /** As in spellings, codes and terminators: a backslash doubled, other bytes as {@code \xNN}. */
  static String bytes(String raw) {
    StringBuilder text = new StringBuilder();
    raw.chars().forEach(c -> text.append(one((char) c)));
    return text.toString();
  }

  /** As in a layout, where braces are doubled and a blank that must be there is {@code \x20}. */
  static String literal(String raw) {
    StringBuilder text = new StringBuilder();
    raw.chars()
        .mapToObj(c -> (char) c)
        .forEach(c -> text.append(c == '{' || c == '}' ? "" + c + c : c == ' ' ? "\\x20" : one(c)));
    return text.toString();
  }

  private static String one(char c) {
    if (c == '\\') {
      return "\\\\";
    }
    return c >= ' ' && c <= '~'
        ? Character.toString(c)
        : String.format(Locale.ROOT, "\\x%02X", (int) c);
  }
}
