package io.github.platenwire.toml;

import java.util.Locale;

/** Writes values as TOML text that {@link TomlSection} reads back equal. Stateless. */
public final class TomlText {
  private TomlText() {}

  /** A basic string in double quotes, control and non-printable characters escaped. */
  public static String quote(String value) {
    StringBuilder out = new StringBuilder(value.length() + 2).append('"');
    for (int i = 0; i < value.length(); i++) {
      char c = value.charAt(i);
      switch (c) {
        case '"' -> out.append("\\\"");
        case '\\' -> out.append("\\\\");
        case '\n' -> out.append("\\n");
        case '\r' -> out.append("\\r");
        case '\t' -> out.append("\\t");
        default -> {
          if (c < 0x20 || c == 0x7F) {
            out.append(String.format(Locale.ROOT, "\\u%04X", (int) c));
          } else {
            out.append(c);
          }
        }
      }
    }
    return out.append('"').toString();
  }

  /**
   * A multi-line basic string; line feeds stay as they are, so that the text can be read where it
   * stands.
   */
  public static String block(String value) {
    StringBuilder out = new StringBuilder(value.length() + 16).append("\"\"\"\n");
    for (int i = 0; i < value.length(); i++) {
      char c = value.charAt(i);
      if (c == '\\' || c == '"') {
        out.append('\\').append(c);
      } else if (c != '\n' && c != '\t' && (c < 0x20 || c == 0x7F)) {
        out.append(String.format(Locale.ROOT, "\\u%04X", (int) c));
      } else {
        out.append(c);
      }
    }
    return out.append("\"\"\"").toString();
  }

  /** A key, bare where TOML allows it, else quoted. */
  public static String key(String name) {
    return name.matches("[A-Za-z0-9_-]+") ? name : quote(name);
  }

  /**
   * A float that reads back as the same double.
   *
   * @throws IllegalArgumentException if the value is not finite, which no document may hold
   */
  public static String number(double value) {
    if (!Double.isFinite(value)) {
      throw new IllegalArgumentException("not finite, value=" + value);
    }
    String text = Double.toString(value);
    return text.contains("E") ? text.replace("E", "e") : text;
  }
}
