package io.github.platenwire.explain;

import io.github.platenwire.quantity.Unit;
import io.github.platenwire.quantity.UnitSystem;

/**
 * One number in a formula, in both systems of units. Immutable.
 *
 * @param value in {@code unit}
 * @param unit its SI unit; {@link Unit#ONE} for a plain number
 * @param inchPoundUnit the other system's
 */
record Term(double value, Unit unit, Unit inchPoundUnit) {
  static Term newtons(double newtons) {
    return new Term(newtons, Unit.NEWTON, Unit.POUND_FORCE);
  }

  static Term kilonewtons(double newtons) {
    return new Term(Unit.KILONEWTON.fromBase(newtons), Unit.KILONEWTON, Unit.POUND_FORCE);
  }

  static Term millimetres(double millimetres) {
    return new Term(millimetres, Unit.MILLIMETRE, Unit.INCH);
  }

  static Term plain(double value) {
    return new Term(value, Unit.ONE, Unit.ONE);
  }

  static Term same(double value, Unit unit) {
    return new Term(value, unit, unit);
  }

  double in(UnitSystem system) {
    return system == UnitSystem.SI ? value : unit.convert(value, inchPoundUnit);
  }

  Unit unit(UnitSystem system) {
    return system == UnitSystem.SI ? unit : inchPoundUnit;
  }

  /** Number and unit, as a formula has them. */
  String words(UnitSystem system) {
    double number = in(system);
    String words = FigureWords.number(number) + FigureWords.symbol(unit(system));
    return number < 0 ? "(" + words + ")" : words;
  }

  /** In both systems, the one that is named first in front. */
  String both(UnitSystem first) {
    return FigureWords.both(value, unit, inchPoundUnit, first);
  }
}
