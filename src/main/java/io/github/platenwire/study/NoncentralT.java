package io.github.platenwire.study;

import io.github.platenwire.statistics.StudentT;

/**
 * The noncentral t distribution, and from it the effect that a t test would find with a given
 * power. P(T ≤ x) is the expectation of Φ(x·s − δ) over s = χ/√ν. Stateless; safe for use by
 * several threads.
 */
final class NoncentralT {
  private NoncentralT() {}

  /** The probability that T with noncentrality δ lies below x. */
  static double below(double x, double degreesOfFreedom, double noncentrality) {
    return Quadrature.overScale(
        degreesOfFreedom, s -> Quadrature.normalBelow(x * s - noncentrality));
  }

  /**
   * The effect, in standard errors, that a two-sided test at 1 − level calls positive with the
   * given power.
   */
  static double detectable(double level, double power, double degreesOfFreedom) {
    double critical = StudentT.twoSided(level, degreesOfFreedom);
    return Quadrature.whereReached(effect -> 1 - below(critical, degreesOfFreedom, effect), power);
  }
}
