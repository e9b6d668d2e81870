package io.github.platenwire.terminal;

import io.github.platenwire.quantity.Unit;
import io.github.platenwire.quantity.UnitSystem;
import java.util.Locale;

/**
 * How a live figure is written in both systems of units: always with the same decimals, so that its
 * digits stay in place while it changes.
 */
enum Shown {
  WIDTH(Unit.MILLIMETRE, 3, Unit.INCH, 4),
  LOAD(Unit.KILONEWTON, 2, Unit.POUND_FORCE, 0),
  STRESS(Unit.MEGAPASCAL, 2, Unit.PSI, 0),
  MODULUS(Unit.MEGAPASCAL, 0, Unit.PSI, 0),
  RATE(Unit.MEGAPASCAL_PER_SECOND, 3, Unit.PSI_PER_SECOND, 1);

  private final Unit si;
  private final int siDecimals;
  private final Unit inchPound;
  private final int inchPoundDecimals;

  Shown(Unit si, int siDecimals, Unit inchPound, int inchPoundDecimals) {
    this.si = si;
    this.siDecimals = siDecimals;
    this.inchPound = inchPound;
    this.inchPoundDecimals = inchPoundDecimals;
  }

  Unit unit(UnitSystem system) {
    return system == UnitSystem.SI ? si : inchPound;
  }

  /** The bare number of a value given in the quantity's base unit; two hyphens while unknown. */
  String number(double base, UnitSystem system) {
    int decimals = system == UnitSystem.SI ? siDecimals : inchPoundDecimals;
    return decimal(unit(system).fromBase(base), decimals);
  }

  /** {@code 54.91 kN (12345 lbf)}. */
  String both(double base, UnitSystem first) {
    return one(base, first) + " (" + one(base, other(first)) + ")";
  }

  String one(double base, UnitSystem system) {
    return number(base, system) + " " + unit(system).symbol();
  }

  /** {@code 0.20–0.30 MPa/s (29–44 psi/s)}. */
  String range(double low, double high, UnitSystem first) {
    return oneRange(low, high, first) + " (" + oneRange(low, high, other(first)) + ")";
  }

  private String oneRange(double low, double high, UnitSystem system) {
    return number(low, system) + "–" + one(high, system);
  }

  static UnitSystem other(UnitSystem system) {
    return system == UnitSystem.SI ? UnitSystem.INCH_POUND : UnitSystem.SI;
  }

  /** A number with a decimal point and fixed decimals; never a negative zero. */
  static String decimal(double value, int decimals) {
    if (!Double.isFinite(value)) {
      return "--";
    }
    String text = String.format(Locale.ROOT, "%." + decimals + "f", value);
    boolean zero = text.chars().noneMatch(c -> c >= '1' && c <= '9');
    return zero && text.startsWith("-") ? text.substring(1) : text;
  }
}
