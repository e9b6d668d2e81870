package io.github.platenwire.study;

import io.github.platenwire.quantity.Quantity;
import io.github.platenwire.quantity.Unit;
import io.github.platenwire.quantity.UnitSystem;
import io.github.platenwire.statistics.Interval;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Locale;

/**
 * How one figure's values are written: in both systems of units, strengths to the steps of ASTM
 * C39, everything else with three digits. Immutable.
 *
 * @param si the unit of the values
 * @param other the unit beside it; the same where the trade has no other
 * @param first which system stands before the other
 * @param what the figure within a sentence, such as {@code the density}; empty for a strength,
 *     which goes without saying
 */
record FigureText(Unit si, Unit other, UnitSystem first, String what) {
  /** From here on a stress is a modulus and no strength. */
  private static final double GREATEST_STRENGTH_MEGAPASCALS = 1000;

  private static final int DIGITS = 3;

  /** Of a strength. */
  static FigureText strength(UnitSystem first) {
    return new FigureText(Unit.MEGAPASCAL, Unit.PSI, first, "");
  }

  /** Of what is compared. */
  static FigureText of(StudyComparison.Subject subject, UnitSystem first) {
    boolean strength = subject.figure().equals(StudyQuestion.STRENGTH);
    return new FigureText(
        subject.unit(), subject.inchPoundUnit(), first, strength ? "" : within(subject.title()));
  }

  /** A title as it stands within a sentence, without what may differ from test to test. */
  private static String within(String title) {
    String words = title.replaceFirst(", (mean of|beyond the readings).*$", "");
    boolean name = words.startsWith("Poisson");
    return name
        ? words
        : "the " + words.substring(0, 1).toLowerCase(Locale.ROOT) + words.substring(1);
  }

  /** Of whom a sentence tells: the series, or the series' figure. */
  String of(String series) {
    return what.isEmpty() ? series : what + " of " + series;
  }

  /** What it is held against. */
  String than(String series) {
    return what.isEmpty() ? series : "that of " + series;
  }

  private boolean isStress() {
    return si.quantity() == Quantity.STRESS;
  }

  /** A value with both units, such as 9.4 MPa (1360 psi). */
  String value(double value) {
    if (isStress() && Math.abs(si.toBase(value)) < GREATEST_STRENGTH_MEGAPASCALS) {
      return Figures.stress(si.toBase(value), first);
    }
    String own = number(value) + symbol(si);
    return other == si ? own : Figures.both(own, number(in(value)) + symbol(other), first);
  }

  /** An interval with both units, such as 5.2 to 13.6 MPa, 750 to 1970 psi. */
  String interval(Interval interval) {
    if (isStress() && larger(interval) < GREATEST_STRENGTH_MEGAPASCALS) {
      return Figures.stressInterval(
          new Interval(si.toBase(interval.low()), si.toBase(interval.high())), first);
    }
    String own = one(interval) + symbol(si);
    Interval converted = new Interval(in(interval.low()), in(interval.high()));
    return other == si ? own : Figures.beside(own, one(converted) + symbol(other), first);
  }

  private static double larger(Interval interval) {
    return Math.max(Math.abs(interval.low()), Math.abs(interval.high()));
  }

  private static String one(Interval interval) {
    double larger = larger(interval);
    return larger >= GREATEST_STRENGTH_MEGAPASCALS
        ? number(interval.low()) + " to " + number(interval.high())
        : Figures.interval(interval, Figures.decimals(larger));
  }

  /** With three digits; of a large number the rest are noughts. */
  private static String number(double value) {
    return Math.abs(value) < GREATEST_STRENGTH_MEGAPASCALS || !Double.isFinite(value)
        ? Figures.plain(value)
        : new BigDecimal(value)
            .round(new MathContext(DIGITS, RoundingMode.HALF_EVEN))
            .toPlainString();
  }

  private double in(double value) {
    return si.convert(value, other);
  }

  private static String symbol(Unit unit) {
    return unit == Unit.ONE ? "" : " " + unit.symbol();
  }
}
