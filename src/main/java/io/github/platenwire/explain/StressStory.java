package io.github.platenwire.explain;

import io.github.platenwire.method.BreakPosition;
import io.github.platenwire.method.MethodResult.Figure;
import io.github.platenwire.quantity.Unit;
import java.util.Optional;

/**
 * Tells of the greatest load and the strength of a specimen that is broken by one load: the
 * reading, less the zero, over the sizes, corrected for the length. Immutable.
 */
final class StressStory implements Story {
  private final Evidence evidence;

  StressStory(Evidence evidence) {
    this.evidence = evidence;
  }

  @Override
  public boolean tells(Figure figure) {
    return switch (figure.name()) {
      case "strength", "strength-uncorrected" -> StressLaw.of(evidence).isPresent();
      case "peak-load" -> true;
      default -> false;
    };
  }

  @Override
  public void tell(Figure figure, Telling telling) {
    long seq = figure.rows().get(0);
    ReadingStory reading = new ReadingStory(evidence, seq);
    reading.tell(telling);
    reading.neighbours(
        "Chosen: of all readings that can be trusted it is the greatest, of equal ones the first.",
        telling);
    figure
        .samplingBound()
        .ifPresent(
            bound ->
                telling.more(
                    "Between two readings it can have been higher by up to "
                        + rough(bound, figure)
                        + "."));
    zero().ifPresent(zero -> new ZeroStory(evidence).onTheWay(zero, telling));
    load(seq, figure.name().equals("peak-load") ? figure : peak(), telling);
    if (!figure.name().equals("peak-load")) {
      stress(figure, telling);
    }
  }

  private Optional<Figure> zero() {
    return evidence
        .figure("zero")
        .or(() -> evidence.figure("zero-" + evidence.row(peak().rows().get(0)).channel()));
  }

  private Figure peak() {
    return evidence.figure("peak-load").orElseThrow();
  }

  private void load(long seq, Figure peak, Telling telling) {
    telling.step("Greatest load: the reading less the zero.");
    telling.formula(
        Formula.of(
            "reading - zero",
            "{} - {}",
            n -> n[0] - n[1],
            Term.kilonewtons(evidence.base(evidence.row(seq))),
            Term.kilonewtons(zero().map(zero -> zero.unit().toBase(zero.exact())).orElse(0.0))),
        peak);
  }

  private void stress(Figure figure, Telling telling) {
    SizeStory sizes = new SizeStory(evidence);
    sizes.measured(telling);
    evidence
        .figure("area")
        .filter(area -> evidence.kind().startsWith("compression"))
        .ifPresent(area -> sizes.areaOnTheWay(area, telling));
    if (evidence.kind().equals("flexure-third-point")) {
      new BreakStory(evidence).tell(telling);
    }
    double newtons = evidence.base("peak-load").orElseThrow();
    StressLaw law = law().orElseThrow();
    boolean corrected = evidence.figure("correction").isPresent();
    Formula plain = law.at(newtons);
    telling.step("Stress at the greatest load" + evidence.clause(FigureWords.Topic.STRESS) + ":");
    if (!corrected || figure.name().endsWith("uncorrected")) {
      telling.formula(plain, figure);
      uncorrected(figure, telling);
      return;
    }
    telling.formula(plain, Unit.MEGAPASCAL, Unit.PSI);
    new LengthCorrectionStory(evidence).onTheWay(telling);
    telling.formula(
        Formula.of(
            "stress x factor",
            "{} x {}",
            n -> n[0] * n[1],
            new Term(plain.result(), Unit.MEGAPASCAL, Unit.PSI),
            Term.plain(evidence.base("correction").orElseThrow())),
        figure);
  }

  /** The law for where a beam broke, or the one for any other specimen. */
  private Optional<StressLaw> law() {
    BreakPosition position = evidence.seen().breakPosition();
    return StressLaw.of(evidence).map(law -> law.placed(evidence.specimen(), position));
  }

  private void uncorrected(Figure figure, Telling telling) {
    if (figure.name().equals("strength") && evidence.method().has("correction")) {
      telling.step(
          "Correction: none, since length over diameter is "
              + evidence.figure("length-ratio").map(Figure::rounded).orElse("unknown")
              + ", and up to "
              + FigureWords.number(evidence.number("correction", "at-or-below"))
              + " it would be corrected"
              + evidence.clause(FigureWords.Topic.CORRECTION)
              + ".");
    }
  }

  private String rough(double bound, Figure figure) {
    return FigureWords.rough(bound, figure.unit(), figure.inchPoundUnit(), evidence.first());
  }
}
