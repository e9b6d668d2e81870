package io.github.platenwire.statistics;

import org.hipparchus.distribution.continuous.NormalDistribution;
import org.hipparchus.distribution.continuous.TDistribution;

/**
 * Student's t distribution for whole, broken and infinite degrees of freedom. Stateless; safe for
 * use by several threads.
 */
public final class StudentT {
  private static final NormalDistribution NORMAL = new NormalDistribution(0, 1);

  /** Beyond this many degrees of freedom t and normal quantiles agree to about ten digits. */
  private static final double NEARLY_NORMAL = 1e10;

  private StudentT() {}

  /** The value exceeded in size with probability 1 − level. */
  public static double twoSided(double level, double degreesOfFreedom) {
    return quantile((1 + level) / 2, degreesOfFreedom);
  }

  /** The value below which t lies with the given probability. */
  public static double quantile(double probability, double degreesOfFreedom) {
    return degreesOfFreedom > NEARLY_NORMAL
        ? NORMAL.inverseCumulativeProbability(probability)
        : new TDistribution(degreesOfFreedom).inverseCumulativeProbability(probability);
  }

  /** The probability that t lies at least so far from zero, to either side. */
  public static double twoSidedProbability(double t, double degreesOfFreedom) {
    double below =
        degreesOfFreedom > NEARLY_NORMAL
            ? NORMAL.cumulativeProbability(-Math.abs(t))
            : new TDistribution(degreesOfFreedom).cumulativeProbability(-Math.abs(t));
    return 2 * below;
  }

  /** Degrees of freedom of a sum of two estimated variances (Welch–Satterthwaite). */
  public static double welchDegreesOfFreedom(
      double variance1, int degrees1, double variance2, int degrees2) {
    double sum = variance1 + variance2;
    if (sum == 0) {
      return degrees1 + (double) degrees2;
    }
    // Shares first: squares of very small variances would vanish.
    double share1 = variance1 / sum;
    double share2 = variance2 / sum;
    return 1 / (share1 * share1 / degrees1 + share2 * share2 / degrees2);
  }
}
