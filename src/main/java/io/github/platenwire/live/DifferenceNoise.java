package io.github.platenwire.live;

/**
 * Noise of a channel whose value may drift: from the second differences of its readings, in which a
 * straight line cancels. For independent noise of variance v a second difference x1 - 2 x2 + x3 has
 * the variance 6 v (JCGM 100, 5.1.2). Steps of the resolution are in it. Constant work a reading.
 * Not thread-safe. Values are in any one unit.
 */
final class DifferenceNoise {
  private static final double VARIANCE_OF_SECOND_DIFFERENCE = 6;

  private double last = Double.NaN;
  private double beforeLast = Double.NaN;
  private double squares;
  private long differences;
  private long readings;
  private long firstMicros;
  private long lastMicros;

  void accept(long micros, double value) {
    if (readings == 0) {
      firstMicros = micros;
    }
    readings++;
    lastMicros = micros;
    double second = value - 2 * last + beforeLast;
    if (!Double.isNaN(second)) {
      squares += second * second;
      differences++;
    }
    beforeLast = last;
    last = value;
  }

  /** Standard deviation of one reading; NaN while there are fewer than three. */
  double deviation() {
    return differences == 0
        ? Double.NaN
        : Math.sqrt(squares / differences / VARIANCE_OF_SECOND_DIFFERENCE);
  }

  /** How many readings come in a stretch of time, at least 1. */
  double readingsIn(long micros) {
    long span = lastMicros - firstMicros;
    return span <= 0 ? 1 : Math.max(1, (double) micros * (readings - 1) / span);
  }
}
