package io.github.platenwire.explain;

import io.github.platenwire.live.BandJudge;
import io.github.platenwire.method.MethodResult.Figure;
import io.github.platenwire.quantity.Unit;
import io.github.platenwire.record.RawRow;
import java.util.Comparator;
import java.util.List;

/**
 * Tells of the rate of loading: steps of time, each with the slope of the load over it, from one
 * share of the greatest load to another. Immutable.
 */
final class RateStory implements Story {
  private static final double PER_MICRO = 1e-6;

  private final Evidence evidence;

  RateStory(Evidence evidence) {
    this.evidence = evidence;
  }

  @Override
  public boolean tells(Figure figure) {
    return figure.name().startsWith("rate")
        && !evidence.trail().rates().isEmpty()
        && evidence.figure("peak-load").isPresent()
        && StressLaw.of(evidence).isPresent();
  }

  @Override
  public void tell(Figure figure, Telling telling) {
    List<BandJudge.Step> steps = steps();
    BandJudge.Step one = deciding(figure, steps);
    RawRow from = row(one.fromMicros());
    new ReadingStory(evidence, from.seq()).tell(telling);
    telling.step(
        "Steps: time is cut into steps of "
            + FigureWords.number(evidence.number("window", "seconds"))
            + " s, and each has the slope of the load over it by least squares. Those count that"
            + " began between "
            + percent("from-share-of-peak")
            + " and "
            + percent("to-share-of-peak")
            + " of the greatest load: "
            + steps.size()
            + ".");
    tell(steps.get(0), "First:   ", telling);
    tell(least(steps), "Slowest: ", telling);
    tell(greatest(steps), "Fastest: ", telling);
    tell(steps.get(steps.size() - 1), "Last:    ", telling);
    double newtonsPerSecond = figure.name().equals("rate") ? mean(steps, telling) : one.rate();
    stress(newtonsPerSecond, figure, telling);
  }

  private BandJudge.Step deciding(Figure figure, List<BandJudge.Step> steps) {
    return switch (figure.name()) {
      case "rate-least" -> least(steps);
      case "rate-greatest" -> greatest(steps);
      default -> steps.get(0);
    };
  }

  private List<BandJudge.Step> steps() {
    double peak = evidence.base("peak-load").orElseThrow();
    long peakMicros =
        evidence.row(evidence.figure("peak-load").orElseThrow().rows().get(0)).elapsedMicros();
    double from = evidence.number("rate", "from-share-of-peak");
    double to = evidence.number("rate", "to-share-of-peak");
    return evidence.trail().rates().stream()
        .filter(step -> step.toMicros() < peakMicros && step.isWithin(from, to, peak))
        .toList();
  }

  private static BandJudge.Step least(List<BandJudge.Step> steps) {
    return steps.stream().min(Comparator.comparingDouble(BandJudge.Step::rate)).orElseThrow();
  }

  private static BandJudge.Step greatest(List<BandJudge.Step> steps) {
    return steps.stream().max(Comparator.comparingDouble(BandJudge.Step::rate)).orElseThrow();
  }

  private void tell(BandJudge.Step step, String which, Telling telling) {
    RawRow from = row(step.fromMicros());
    RawRow to = row(step.toMicros());
    telling.more(
        which
            + "rows "
            + from.seq()
            + " to "
            + to.seq()
            + ", "
            + Evidence.seconds(from)
            + " to "
            + Evidence.seconds(to)
            + ": "
            + rate(step.rate()));
  }

  private String rate(double newtonsPerSecond) {
    Term term = Term.newtons(newtonsPerSecond);
    return FigureWords.both(term.value(), term.unit(), term.inchPoundUnit(), evidence.first())
        + " a second";
  }

  /** The row of the load at a moment. */
  private RawRow row(long micros) {
    String channel =
        evidence.row(evidence.figure("peak-load").orElseThrow().rows().get(0)).channel();
    return evidence.rows().stream()
        .filter(row -> row.elapsedMicros() == micros && row.channel().equals(channel))
        .findFirst()
        .orElseThrow();
  }

  private double mean(List<BandJudge.Step> steps, Telling telling) {
    double seconds = steps.stream().mapToDouble(RateStory::seconds).sum();
    double newtons = steps.stream().mapToDouble(step -> step.rate() * seconds(step)).sum();
    telling.step(
        "Mean: what the load gained in these steps (rate times length of each) over their whole"
            + " time, which gives what it gained a second:");
    Formula mean =
        Formula.of(
            "sum / time",
            "{} / {}",
            n -> n[0] / n[1],
            Term.newtons(newtons),
            Term.same(seconds, Unit.SECOND));
    telling.formula(mean, Unit.NEWTON, Unit.POUND_FORCE);
    return mean.result();
  }

  private static double seconds(BandJudge.Step step) {
    return (step.toMicros() - step.fromMicros()) * PER_MICRO;
  }

  private void stress(double newtonsPerSecond, Figure figure, Telling telling) {
    boolean minutes = figure.unit() == Unit.MEGAPASCAL_PER_MINUTE;
    StressLaw law = StressLaw.of(evidence).orElseThrow();
    telling.step(
        "As a stress, by the same formula as the strength"
            + evidence.clause(FigureWords.Topic.STRESS)
            + (minutes ? ", and in a minute sixty times as much:" : ":"));
    telling.formula(law.rate(newtonsPerSecond, minutes), figure);
  }

  private String percent(String key) {
    return FigureWords.number(evidence.number("rate", key) * 100) + " %";
  }
}
