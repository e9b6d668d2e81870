package io.github.platenwire.commission;

/**
 * One piece of a line. Immutable.
 *
 * @param kind what it looks like
 * @param text its characters
 * @param from index of its first character in the line
 */
record Token(Kind kind, String text, int from) {
  /** What a piece looks like. */
  enum Kind {
    /** Digits, perhaps with sign, mark and exponent. */
    NUMBER,
    /** Letters. */
    WORD,
    /** A date or a time of day. */
    TIME,
    /** Two or more of the same sign, as sent at overload. */
    DASHES,
    /** Any other character by itself. */
    MARK,
    /** A check value at the line's end. */
    CHECK
  }

  /** Index after its last character. */
  int to() {
    return from + text.length();
  }
}
