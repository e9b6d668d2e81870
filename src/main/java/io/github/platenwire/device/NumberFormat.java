package io.github.platenwire.device;

/**
 * How a device writes a number. Immutable.
 *
 * @param mark the decimal mark, or 0 if none is ever sent
 * @param digits exact count of digits, or 0 for any
 * @param sign whether a sign is sent
 * @param exponent whether an exponent may follow
 * @param impliedDecimals how many of the last digits stand after a mark that is not sent
 */
record NumberFormat(byte mark, int digits, Sign sign, boolean exponent, int impliedDecimals) {
  /** Whether a number carries a plus or minus. */
  enum Sign {
    REQUIRED,
    OPTIONAL,
    NONE,
    /** Plus, minus, or one blank for plus, just behind the last digit. */
    AFTER
  }

  ByteSet marks() {
    return mark == 0 ? ByteSet.NONE : ByteSet.of(mark);
  }

  /** What a number may begin with, blanks left aside. */
  ByteSet starts() {
    ByteSet signs = ByteSet.of('+', '-');
    return switch (sign) {
      case REQUIRED -> signs;
      case OPTIONAL -> signs.with(ByteSet.DIGITS).with(marks());
      case NONE, AFTER -> ByteSet.DIGITS.with(marks());
    };
  }

  /** What a number may hold after its first byte. */
  ByteSet rests() {
    ByteSet plain = ByteSet.DIGITS.with(marks());
    ByteSet gap = sign == Sign.NONE ? plain : plain.with(ByteSet.BLANKS);
    gap = sign == Sign.AFTER ? gap.with(ByteSet.of('+', '-')) : gap;
    return exponent ? gap.with(ByteSet.of('e', 'E', '+', '-')) : gap;
  }

  /** What could go on a number that might as well end before it. */
  ByteSet continues() {
    if (sign == Sign.AFTER) {
      return ByteSet.NONE; // the sign's place ends it
    }
    if (exponent) {
      return ByteSet.DIGITS.with(marks()).with(ByteSet.of('e', 'E'));
    }
    return digits > 0 ? marks() : ByteSet.DIGITS.with(marks());
  }
}
