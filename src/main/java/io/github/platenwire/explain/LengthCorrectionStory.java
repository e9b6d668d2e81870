package io.github.platenwire.explain;

import io.github.platenwire.method.MethodResult.Figure;
import io.github.platenwire.toml.TomlException;
import java.util.List;

/** Tells of the factor by which the strength of a short cylinder is corrected. Immutable. */
final class LengthCorrectionStory implements Story {
  private final Evidence evidence;

  LengthCorrectionStory(Evidence evidence) {
    this.evidence = evidence;
  }

  @Override
  public boolean tells(Figure figure) {
    return figure.name().equals("correction");
  }

  @Override
  public void tell(Figure factor, Telling telling) {
    new SizeStory(evidence).measured(telling);
    between(factor, telling);
  }

  /** Told on the way to the strength. */
  void onTheWay(Telling telling) {
    between(evidence.figure("correction").orElseThrow(), telling);
  }

  private void between(Figure factor, Telling telling) {
    double ratio = evidence.base("length-ratio").orElseThrow();
    List<Double> below = points().get(0);
    List<Double> above = points().get(points().size() - 1);
    for (int i = 1; i < points().size(); i++) {
      if (ratio <= points().get(i).get(0)) {
        below = points().get(i - 1);
        above = points().get(i);
        break;
      }
    }
    telling.step(
        "Correction for length: length over diameter is "
            + FigureWords.number(ratio)
            + ", between "
            + point(below)
            + " and "
            + point(above)
            + " in the method's table"
            + evidence.clause(FigureWords.Topic.CORRECTION)
            + ". Linear between them, the factor is:");
    telling.formula(between(below, above, ratio), factor);
  }

  private static String point(List<Double> point) {
    return FigureWords.number(point.get(0)) + " (factor " + FigureWords.number(point.get(1)) + ")";
  }

  private static Formula between(List<Double> below, List<Double> above, double ratio) {
    return Formula.of(
        "factor",
        "{} + ({} - {}) x ({} - {}) / ({} - {})",
        n -> n[0] + (n[1] - n[2]) * (n[3] - n[4]) / (n[5] - n[6]),
        Term.plain(below.get(1)),
        Term.plain(above.get(1)),
        Term.plain(below.get(1)),
        Term.plain(ratio),
        Term.plain(below.get(0)),
        Term.plain(above.get(0)),
        Term.plain(below.get(0)));
  }

  private List<List<Double>> points() {
    try {
      return evidence.method().section("correction").numberRows("table");
    } catch (TomlException e) {
      throw new IllegalStateException("the method was read before", e);
    }
  }
}
