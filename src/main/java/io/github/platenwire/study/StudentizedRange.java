package io.github.platenwire.study;

import io.github.platenwire.statistics.Values;

/**
 * The studentized range: the range of k equal normal means over their estimated standard error, as
 * used for pairwise intervals (Tukey, Games–Howell) and, with the spread known, for the greatest
 * range of n results of ASTM C670. Computed as
 *
 * <pre>E over s of k ∫ φ(z) [Φ(z) − Φ(z − q·s)]^(k−1) dz,  s = χ/√ν</pre>
 *
 * <p>by Gauss–Legendre panels, to about eight digits. Stateless; safe for use by several threads.
 */
final class StudentizedRange {
  private StudentizedRange() {}

  /**
   * The probability of a range of at most q.
   *
   * @param means k, at least 2
   * @param degreesOfFreedom at least 1; infinite when the spread is known
   */
  static double below(double q, int means, double degreesOfFreedom) {
    if (means < 2) {
      throw new IllegalArgumentException("a range needs at least two means, k=" + means);
    }
    if (q <= 0) {
      return 0;
    }
    return Quadrature.overScale(degreesOfFreedom, s -> rangeBelow(q * s, means));
  }

  private static double rangeBelow(double width, int means) {
    return means
        * Quadrature.overNormal(z -> Math.pow(Quadrature.normalBetween(z - width, z), means - 1.0));
  }

  /** The q that the range stays below with the given probability. */
  static double quantile(double probability, int means, double degreesOfFreedom) {
    Values.requireLevel(probability);
    return Quadrature.whereReached(q -> below(q, means, degreesOfFreedom), probability);
  }
}
