package io.github.platenwire.method;

import io.github.platenwire.method.FrontAdvance.Shape;
import io.github.platenwire.method.FrontAdvance.TimeToDepth;
import io.github.platenwire.quantity.Quantity;
import io.github.platenwire.quantity.UncertaintyBudget;
import io.github.platenwire.quantity.Unit;
import io.github.platenwire.statistics.ConfidenceSet;
import io.github.platenwire.statistics.Interval;
import io.github.platenwire.statistics.LineFit;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What a log of depths came to: both lines side by side, and the times to the asked depths. */
final class FrontOutcome {
  private static final Optional<UncertaintyBudget> NONE = Optional.empty();

  private final FrontRules rules;
  private final ChannelFacts channel;
  private final List<FrontPart.Reading> counted;
  private final FrontFigures figures;
  private final List<MethodResult.Check> checks = new ArrayList<>();
  private final List<String> departures;

  FrontOutcome(FrontRules rules, ChannelFacts channel, FrontEntries entries) {
    this.rules = rules;
    this.channel = channel;
    this.counted = entries.counted();
    this.figures = new FrontFigures(rules.rounding(), counted);
    this.departures = new ArrayList<>(entries.leftOut());
  }

  MethodResult result() {
    figures.last(counted, Quantity.LENGTH);
    Optional<FrontLines> lines = FrontLines.of(counted);
    if (lines.isPresent()) {
      tell(lines.get().advance());
    } else {
      departures.add("Fewer than three readings count: no line was laid through them.");
    }
    return new MethodResult(figures.figures(), checks, departures, List.of());
  }

  private void tell(FrontAdvance front) {
    double percent =
        Math.hypot(channel.calibrationPercent().orElse(0), channel.correctionPercent().orElse(0));
    figures.slope(
        "rate-in-time",
        "Advance along the line in time",
        front.linear(),
        Unit.MILLIMETRE_PER_MINUTE,
        Unit.INCH_PER_MINUTE,
        percent);
    figures.slope(
        "rate-in-root-time",
        "Advance along the line in the root of time",
        front.squareRoot(),
        Unit.MILLIMETRE_PER_ROOT_SECOND,
        Unit.INCH_PER_ROOT_SECOND,
        percent);
    deviation("deviation-in-time", "Scatter about the line in time", front.linear());
    deviation(
        "deviation-in-root-time", "Scatter about the line in the root of time", front.squareRoot());
    checks.add(shape(front));
    for (double depth : rules.depthsMillimetres()) {
      for (Shape shape : front.better().map(List::of).orElse(List.of(Shape.values()))) {
        time(front, depth, shape);
      }
    }
  }

  private void deviation(String name, String title, LineFit line) {
    figures.length(name, title + " (standard deviation)", line.residualDeviation());
  }

  /** No demand, but what the readings tell of the shape. */
  private static MethodResult.Check shape(FrontAdvance front) {
    String seen =
        front
            .better()
            .map(
                better ->
                    better == Shape.LINEAR
                        ? "the readings follow a line in time better than one in its root"
                        : "the readings follow a line in the root of time better than one in time")
            .orElse("the readings do not tell a line in time from one in its root");
    return new MethodResult.Check(
        "shape",
        true,
        seen
            + "; standard deviation about them "
            + three(front.linear().residualDeviation())
            + " mm and "
            + three(front.squareRoot().residualDeviation())
            + " mm, n = "
            + front.linear().n());
  }

  private void time(FrontAdvance front, double depth, Shape shape) {
    Optional<TimeToDepth> reached = front.timeTo(depth, shape);
    if (reached.isEmpty()) {
      return;
    }
    TimeToDepth time = reached.get();
    boolean linear = shape == Shape.LINEAR;
    String name =
        "time-to-" + BothUnits.plain(depth) + "-mm-" + (linear ? "in-time" : "in-root-time");
    String what =
        BothUnits.plain(depth)
            + " mm ("
            + three(Unit.INCH.fromBase(depth))
            + " in)"
            + (front.better().isPresent() ? "" : linear ? ", line in time" : ", line in root time");
    String title = "Time to " + what + (time.beyondReadings() ? ", beyond the readings" : "");
    if (time.set() instanceof ConfidenceSet.Bounded bounded) {
      Interval interval = bounded.interval();
      figures.minutes(name, title, time.seconds(), Optional.of(budget(interval, front)));
      figures.minutes(name + "-from", "Earliest time to " + what + ", 95 %", interval.low(), NONE);
      figures.minutes(name + "-to", "Latest time to " + what + ", 95 %", interval.high(), NONE);
    } else {
      figures.minutes(name, title, time.seconds(), NONE);
      String words =
          "There is no bounded 95 % interval of the times along the line in "
              + (linear ? "time" : "root time")
              + ": the readings do not show that the front advances along it.";
      if (!departures.contains(words)) {
        departures.add(words);
      }
    }
  }

  /** To three significant digits. */
  private static String three(double value) {
    return new BigDecimal(value).round(new MathContext(3, RoundingMode.HALF_EVEN)).toPlainString();
  }

  /** Half of the 95 % interval is about two standard uncertainties; minutes. */
  private static UncertaintyBudget budget(Interval seconds, FrontAdvance front) {
    return new UncertaintyBudget(
        List.of(
            new UncertaintyBudget.Line(
                "scatter of the readings about the line (a quarter of its 95 % interval)",
                Unit.MINUTE.fromBase(seconds.halfWidth() / 2), front.linear().degreesOfFreedom())));
  }
}
