package io.github.platenwire.method;

import io.github.platenwire.quantity.Rounding;
import io.github.platenwire.quantity.Unit;
import io.github.platenwire.quantity.UnitSystem;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/**
 * Figures in words: SI first, inch-pound beside it, each rounded from the exact value. Stateless.
 */
final class BothUnits {
  private static final BigDecimal TENTH = new BigDecimal("0.1");

  private BothUnits() {}

  static String stress(double megapascals, Steps steps) {
    return both(megapascals, Unit.MEGAPASCAL, Unit.PSI, steps);
  }

  /** A stress with the system of units that is to stand first. */
  static String stress(double megapascals, Steps steps, UnitSystem first) {
    String si = rounded(megapascals, steps.si()) + " " + Unit.MEGAPASCAL.symbol();
    String inchPound =
        rounded(megapascalsToPsi(megapascals), steps.inchPound()) + " " + Unit.PSI.symbol();
    return first == UnitSystem.SI ? si + " (" + inchPound + ")" : inchPound + " (" + si + ")";
  }

  static String force(double newtons, Steps steps) {
    return both(newtons, Unit.KILONEWTON, Unit.POUND_FORCE, steps);
  }

  /** A value in the quantity's base unit, in two other units of that quantity. */
  static String both(double base, Unit si, Unit inchPound, Steps steps) {
    return rounded(si.fromBase(base), steps.si())
        + " "
        + si.symbol()
        + " ("
        + rounded(inchPound.fromBase(base), steps.inchPound())
        + " "
        + inchPound.symbol()
        + ")";
  }

  static String rounded(double value, BigDecimal step) {
    return Rounding.halfEven(value, step).toPlainString();
  }

  static String rounded(double value, String step) {
    return rounded(value, new BigDecimal(step));
  }

  /** A share between 0 and 1 in whole percent, never rounded up to 100 nor down to 0. */
  static String wholePercent(double share) {
    if (share > 0.99 && share < 1) {
      return "over 99 %";
    }
    return share > 0 && share < 0.01 ? "under 1 %" : rounded(share * 100, BigDecimal.ONE) + " %";
  }

  static String tenthPercent(double percent) {
    return rounded(percent, TENTH) + " %";
  }

  /** To six significant digits with a decimal point, without trailing noughts or exponent. */
  static String plain(double value) {
    BigDecimal six = BigDecimal.valueOf(value).round(new MathContext(6, RoundingMode.HALF_EVEN));
    return six.signum() == 0 ? "0" : six.stripTrailingZeros().toPlainString();
  }

  /** With a decimal point and fixed decimals, half to even. */
  static String fixed(double value, int decimals) {
    return BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_EVEN).toPlainString();
  }

  static double megapascalsToPsi(double megapascals) {
    return Unit.PSI.fromBase(megapascals);
  }
}
