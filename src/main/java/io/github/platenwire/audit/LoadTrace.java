package io.github.platenwire.audit;

/**
 * The usable readings of one channel of one record, as plain arrays of one length. Treat the arrays
 * as read-only; then it is safe for any thread.
 *
 * @param micros arrival of each reading, microseconds since the record's origin, never falling
 * @param values in the channel's unit
 * @param counts the digits that the device sent for each reading as one whole number, such as 12345
 *     for {@code +0123.45}; empty where frames are not decimal text
 * @param fewestDecimals least number of digits after the decimal mark in any reading; 0 if {@code
 *     counts} is empty
 * @param mostDecimals greatest number of digits after the decimal mark
 */
@SuppressWarnings("ArrayRecordComponent") // handed over whole, never compared
record LoadTrace(
    long[] micros, double[] values, long[] counts, int fewestDecimals, int mostDecimals) {
  /**
   * Checks that the arrays go together.
   *
   * @throws IllegalArgumentException if their lengths differ
   */
  LoadTrace {
    boolean together = micros.length == values.length;
    if (!together || (counts.length != 0 && counts.length != values.length)) {
      throw new IllegalArgumentException(
          "a trace has as many times as values and digits, times="
              + micros.length
              + " values="
              + values.length
              + " counts="
              + counts.length);
    }
  }

  /** A trace of which only times and values are known. */
  static LoadTrace of(long[] micros, double[] values) {
    return new LoadTrace(micros, values, new long[0], 0, 0);
  }

  /** How many readings. */
  int length() {
    return values.length;
  }

  /** Whether the device's own digits are known. */
  boolean hasDigits() {
    return counts.length > 0;
  }

  /** Index of the first greatest value; -1 if there is no reading. */
  int peakIndex() {
    int peak = -1;
    for (int i = 0; i < values.length; i++) {
      if (peak < 0 || values[i] > values[peak]) {
        peak = i;
      }
    }
    return peak;
  }

  /**
   * The step of the indicator: what divides all that it sent; where that is not known, the smallest
   * difference between two readings that follow each other and are not the same. 0 if all are the
   * same.
   */
  double step() {
    return hasDigits() ? digitStep() * Math.pow(10, -mostDecimals) : smallestDifference();
  }

  /** The greatest number that divides all {@link #counts}; at least 1. */
  long digitStep() {
    long step = 0;
    for (long count : counts) {
      long other = Math.abs(count);
      while (other != 0) {
        long rest = step % other;
        step = other;
        other = rest;
      }
      if (step == 1) {
        return 1;
      }
    }
    return Math.max(1, step);
  }

  private double smallestDifference() {
    double peak = 0;
    for (double value : values) {
      peak = Math.max(peak, Math.abs(value));
    }
    double step = Double.POSITIVE_INFINITY;
    for (int i = 1; i < values.length; i++) {
      double difference = Math.abs(values[i] - values[i - 1]);
      if (difference > peak * 1e-9) {
        step = Math.min(step, difference);
      }
    }
    return Double.isInfinite(step) ? 0 : step;
  }
}
