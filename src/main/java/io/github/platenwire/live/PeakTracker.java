package io.github.platenwire.live;

/**
 * The greatest of the trusted loads, with its neighbours in time. Of equal loads the first is the
 * peak. Constant work and no allocation a reading. Not thread-safe. Loads are in any one unit.
 */
public final class PeakTracker {
  private double peak = Double.NaN;
  private long peakSeq;
  private long peakMicros;
  private long beforeSeq;
  private long beforeMicros;
  private long afterSeq;
  private long afterMicros;
  private long lastSeq;
  private long lastMicros;

  /**
   * Takes the next trusted reading.
   *
   * @return whether it is a new peak
   */
  public boolean accept(long seq, long elapsedMicros, double load) {
    boolean higher = !(load <= peak);
    if (higher) {
      peak = load;
      peakSeq = seq;
      peakMicros = elapsedMicros;
      beforeSeq = lastSeq;
      beforeMicros = lastMicros;
      afterSeq = 0;
    } else if (afterSeq == 0) {
      afterSeq = seq;
      afterMicros = elapsedMicros;
    }
    lastSeq = seq;
    lastMicros = elapsedMicros;
    return higher;
  }

  /** The greatest load; NaN before the first reading. */
  public double peak() {
    return peak;
  }

  /** Number of the peak's row; 0 before the first reading. */
  public long peakSeq() {
    return peakSeq;
  }

  /** Time of the peak, microseconds. */
  public long peakMicros() {
    return peakMicros;
  }

  /** Number of the trusted row before the peak; 0 if there is none. */
  public long beforeSeq() {
    return beforeSeq;
  }

  /** Number of the trusted row after the peak; 0 if there is none. */
  public long afterSeq() {
    return afterSeq;
  }

  /**
   * How far the true peak can lie above the greatest reading, for want of a reading at that moment:
   * the rate of loading at the peak times the longer of the times to its neighbours.
   *
   * @param ratePerSecond rate of loading at the peak; its sign does not matter
   * @param leastIntervalMicros what the time between readings is at least taken for, where stamps
   *     come in bursts
   * @return NaN if the rate is not known
   */
  public double samplingBound(double ratePerSecond, long leastIntervalMicros) {
    long interval = leastIntervalMicros;
    if (beforeSeq != 0) {
      interval = Math.max(interval, peakMicros - beforeMicros);
    }
    if (afterSeq != 0) {
      interval = Math.max(interval, afterMicros - peakMicros);
    }
    return Math.abs(ratePerSecond) * interval * 1e-6;
  }
}
