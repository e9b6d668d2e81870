package io.github.platenwire.method;

import io.github.platenwire.method.Absorption.Stretch;
import io.github.platenwire.quantity.Quantity;
import io.github.platenwire.quantity.Unit;
import java.util.ArrayList;
import java.util.List;

/** What a log of masses came to: the absorption, and its rate over each stretch of time. */
final class AbsorptionOutcome {
  private final FrontRules.AbsorptionRules rules;
  private final double area;
  private final List<FrontPart.Reading> counted;
  private final FrontFigures figures;
  private final List<MethodResult.Check> checks = new ArrayList<>();
  private final List<String> departures;

  AbsorptionOutcome(FrontRules rules, Specimen specimen, FrontEntries entries) {
    this.rules = rules.absorption().orElseThrow();
    this.area = ExposedFace.squareMillimetres(specimen).orElseThrow();
    this.counted = entries.counted();
    this.figures = new FrontFigures(rules.rounding(), counted);
    this.departures = new ArrayList<>(entries.leftOut());
  }

  MethodResult result() {
    figures.last(counted, Quantity.MASS);
    if (!counted.isEmpty()) {
      double[] seconds = counted.stream().mapToDouble(FrontPart.Reading::seconds).toArray();
      double[] gains = counted.stream().mapToDouble(this::gainGrams).toArray();
      figures.length(
          "absorption",
          "Absorption at the last reading, as a depth of water",
          rules.absorption().millimetres(gains[gains.length - 1], area));
      rules.stretches().forEach(stretch -> rate(stretch, seconds, gains));
    }
    return new MethodResult(figures.figures(), checks, departures, List.of());
  }

  /** Since the first reading, the mass before the water. */
  private double gainGrams(FrontPart.Reading reading) {
    return Unit.GRAM.fromBase(reading.base() - counted.get(0).base());
  }

  private void rate(Stretch stretch, double[] seconds, double[] gains) {
    String name = stretch.name() + "-rate";
    Absorption.Outcome outcome = rules.absorption().rate(seconds, gains, area, stretch);
    if (outcome instanceof Absorption.Rate rate) {
      figures.slope(
          name,
          "Rate of " + stretch.name() + " absorption",
          rate.line(),
          Unit.MILLIMETRE_PER_ROOT_SECOND,
          Unit.INCH_PER_ROOT_SECOND,
          0);
      figures.length(
          stretch.name() + "-intercept",
          "Where the line of " + stretch.name() + " absorption begins, at time zero",
          rate.line().meanY() - rate.line().slope() * rate.line().meanX());
      checks.add(check(name, true, rate.line().correlation()));
    } else if (outcome instanceof Absorption.NotALine bent) {
      checks.add(check(name, false, bent.correlation()));
      departures.add(
          "No rate of "
              + stretch.name()
              + " absorption: the readings do not follow a line in the root of time closely"
              + " enough.");
    } else if (outcome instanceof Absorption.TooFew few) {
      departures.add(
          "No rate of "
              + stretch.name()
              + " absorption: "
              + few.points()
              + " readings lie in its stretch of time, at least three are needed.");
    }
  }

  private MethodResult.Check check(String name, boolean met, double correlation) {
    return new MethodResult.Check(
        name,
        met,
        "correlation with the root of time "
            + BothUnits.fixed(correlation, 4)
            + ", at least "
            + BothUnits.plain(rules.absorption().leastCorrelation())
            + " is asked");
  }
}
