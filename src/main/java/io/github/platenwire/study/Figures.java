package io.github.platenwire.study;

import io.github.platenwire.quantity.Rounding;
import io.github.platenwire.quantity.Unit;
import io.github.platenwire.quantity.UnitSystem;
import io.github.platenwire.statistics.Interval;
import java.math.BigDecimal;
import java.math.RoundingMode;

/** Figures as text, with a point, whatever the machine's language. Stateless. */
final class Figures {
  private static final int DIGITS = 3;
  private static final int MOST_DECIMALS = 9;
  private static final BigDecimal MEGAPASCAL_STEP = new BigDecimal("0.1");
  private static final BigDecimal PSI_STEP = BigDecimal.TEN;

  private Figures() {}

  /** Decimals that show a value with three digits: 1.42, 12.3, 0.952, 740. */
  static int decimals(double value) {
    return decimals(value, DIGITS);
  }

  private static int decimals(double value, int digits) {
    if (value == 0 || !Double.isFinite(value)) {
      return digits - 1;
    }
    int leading = (int) Math.floor(Math.log10(Math.abs(value)));
    return Math.max(0, Math.min(MOST_DECIMALS, digits - 1 - leading));
  }

  /** Decimals that show an interval's half width with two digits, and no fewer of the value. */
  static int decimalsWithin(double value, Interval interval) {
    double half = interval.halfWidth();
    return half > 0 && Double.isFinite(half) ? decimals(half, 2) : decimals(value);
  }

  /** A finite value with so many decimals; an infinite one in words. */
  static String fixed(double value, int decimals) {
    if (Double.isInfinite(value)) {
      return value > 0 ? "no upper end" : "no lower end";
    }
    return BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_EVEN).toPlainString();
  }

  /** A value with three digits. */
  static String plain(double value) {
    return fixed(value, decimals(value));
  }

  /** An interval's ends with so many decimals. */
  static String interval(Interval interval, int decimals) {
    return fixed(interval.low(), decimals) + " to " + fixed(interval.high(), decimals);
  }

  /** How a sentence about an age begins; not at all where the age is not known. */
  static String atAge(double ageDays) {
    return Double.isNaN(ageDays) ? "" : "At " + age(ageDays) + " ";
  }

  /** An age in days, in words. */
  static String age(double ageDays) {
    if (Double.isNaN(ageDays)) {
      return "an age that is not known";
    }
    String days = BigDecimal.valueOf(ageDays).stripTrailingZeros().toPlainString();
    return days + (ageDays == 1 ? " day" : " days");
  }

  /** A share as a percentage with no more digits than it has, such as 5 % or 2.5 %. */
  static String plainPercent(double share) {
    return BigDecimal.valueOf(share).movePointRight(2).stripTrailingZeros().toPlainString() + " %";
  }

  /** Numbers of specimens. */
  static String counts(int first, int second) {
    return "n = " + first + " and " + second;
  }

  /** A stress in both units, to 0.1 MPa and 10 psi (the steps of ASTM C39, from memory). */
  static String stress(double megapascals, UnitSystem first) {
    return both(megapascals(megapascals) + " MPa", psi(megapascals) + " psi", first);
  }

  /** An interval of stress in both units. */
  static String stressInterval(Interval megapascals, UnitSystem first) {
    String si = megapascals(megapascals.low()) + " to " + megapascals(megapascals.high()) + " MPa";
    String inchPound = psi(megapascals.low()) + " to " + psi(megapascals.high()) + " psi";
    return beside(si, inchPound, first);
  }

  /** One thing in two units, the second in brackets. */
  static String both(String si, String inchPound, UnitSystem first) {
    return first == UnitSystem.SI ? si + " (" + inchPound + ")" : inchPound + " (" + si + ")";
  }

  /** One thing in two units, within brackets. */
  static String beside(String si, String inchPound, UnitSystem first) {
    return first == UnitSystem.SI ? si + ", " + inchPound : inchPound + ", " + si;
  }

  private static String megapascals(double megapascals) {
    return Rounding.halfEven(megapascals, MEGAPASCAL_STEP).toPlainString();
  }

  private static String psi(double megapascals) {
    return Rounding.halfEven(Unit.PSI.fromBase(megapascals), PSI_STEP).toPlainString();
  }

  /** A load in both units. */
  static String load(double newtons, UnitSystem first) {
    return both(
        plain(Unit.KILONEWTON.fromBase(newtons)) + " kN",
        plain(Unit.KIP.fromBase(newtons)) + " kip",
        first);
  }

  /** A width or depth in both units. */
  static String width(double millimetres, UnitSystem first) {
    return both(plain(millimetres) + " mm", plain(Unit.INCH.fromBase(millimetres)) + " in.", first);
  }

  /** How large a probability is: "= 0.41", "= 0.012" or "below 0.001". */
  static String probability(double probability) {
    if (probability < 0.001) {
      return "below 0.001";
    }
    return "= " + fixed(probability, probability < 0.1 ? 3 : 2);
  }
}
