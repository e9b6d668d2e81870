package io.github.platenwire.method;

import io.github.platenwire.quantity.UncertaintyBudget;
import java.util.ArrayList;
import java.util.List;

/**
 * The force across the crack from a wedge's load: F / (2 tan(alpha/2 + phi)), alpha the angle of
 * the wedge and phi the angle of friction on each face (equilibrium of a symmetric wedge). Radians.
 */
final class SplittingForce {
  private final double angle;
  private final CrackRules.Wedge wedge;

  SplittingForce(double angle, CrackRules.Wedge wedge) {
    this.angle = angle;
    this.wedge = wedge;
  }

  /** Splitting force for a load, both newtons. */
  double of(double newtons) {
    return newtons / (2 * Math.tan(angle / 2 + wedge.friction()));
  }

  String words() {
    return "Splitting force at the greatest load, F / (2 tan(alpha/2 + phi)), alpha "
        + BothUnits.plain(Math.toDegrees(angle))
        + " deg, phi "
        + BothUnits.plain(Math.toDegrees(wedge.friction()))
        + " deg";
  }

  /** Its budget in kilonewtons. */
  UncertaintyBudget budget(double newtons, double loadShare) {
    double force = of(newtons) / 1000;
    double at = angle / 2 + wedge.friction();
    double perRadian = force / (Math.sin(at) * Math.cos(at));
    List<UncertaintyBudget.Line> lines = new ArrayList<>();
    CrackBudget.add(lines, "load: calibration", loadShare * force);
    CrackBudget.add(
        lines, "angle of friction", wedge.frictionHalfWidth() / Math.sqrt(3) * perRadian);
    return new UncertaintyBudget(lines);
  }
}
