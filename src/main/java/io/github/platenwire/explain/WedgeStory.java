package io.github.platenwire.explain;

import io.github.platenwire.method.Dimension;
import io.github.platenwire.method.MethodResult.Figure;
import io.github.platenwire.quantity.Unit;

/** Tells of the force across the crack from a wedge's load. Immutable. */
final class WedgeStory implements Story {
  private final Evidence evidence;

  WedgeStory(Evidence evidence) {
    this.evidence = evidence;
  }

  @Override
  public boolean tells(Figure figure) {
    return figure.name().equals("splitting-force");
  }

  @Override
  public void tell(Figure force, Telling telling) {
    new StressStory(evidence).tell(evidence.figure("peak-load").orElseThrow(), telling);
    double angle = evidence.specimen().dimension(Dimension.WEDGE_ANGLE).orElseThrow();
    double friction = evidence.number("wedge", "friction-angle-degrees");
    telling.step(
        "Splitting force: two faces of a wedge with an angle alpha of "
            + FigureWords.number(angle)
            + " deg between them press outward, against an angle of friction phi of "
            + FigureWords.number(friction)
            + " deg on each (equilibrium of a symmetric wedge; the friction is the method's file's,"
            + " and is not measured here):");
    telling.formula(
        Formula.of(
            "F / (2 tan(alpha / 2 + phi))",
            "{} / (2 x tan({} / 2 + {}))",
            n -> n[0] / (2 * Math.tan(Math.toRadians(n[1]) / 2 + Math.toRadians(n[2]))),
            Term.kilonewtons(evidence.base("peak-load").orElseThrow()),
            Term.same(angle, Unit.DEGREE),
            Term.same(friction, Unit.DEGREE)),
        force);
  }
}
