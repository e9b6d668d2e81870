package io.github.platenwire.commission;

/**
 * How evenly something comes: rate, mean interval and its spread, worked out as it comes by
 * Welford's method (Technometrics 4, 1962, 419). Not thread-safe.
 */
public final class Rhythm {
  private static final double NANOS_PER_SECOND = 1e9;

  private long last;
  private long count;
  private double meanNanos;
  private double squares;
  private double shortestNanos = Double.POSITIVE_INFINITY;
  private double longestNanos;

  /** Takes the next moment, monotonic nanoseconds, not before the last one. */
  public void at(long nanos) {
    if (count > 0) {
      double interval = nanos - last;
      double off = interval - meanNanos;
      meanNanos += off / count;
      squares += off * (interval - meanNanos);
      shortestNanos = Math.min(shortestNanos, interval);
      longestNanos = Math.max(longestNanos, interval);
    }
    last = nanos;
    count++;
  }

  /** How many moments there were. */
  public long moments() {
    return count;
  }

  /** How many a second, NaN before the second one or if all came at once. */
  public double hertz() {
    return count > 1 && meanNanos > 0 ? NANOS_PER_SECOND / meanNanos : Double.NaN;
  }

  /** Standard deviation of the intervals in seconds; NaN before the third moment. */
  public double jitterSeconds() {
    return count > 2 ? Math.sqrt(squares / (count - 2)) / NANOS_PER_SECOND : Double.NaN;
  }

  /** The shortest interval in seconds; NaN before the second moment. */
  public double shortestSeconds() {
    return count > 1 ? shortestNanos / NANOS_PER_SECOND : Double.NaN;
  }

  /** The longest interval in seconds; NaN before the second moment. */
  public double longestSeconds() {
    return count > 1 ? longestNanos / NANOS_PER_SECOND : Double.NaN;
  }
}
