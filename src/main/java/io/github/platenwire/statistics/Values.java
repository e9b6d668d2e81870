package io.github.platenwire.statistics;

/** Checks that what comes in can be computed with; every complaint names the place. Stateless. */
public final class Values {
  /** Fewer specimens than this in a series give figures, but no interval and no verdict. */
  public static final int FEWEST_FOR_VERDICT = 3;

  /** The confidence level used wherever none is asked for. */
  public static final double LEVEL = 0.95;

  private Values() {}

  public static void requireFinite(String what, double... values) {
    for (int i = 0; i < values.length; i++) {
      if (!Double.isFinite(values[i])) {
        throw new IllegalArgumentException(what + " number " + (i + 1) + " is " + values[i]);
      }
    }
  }

  public static void requirePositive(String what, double... values) {
    requireFinite(what, values);
    for (int i = 0; i < values.length; i++) {
      if (values[i] <= 0) {
        throw new IllegalArgumentException(
            what + " number " + (i + 1) + " must be above zero, it is " + values[i]);
      }
    }
  }

  public static void requireNotNegative(String what, double... values) {
    requireFinite(what, values);
    for (int i = 0; i < values.length; i++) {
      if (values[i] < 0) {
        throw new IllegalArgumentException(
            what + " number " + (i + 1) + " must not be negative, it is " + values[i]);
      }
    }
  }

  public static void requireSameLength(
      String first, int firstLength, String second, int secondLength) {
    if (firstLength != secondLength) {
      throw new IllegalArgumentException(
          "as many " + first + " as " + second + ": " + firstLength + " against " + secondLength);
    }
  }

  public static double requireLevel(double level) {
    if (!(level > 0 && level < 1)) {
      throw new IllegalArgumentException("a level lies between 0 and 1, level=" + level);
    }
    return level;
  }

  /** The sum with what rounding lost carried along (Neumaier's form of Kahan's sum). */
  public static double sum(double... values) {
    double sum = 0;
    double lost = 0;
    for (double value : values) {
      double next = sum + value;
      lost += Math.abs(sum) >= Math.abs(value) ? (sum - next) + value : (value - next) + sum;
      sum = next;
    }
    return sum + lost;
  }

  /** The mean, of a first estimate and then of what is left beside it. */
  public static double mean(double... values) {
    double first = sum(values) / values.length;
    double[] left = new double[values.length];
    for (int i = 0; i < values.length; i++) {
      left[i] = values[i] - first;
    }
    return first + sum(left) / values.length;
  }
}
