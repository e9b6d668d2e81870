package io.github.platenwire.explain;

import io.github.platenwire.method.BreakPosition;
import io.github.platenwire.method.Dimension;
import io.github.platenwire.method.MethodResult.Figure;
import io.github.platenwire.quantity.Unit;

/** Tells what the place of a beam's break makes of its strength (ASTM C78). Immutable. */
final class BreakStory implements Story {
  private final Evidence evidence;

  BreakStory(Evidence evidence) {
    this.evidence = evidence;
  }

  @Override
  public boolean tells(Figure figure) {
    return figure.name().equals("break-distance");
  }

  @Override
  public void tell(Figure figure, Telling telling) {
    new SizeStory(evidence).measured(telling);
    tell(telling);
    telling.more(
        "The distance is taken as it was seen, "
            + evidence.both(figure)
            + "; nothing is computed.");
  }

  void tell(Telling telling) {
    BreakPosition position = evidence.seen().breakPosition();
    String rule = evidence.clause(FigureWords.Topic.STRESS);
    if (position instanceof BreakPosition.Outside outside) {
      outside(outside.millimetres(), rule, telling);
    } else if (position instanceof BreakPosition.MiddleThird) {
      telling.step(
          "Break: seen within the middle third of the span; there P l / (b d²) holds" + rule + ".");
    } else {
      telling.step(
          "Break: where it lay was not recorded; it is taken to lie within the middle third of the"
              + " span, where P l / (b d²) holds"
              + rule
              + ".");
    }
  }

  private void outside(double distance, String rule, Telling telling) {
    double span = evidence.specimen().dimension(Dimension.SPAN).orElseThrow();
    double percent = evidence.number("specimen", "outside-percent-of-span");
    telling.step(
        "Break: seen "
            + both(distance)
            + " from the nearer support, along the middle of the tension face. The middle third"
            + " begins at a third of the span:");
    telling.formula(
        Formula.of("l / 3", "{} / 3", n -> n[0] / 3, Term.millimetres(span)),
        Unit.MILLIMETRE,
        Unit.INCH);
    if (distance >= span / 3) {
      telling.more("So it lay within the middle third, where P l / (b d²) holds" + rule + ".");
      return;
    }
    telling.more(
        "Outside it, up to "
            + FigureWords.number(percent)
            + " % of the span, 3 P a / (b d²) holds; beyond that the result is discarded"
            + rule
            + ". The bound is:");
    telling.formula(
        Formula.of(
            "l / 3 - " + FigureWords.number(percent) + " % of l",
            "{} / 3 - " + FigureWords.number(percent) + " / 100 x {}",
            n -> n[0] / 3 - percent / 100 * n[1],
            Term.millimetres(span),
            Term.millimetres(span)),
        Unit.MILLIMETRE,
        Unit.INCH);
  }

  private String both(double millimetres) {
    return Term.millimetres(millimetres).both(evidence.first());
  }
}
