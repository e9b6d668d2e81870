package io.github.platenwire.terminal;

/** How a piece of text stands out. Never the only bearer of a meaning: words say it too. */
public enum Style {
  /** As the terminal writes by itself. */
  PLAIN(""),
  /** Bold. */
  STRONG("1"),
  /** All is well. */
  GOOD("32"),
  /** Worth a look. */
  WARNING("35"),
  /** Not as it must be. */
  BAD("1;31");

  private final String code;

  Style(String code) {
    this.code = code;
  }

  /**
   * Parameters of ECMA-48 "select graphic rendition" (from memory): foreground and weight only.
   * Magenta stands for a warning because yellow cannot be read on a light background.
   */
  String code() {
    return code;
  }
}
