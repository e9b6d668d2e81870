package io.github.platenwire.audit;

import java.util.Arrays;

/**
 * What is left of readings when their course is taken out: their noise. The course is the cubic
 * through seven neighbouring readings by least squares (the weights of A. Savitzky and M. Golay,
 * 1964, from memory). Stateless.
 */
final class Residuals {
  /** Readings on each side that a course is taken from. */
  static final int REACH = 3;

  /** Share of white noise, as a standard deviation, that is left: the root of 1 − 7/21. */
  static final double GAIN = Math.sqrt(2.0 / 3);

  /** Beyond so many middle deviations a residual counts no more: jumps must not decide. */
  private static final double MOST_DEVIATIONS = 4;

  private static final double[] WEIGHTS = {
    -2 / 21.0, 3 / 21.0, 6 / 21.0, 7 / 21.0, 6 / 21.0, 3 / 21.0, -2 / 21.0
  };

  private Residuals() {}

  /**
   * The residual of each value but the first and last three.
   *
   * @param values where the readings are
   * @param into takes the residuals, six fewer
   */
  static void of(double[] values, double[] into) {
    for (int i = 0; i < into.length; i++) {
      into[i] = at(values, i + REACH);
    }
  }

  private static double at(double[] values, int index) {
    double course = 0;
    for (int k = 0; k < WEIGHTS.length; k++) {
      course += WEIGHTS[k] * values[index - REACH + k];
    }
    return values[index] - course;
  }

  /** Root mean square of the residuals of a part of a trace; 0 if it is too short. */
  static double roughness(double[] values, int from, int to) {
    double sum = 0;
    int number = 0;
    for (int i = Math.max(from, REACH); i < Math.min(to, values.length - REACH); i++) {
      double residual = at(values, i);
      sum += residual * residual;
      number++;
    }
    return number == 0 ? 0 : Math.sqrt(sum / number);
  }

  /** Cuts what lies far outside the middle of the residuals down to its edge. */
  static void clip(double[] residuals) {
    double[] sizes = new double[residuals.length];
    for (int i = 0; i < sizes.length; i++) {
      sizes[i] = Math.abs(residuals[i]);
    }
    Arrays.sort(sizes);
    double edge = MOST_DEVIATIONS * sizes[sizes.length / 2];
    for (int i = 0; i < residuals.length; i++) {
      residuals[i] = Math.max(-edge, Math.min(edge, residuals[i]));
    }
  }

  /** Correlation of two series about zero; 0 where one of them is nothing but zeros. */
  static double correlation(double[] a, double[] b) {
    double ab = 0;
    double aa = 0;
    double bb = 0;
    for (int i = 0; i < a.length; i++) {
      ab += a[i] * b[i];
      aa += a[i] * a[i];
      bb += b[i] * b[i];
    }
    return aa == 0 || bb == 0 ? 0 : ab / Math.sqrt(aa * bb);
  }
}
