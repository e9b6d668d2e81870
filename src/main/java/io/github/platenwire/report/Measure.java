package io.github.platenwire.report;

import io.github.platenwire.quantity.Unit;
import io.github.platenwire.quantity.UnitSystem;
import io.github.platenwire.statistics.Interval;
import java.math.BigDecimal;
import java.util.List;

/**
 * Values of one figure in both systems of units, each to the digits that go with it. Immutable.
 *
 * @param unit of every value
 * @param other the unit beside it; the same where the trade has no other
 * @param decimals in {@code unit}
 * @param otherDecimals in {@code other}
 * @param first which system stands first
 */
record Measure(Unit unit, Unit other, int decimals, int otherDecimals, UnitSystem first) {
  /** Significant digits of a usual value in the other unit: a strength in psi is whole. */
  private static final int DIGITS_OF_OTHER = 4;

  /**
   * Values as a summary prints them.
   *
   * @param printed a usual value as printed in {@code unit}
   */
  static Measure like(String printed, Unit unit, Unit other, UnitSystem first) {
    BigDecimal usual = new BigDecimal(printed);
    double converted = Math.abs(unit.convert(usual.doubleValue(), other));
    int whole = converted == 0 ? 0 : (int) Math.floor(Math.log10(converted)) + 1;
    return new Measure(
        unit, other, Math.max(0, usual.scale()), Math.max(0, DIGITS_OF_OTHER - whole), first);
  }

  private boolean single() {
    return unit == other;
  }

  /** In the unit shown first, without it. */
  String shown(double value) {
    return first == UnitSystem.SI || single() ? own(value) : converted(value);
  }

  /** In the other unit, without it. */
  String beside(double value) {
    if (single()) {
      return "";
    }
    return first == UnitSystem.SI ? converted(value) : own(value);
  }

  private String own(double value) {
    return Words.decimals(value, decimals);
  }

  private String converted(double value) {
    return Words.decimals(unit.convert(value, other), otherDecimals);
  }

  Unit shownUnit() {
    return first == UnitSystem.SI || single() ? unit : other;
  }

  Unit besideUnit() {
    return first == UnitSystem.SI ? other : unit;
  }

  /** Such as {@code Mean, MPa (psi)}. */
  String heading(String words) {
    return words
        + ", "
        + shownUnit().symbol()
        + (single() ? "" : " (" + besideUnit().symbol() + ")");
  }

  /** A value in both units below one another, handed on in full. */
  Cell cell(double value) {
    return new Cell(both(shown(value), beside(value)), Double.toString(value), Tone.PLAIN);
  }

  /** A deviation in both units, with two digits, handed on in full. */
  Cell deviation(double value) {
    String own = Words.significant(value, 2);
    String converted = single() ? "" : Words.significant(Math.abs(unit.convert(value, other)), 2);
    return new Cell(
        first == UnitSystem.SI || single() ? both(own, converted) : both(converted, own),
        Double.toString(value),
        Tone.PLAIN);
  }

  /** An interval in both units. */
  Inline interval(Interval interval) {
    return both(
        shown(interval.low()) + " to " + shown(interval.high()),
        single() ? "" : beside(interval.low()) + " to " + beside(interval.high()));
  }

  private static Inline both(String shown, String beside) {
    return beside.isEmpty()
        ? Inline.text(shown)
        : Inline.lines(List.of(Inline.text(shown), Inline.faint(beside)));
  }
}
