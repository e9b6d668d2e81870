package io.github.platenwire.commission;

/** Numbers that run on by themselves, whatever the load does. Stateless. */
final class Running {
  private static final int FEWEST = 4;

  /** So many steps in a hundred must be alike; the others are torn lines and turns to zero. */
  private static final int ALIKE_PERCENT = 90;

  /** By how much of a step an even clock's steps differ, by its rounding. */
  private static final double UNEVEN = 0.05;

  private Running() {}

  /** Whether whole numbers go up by one. */
  static boolean isCounter(double[] values) {
    int ones = 0;
    for (int i = 1; i < values.length; i++) {
      ones += values[i] - values[i - 1] == 1 ? 1 : 0;
    }
    return alike(ones, values.length);
  }

  /** Whether numbers go up by steps that are nearly the same. */
  static boolean isClock(double[] values) {
    if (values.length < FEWEST) {
      return false;
    }
    double mean = (values[values.length - 1] - values[0]) / (values.length - 1);
    int even = 0;
    for (int i = 1; i < values.length; i++) {
      even += Math.abs(values[i] - values[i - 1] - mean) <= UNEVEN * mean ? 1 : 0;
    }
    return mean > 0 && alike(even, values.length);
  }

  private static boolean alike(int steps, int count) {
    return count >= FEWEST && steps * 100L >= (count - 1) * (long) ALIKE_PERCENT;
  }
}
