package io.github.platenwire.method;

import io.github.platenwire.method.MethodResult.Figure;
import io.github.platenwire.quantity.Quantity;
import io.github.platenwire.quantity.UncertaintyBudget;
import io.github.platenwire.quantity.Unit;
import io.github.platenwire.statistics.LineFit;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The figures that a log of readings against time comes to. Not thread-safe. */
final class FrontFigures {
  /** With more readings the first and the last are named instead of all. */
  private static final int MOST_ROWS = 200;

  private static final Optional<UncertaintyBudget> NONE = Optional.empty();

  private final FrontRules.Rounding rounding;
  private final List<Long> rows;
  private final List<Figure> figures = new ArrayList<>();

  FrontFigures(FrontRules.Rounding rounding, List<FrontPart.Reading> counted) {
    this.rounding = rounding;
    List<Long> all = counted.stream().map(FrontPart.Reading::seq).toList();
    this.rows =
        all.size() > MOST_ROWS ? List.of(all.get(0), all.get(all.size() - 1)) : List.copyOf(all);
  }

  List<Figure> figures() {
    return figures;
  }

  /** How many readings count, and the last of them. */
  void last(List<FrontPart.Reading> counted, Quantity quantity) {
    BigDecimal whole = BigDecimal.ONE;
    add("readings", "Readings that count", counted.size(), Unit.ONE, Unit.ONE, Steps.same(whole));
    if (counted.isEmpty()) {
      return;
    }
    FrontPart.Reading last = counted.get(counted.size() - 1);
    boolean length = quantity == Quantity.LENGTH;
    Unit si = length ? Unit.MILLIMETRE : Unit.GRAM;
    Unit other = length ? Unit.INCH : Unit.GRAM;
    Steps steps = length ? rounding.length() : Steps.same(rounding.grams());
    figures.add(
        figure(
            length ? "last-depth" : "last-mass",
            length ? "Last depth" : "Last mass",
            si.fromBase(last.base()),
            si,
            other,
            steps,
            Optional.empty(),
            List.of(last.seq())));
    minutes("last-time", "Time of the last reading, since the first", last.seconds(), NONE);
  }

  /** A length, such as a deviation or an absorption. */
  void length(String name, String title, double millimetres) {
    add(name, title, millimetres, Unit.MILLIMETRE, Unit.INCH, rounding.length());
  }

  /** A time in minutes. */
  void minutes(String name, String title, double seconds, Optional<UncertaintyBudget> budget) {
    Steps steps = Steps.same(rounding.minutes());
    figures.add(
        figure(
            name,
            title,
            Unit.MINUTE.fromBase(seconds),
            Unit.MINUTE,
            Unit.MINUTE,
            steps,
            budget,
            rows));
  }

  /**
   * The slope of a line, to significant digits.
   *
   * @param percent expanded uncertainty (k = 2) of the channel's calibration, percent; 0 if unknown
   */
  void slope(String name, String title, LineFit line, Unit si, Unit inchPound, double percent) {
    double slope = si.fromBase(line.slope());
    List<UncertaintyBudget.Line> lines = new ArrayList<>();
    lines.add(
        new UncertaintyBudget.Line(
            "scatter of the readings about the line",
            si.fromBase(line.slopeStandardError()),
            line.degreesOfFreedom()));
    if (percent > 0) {
      lines.add(
          new UncertaintyBudget.Line(
              "calibration", Math.abs(slope) * percent / 200, Double.POSITIVE_INFINITY));
    }
    figures.add(
        new Figure(
            name,
            title,
            slope,
            si,
            significant(slope),
            inchPound,
            significant(si.convert(slope, inchPound)),
            Optional.of(new UncertaintyBudget(lines)),
            Optional.empty(),
            rows));
  }

  private String significant(double value) {
    return new BigDecimal(value)
        .round(new MathContext(rounding.significantDigits(), RoundingMode.HALF_EVEN))
        .toPlainString();
  }

  private void add(String name, String title, double value, Unit si, Unit other, Steps steps) {
    figures.add(figure(name, title, value, si, other, steps, NONE, rows));
  }

  private static Figure figure(
      String name,
      String title,
      double value,
      Unit si,
      Unit other,
      Steps steps,
      Optional<UncertaintyBudget> budget,
      List<Long> rows) {
    return new Figure(
        name,
        title,
        value,
        si,
        BothUnits.rounded(value, steps.si()),
        other,
        BothUnits.rounded(si.convert(value, other), steps.inchPound()),
        budget,
        Optional.empty(),
        rows);
  }
}
