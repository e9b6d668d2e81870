package io.github.platenwire.report;

/**
 * One cell of a table on a page. Immutable.
 *
 * @param shown what people see
 * @param value what other programs read: a number in full, or the words
 * @param tone how it is to be taken
 */
public record Cell(Inline shown, String value, Tone tone) {
  /** A cell of words. */
  public static Cell of(Inline shown) {
    return new Cell(shown, shown.plain(), Tone.PLAIN);
  }

  /** A cell of plain words. */
  public static Cell of(String words) {
    return of(Inline.text(words));
  }

  /** A number, shown rounded and handed on in full; empty to other programs if it is none. */
  public static Cell of(String shown, double exact) {
    return new Cell(
        Inline.text(shown), Double.isFinite(exact) ? Double.toString(exact) : "", Tone.PLAIN);
  }

  /** The same cell in another tone. */
  public Cell in(Tone other) {
    return new Cell(shown, value, other);
  }
}
