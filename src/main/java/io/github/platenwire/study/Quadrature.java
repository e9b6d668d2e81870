package io.github.platenwire.study;

import java.util.function.DoubleUnaryOperator;
import org.hipparchus.analysis.integration.gauss.GaussIntegrator;
import org.hipparchus.analysis.integration.gauss.GaussIntegratorFactory;
import org.hipparchus.analysis.solvers.AllowedSolution;
import org.hipparchus.analysis.solvers.BracketingNthOrderBrentSolver;
import org.hipparchus.special.Erf;
import org.hipparchus.special.Gamma;

/**
 * Integrals over normal and chi densities by Gauss–Legendre panels, and the inverse of a
 * distribution function: what the distributions that the library lacks are made of. Stateless; safe
 * for use by several threads.
 */
final class Quadrature {
  private static final GaussIntegrator RULE = new GaussIntegratorFactory().legendre(32);

  /** Beyond so many standard deviations a normal density is below 1e-15 of its top. */
  private static final double NORMAL_REACH = 8.5;

  private static final double SQRT_TWO = Math.sqrt(2);
  private static final double SQRT_TWO_PI = Math.sqrt(2 * Math.PI);

  /** Places of the table for each unit. */
  private static final int TABLE_STEPS = 64;

  private static final double[] BELOW = table(z -> Erf.erfc(-z / SQRT_TWO) / 2);
  private static final double[] DENSITY = table(z -> Math.exp(-z * z / 2) / SQRT_TWO_PI);

  private Quadrature() {}

  private static double[] table(DoubleUnaryOperator function) {
    double[] table = new double[(int) (2 * NORMAL_REACH * TABLE_STEPS) + 1];
    for (int place = 0; place < table.length; place++) {
      table[place] = function.applyAsDouble(place / (double) TABLE_STEPS - NORMAL_REACH);
    }
    return table;
  }

  /** The integral from low to high in equal panels of 32 points. */
  static double integrate(DoubleUnaryOperator function, double low, double high, int panels) {
    double half = (high - low) / panels / 2;
    double sum = 0;
    for (int panel = 0; panel < panels; panel++) {
      double centre = low + (2 * panel + 1) * half;
      for (int i = 0; i < RULE.getNumberOfPoints(); i++) {
        sum += RULE.getWeight(i) * function.applyAsDouble(centre + half * RULE.getPoint(i));
      }
    }
    return sum * half;
  }

  /** The expectation of a function of a standard normal variable. */
  static double overNormal(DoubleUnaryOperator function) {
    return integrate(
        z -> Math.exp(-z * z / 2) / SQRT_TWO_PI * function.applyAsDouble(z),
        -NORMAL_REACH,
        NORMAL_REACH,
        2);
  }

  /**
   * The expectation of a function of s = χ/√ν, the estimated over the true standard deviation.
   *
   * @param degreesOfFreedom ν, at least 1; infinite when the standard deviation is known
   */
  static double overScale(double degreesOfFreedom, DoubleUnaryOperator function) {
    if (!(degreesOfFreedom >= 1)) {
      throw new IllegalArgumentException("degrees of freedom below 1: " + degreesOfFreedom);
    }
    // 1/(4ν²) is below the error of the panels from here on.
    if (degreesOfFreedom > 1e7) {
      return function.applyAsDouble(1);
    }
    double halfDegrees = degreesOfFreedom / 2;
    double logScale =
        Math.log(2) + halfDegrees * Math.log(halfDegrees) - Gamma.logGamma(halfDegrees);
    double reach = 9 / Math.sqrt(2 * degreesOfFreedom);
    return integrate(
        s ->
            Math.exp(logScale + (degreesOfFreedom - 1) * Math.log(s) - halfDegrees * s * s)
                * function.applyAsDouble(s),
        Math.max(0, 1 - reach),
        1 + reach,
        2);
  }

  /**
   * The standard normal distribution function, to 1e-15: five terms of Taylor's series about the
   * nearest place of a table, as the integrals ask for it some ten thousand times.
   */
  static double normalBelow(double z) {
    if (Math.abs(z) >= NORMAL_REACH) {
      return z < 0 ? 0 : 1;
    }
    int place = (int) Math.rint((z + NORMAL_REACH) * TABLE_STEPS);
    double z0 = place / (double) TABLE_STEPS - NORMAL_REACH;
    double h = z - z0;
    double second = -z0 / 2;
    double third = (z0 * z0 - 1) / 6;
    double fourth = -z0 * (z0 * z0 - 3) / 24;
    double fifth = (z0 * z0 * (z0 * z0 - 6) + 3) / 120;
    return BELOW[place]
        + DENSITY[place] * h * (1 + h * (second + h * (third + h * (fourth + h * fifth))));
  }

  /** The probability of a standard normal variable between two values. */
  static double normalBetween(double low, double high) {
    return normalBelow(high) - normalBelow(low);
  }

  /**
   * Where a rising function that starts below the target at zero reaches it, to about ten digits.
   */
  static double whereReached(DoubleUnaryOperator rising, double target) {
    double high = 2;
    while (rising.applyAsDouble(high) < target) {
      high *= 2;
      if (high > 1e6) {
        throw new IllegalArgumentException("not reached below a million: " + target);
      }
    }
    return new BracketingNthOrderBrentSolver(1e-11, 1e-10, 5)
        .solve(200, x -> rising.applyAsDouble(x) - target, 0, high, AllowedSolution.ANY_SIDE);
  }
}
