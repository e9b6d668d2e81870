package io.github.platenwire.study;

import io.github.platenwire.quantity.Quantity;
import io.github.platenwire.quantity.Unit;
import io.github.platenwire.statistics.Interval;

/**
 * How one figure's values are written: in both systems of units, stresses to the steps of ASTM C39,
 * everything else with three digits. Immutable.
 *
 * @param si the unit of the values
 * @param other the unit beside it; the same where the trade has no other
 */
record FigureText(Unit si, Unit other) {
  /** Of strengths. */
  static final FigureText STRESS = new FigureText(Unit.MEGAPASCAL, Unit.PSI);

  boolean isStress() {
    return si.quantity() == Quantity.STRESS;
  }

  /** A value with both units, such as 9.4 MPa (1360 psi). */
  String value(double value) {
    if (isStress()) {
      return Figures.stress(si.toBase(value));
    }
    String first = Figures.plain(value) + symbol(si);
    return other == si ? first : first + " (" + Figures.plain(in(value)) + symbol(other) + ")";
  }

  /** An interval with both units, such as 5.2 to 13.6 MPa, 750 to 1970 psi. */
  String interval(Interval interval) {
    if (isStress()) {
      return Figures.stressInterval(
          new Interval(si.toBase(interval.low()), si.toBase(interval.high())));
    }
    String first = one(interval) + symbol(si);
    Interval converted = new Interval(in(interval.low()), in(interval.high()));
    return other == si ? first : first + ", " + one(converted) + symbol(other);
  }

  private static String one(Interval interval) {
    double larger = Math.max(Math.abs(interval.low()), Math.abs(interval.high()));
    return Figures.interval(interval, Figures.decimals(larger));
  }

  private double in(double value) {
    return si.convert(value, other);
  }

  private static String symbol(Unit unit) {
    return unit == Unit.ONE ? "" : " " + unit.symbol();
  }
}
