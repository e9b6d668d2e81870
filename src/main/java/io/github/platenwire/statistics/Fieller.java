package io.github.platenwire.statistics;

/**
 * Fieller's theorem for the quotient of two independent estimates (Fieller 1954): the values ρ with
 * (N − ρD)² ≤ t²(V_N + ρ²V_D), solved as a quadratic. Stateless.
 */
public final class Fieller {
  private Fieller() {}

  /**
   * The set of quotients that the data leave standing.
   *
   * @param numerator estimate N
   * @param numeratorVariance its squared standard error
   * @param denominator estimate D
   * @param denominatorVariance its squared standard error
   * @param t Student's quantile at the level asked for
   */
  public static ConfidenceSet solve(
      double numerator,
      double numeratorVariance,
      double denominator,
      double denominatorVariance,
      double t) {
    // a ρ² − 2 b ρ + c ≤ 0
    double a = denominator * denominator - t * t * denominatorVariance;
    double b = numerator * denominator;
    double c = numerator * numerator - t * t * numeratorVariance;
    // b² − a c, multiplied out: never a small difference of large squares.
    double quarter =
        t
            * t
            * (numerator * numerator * denominatorVariance
                + denominator * denominator * numeratorVariance
                - t * t * numeratorVariance * denominatorVariance);
    if (a > 0) {
      double root = Math.sqrt(Math.max(0, quarter));
      return new ConfidenceSet.Bounded(new Interval((b - root) / a, (b + root) / a));
    }
    if (a == 0) {
      return halfLine(b, c);
    }
    if (quarter <= 0) {
      return new ConfidenceSet.Whole();
    }
    double root = Math.sqrt(quarter);
    return new ConfidenceSet.Unbounded((b + root) / a, (b - root) / a);
  }

  private static ConfidenceSet halfLine(double b, double c) {
    if (b > 0) {
      return new ConfidenceSet.Unbounded(Double.NEGATIVE_INFINITY, c / (2 * b));
    }
    if (b < 0) {
      return new ConfidenceSet.Unbounded(c / (2 * b), Double.POSITIVE_INFINITY);
    }
    return new ConfidenceSet.Whole();
  }
}
