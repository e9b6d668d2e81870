package io.github.platenwire.record;

import io.github.platenwire.reading.Quality;

/**
 * Counts what came on one channel: readings by quality, rate, jitter, longest gap. Constant work a
 * reading. Not thread-safe.
 *
 * <p>Intervals are taken between frames with a later stamp; frames that came in one read share a
 * stamp and give no interval of their own, so that the rate is right on average and the jitter is
 * that of the arrivals.
 */
public final class ChannelTally {
  private final String channel;
  private final long[] byQuality = new long[Quality.values().length];
  private long firstMicros = -1;
  private long lastMicros = -1;
  private long received;
  private long intervals;
  private double meanInterval;
  private double squares;
  private long longestGapMicros;

  /** Starts counting for a channel. */
  public ChannelTally(String channel) {
    this.channel = channel;
  }

  /** Counts one row. */
  public void count(long elapsedMicros, Quality quality) {
    byQuality[quality.ordinal()]++;
    if (quality == Quality.LATE) {
      return;
    }
    received++;
    if (firstMicros < 0) {
      firstMicros = elapsedMicros;
    } else if (elapsedMicros > lastMicros) {
      interval(elapsedMicros - lastMicros);
    }
    lastMicros = elapsedMicros;
  }

  private void interval(long micros) {
    intervals++;
    double before = micros - meanInterval;
    meanInterval += before / intervals;
    squares += before * (micros - meanInterval);
    longestGapMicros = Math.max(longestGapMicros, micros);
  }

  /** The channel's name. */
  public String channel() {
    return channel;
  }

  /** Frames received, whatever their quality. */
  public long received() {
    return received;
  }

  /** Rows of one quality. */
  public long of(Quality quality) {
    return byQuality[quality.ordinal()];
  }

  /** Rows that are marked in any way: everything but {@link Quality#OK}. */
  public long marked() {
    long marked = 0;
    for (Quality quality : Quality.values()) {
      marked += quality == Quality.OK ? 0 : of(quality);
    }
    return marked;
  }

  /** Readings a second on average; NaN for fewer than two. */
  public double rateHertz() {
    return received < 2 || lastMicros == firstMicros
        ? Double.NaN
        : (received - 1) * 1e6 / (lastMicros - firstMicros);
  }

  /**
   * Standard deviation of the intervals between arrivals, in milliseconds; NaN for fewer than two
   * intervals.
   */
  public double jitterMillis() {
    return intervals < 2 ? Double.NaN : Math.sqrt(squares / (intervals - 1)) / 1000;
  }

  /** Longest interval between arrivals, in milliseconds. */
  public double longestGapMillis() {
    return longestGapMicros / 1000.0;
  }
}
