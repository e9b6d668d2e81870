package io.github.platenwire.report;

/** What a mark, a cell or a note tells beside its words; never by colour alone. Immutable. */
public enum Tone {
  /** Nothing special. */
  PLAIN("plain"),
  /** As it should be. */
  GOOD("good"),
  /** To be looked at. */
  CAUTION("caution"),
  /** Not as it should be. */
  BAD("bad");

  private final String style;

  Tone(String style) {
    this.style = style;
  }

  /** The style sheet's name for it. */
  String style() {
    return style;
  }
}
