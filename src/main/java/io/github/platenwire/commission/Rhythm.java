package io.github.platenwire.commission;

/**
 * How evenly something comes: rate, mean interval and its spread, worked out as it comes by
 * Welford's method (Technometrics 4, 1962, 419). Not thread-safe.
 */
public final class Rhythm {
  private static final double NANOS_PER_SECOND = 1e9;

  private long last;
  private long moments;
  private long count;
  private boolean joined;
  private double meanNanos;
  private double squares;
  private double shortestNanos = Double.POSITIVE_INFINITY;
  private double longestNanos;

  /** Takes the next moment, monotonic nanoseconds, not before the last one. */
  public void at(long nanos) {
    if (joined) {
      double interval = nanos - last;
      count++;
      double off = interval - meanNanos;
      meanNanos += off / count;
      squares += off * (interval - meanNanos);
      shortestNanos = Math.min(shortestNanos, interval);
      longestNanos = Math.max(longestNanos, interval);
    }
    joined = true;
    last = nanos;
    moments++;
  }

  /** The link broke: what lies between the last moment and the next is no interval. */
  public void pause() {
    joined = false;
  }

  /** How many moments there were. */
  public long moments() {
    return moments;
  }

  /** How many a second, NaN before the second one or if all came at once. */
  public double hertz() {
    return count > 0 && meanNanos > 0 ? NANOS_PER_SECOND / meanNanos : Double.NaN;
  }

  /** Standard deviation of the intervals in seconds; NaN before the third moment. */
  public double jitterSeconds() {
    return count > 1 ? Math.sqrt(squares / (count - 1)) / NANOS_PER_SECOND : Double.NaN;
  }

  /** The shortest interval in seconds; NaN before the second moment. */
  public double shortestSeconds() {
    return count > 0 ? shortestNanos / NANOS_PER_SECOND : Double.NaN;
  }

  /** The longest interval in seconds; NaN before the second moment. */
  public double longestSeconds() {
    return count > 0 ? longestNanos / NANOS_PER_SECOND : Double.NaN;
  }
}
