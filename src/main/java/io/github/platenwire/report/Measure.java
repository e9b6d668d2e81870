package io.github.platenwire.report;

import io.github.platenwire.quantity.Unit;
import io.github.platenwire.quantity.UnitSystem;
import io.github.platenwire.study.Interval;
import java.math.BigDecimal;

/**
 * Values of one figure in both systems of units, each to the digits that go with it. Immutable.
 *
 * @param unit of every value
 * @param other the unit beside it; the same where the trade has no other
 * @param decimals in {@code unit}
 * @param first which system stands first
 */
record Measure(Unit unit, Unit other, int decimals, UnitSystem first) {
  /** Significant digits in the other unit: such a strength in psi is whole. */
  private static final int DIGITS_OF_OTHER = 4;

  /**
   * Values to one decimal more than a summary prints: means have more to say than one result.
   *
   * @param printed a result as printed
   */
  static Measure like(String printed, Unit unit, Unit other, UnitSystem first) {
    return new Measure(unit, other, Math.max(0, new BigDecimal(printed).scale()), first);
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
    return Words.significant(unit.convert(value, other), DIGITS_OF_OTHER);
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

  /** An interval in both units. */
  Inline interval(Interval interval) {
    return both(
        shown(interval.low()) + " to " + shown(interval.high()),
        single() ? "" : beside(interval.low()) + " to " + beside(interval.high()));
  }

  private static Inline both(String shown, String beside) {
    return beside.isEmpty()
        ? Inline.text(shown)
        : Inline.lines(java.util.List.of(Inline.text(shown), Inline.faint(beside)));
  }
}
