package io.github.platenwire.method;

import io.github.platenwire.method.MethodResult.Check;
import io.github.platenwire.method.MethodResult.Figure;
import io.github.platenwire.quantity.UncertaintyBudget;
import io.github.platenwire.quantity.UncertaintyBudget.Line;
import io.github.platenwire.quantity.Unit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What the position of the break makes of a beam's result. Within the middle third the bending
 * moment is P l/6, and the stress P l/(b d^2); at a distance a from the nearer support, outside the
 * middle third, the moment is P a/2, and the stress 3 P a/(b d^2). Beyond a set distance from the
 * middle third the result is discarded. Immutable.
 */
record ThirdPointBreak(BeamShape beam, Steps stress, Specimen specimen) {
  private static final String CHECK = "break-position";

  MethodResult apply(MethodResult result, BreakPosition position) {
    if (position instanceof BreakPosition.Outside outside) {
      return outside(result, outside.millimetres());
    }
    if (position instanceof BreakPosition.MiddleThird) {
      return within(result, "the break lay within the middle third of the span");
    }
    return with(
        result,
        result.figures(),
        new Check(CHECK, false, "the position of the break was not recorded"),
        Optional.of(
            "The position of the break was not recorded; it is taken to lie within the middle"
                + " third of the span."));
  }

  private double span() {
    return specimen.dimension(Dimension.SPAN).orElseThrow();
  }

  private MethodResult outside(MethodResult result, double distance) {
    double third = span() / 3;
    double allowed = third - beam.outsidePercent() / 100 * span();
    String seen = "the break lay " + words(distance) + " from the nearer support";
    if (distance >= third) {
      return within(result, seen + ", so within the middle third of the span");
    }
    String outside =
        seen
            + ", outside the middle third, which begins at "
            + words(third)
            + "; allowed are "
            + BothUnits.plain(beam.outsidePercent())
            + " % of the span";
    if (distance < allowed - Objections.HAIR) {
      return with(
          result,
          result.figures().stream().filter(f -> !f.name().equals("strength")).toList(),
          new Check(CHECK, false, outside),
          Optional.of("The result is discarded: " + outside + "."));
    }
    return with(
        result,
        corrected(result, distance),
        new Check(CHECK, true, outside + ": computed by 3 P a/(b d^2)"),
        Optional.empty());
  }

  private MethodResult within(MethodResult result, String words) {
    return with(result, result.figures(), new Check(CHECK, true, words), Optional.empty());
  }

  private String words(double millimetres) {
    return BothUnits.both(millimetres, Unit.MILLIMETRE, Unit.INCH, beam.size());
  }

  private static MethodResult with(
      MethodResult result, List<Figure> figures, Check check, Optional<String> departure) {
    List<Check> checks = new ArrayList<>(result.checks());
    checks.add(check);
    List<String> departures = new ArrayList<>(result.departures());
    departure.ifPresent(departures::add);
    return new MethodResult(figures, checks, departures, result.suspects());
  }

  private List<Figure> corrected(MethodResult result, double distance) {
    List<Figure> figures = new ArrayList<>();
    for (Figure figure : result.figures()) {
      figures.add(figure.name().equals("strength") ? corrected(figure, distance) : figure);
    }
    figures.add(
        Properties.size(
                "break-distance",
                "Distance of the break from the nearer support",
                distance,
                beam.size())
            .figure());
    return figures;
  }

  private Figure corrected(Figure figure, double distance) {
    double factor = 3 * distance / span();
    double megapascals = figure.exact() * factor;
    return new Figure(
        figure.name(),
        figure.title(),
        megapascals,
        figure.unit(),
        BothUnits.rounded(megapascals, stress.si()),
        figure.inchPoundUnit(),
        BothUnits.rounded(BothUnits.megapascalsToPsi(megapascals), stress.inchPound()),
        figure.uncertainty().map(budget -> corrected(budget, megapascals, factor, distance)),
        figure.samplingBound().map(bound -> bound * factor),
        figure.rows());
  }

  /** The span no longer enters the stress; the distance does, in its place. */
  private UncertaintyBudget corrected(
      UncertaintyBudget budget, double megapascals, double factor, double distance) {
    List<Line> lines = new ArrayList<>();
    for (Line line : budget.lines()) {
      if (line.source().equals(StrengthBudget.ROUNDING)) {
        lines.add(line);
      } else if (!line.source().startsWith("span: ")) {
        lines.add(new Line(line.source(), line.contribution() * factor, line.degreesOfFreedom()));
      }
    }
    StrengthBudget.addSize(
        lines,
        new Section.Size("distance of the break", List.of(distance), 1, beam.readingMillimetres()),
        megapascals);
    return new UncertaintyBudget(lines);
  }
}
