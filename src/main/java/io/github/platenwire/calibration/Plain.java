package io.github.platenwire.calibration;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/** Numbers as people write them: without exponent and needless zeros. Stateless. */
final class Plain {
  private Plain() {}

  /** A finite number to so many significant digits. */
  static String digits(double value, int digits) {
    BigDecimal rounded =
        BigDecimal.valueOf(value).round(new MathContext(digits, RoundingMode.HALF_EVEN));
    return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
  }

  /** A finite number as it was written. */
  static String number(double value) {
    return digits(value, 17);
  }
}
