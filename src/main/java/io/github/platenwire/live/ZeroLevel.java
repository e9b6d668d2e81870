package io.github.platenwire.live;

/**
 * The zero of one channel. Immutable.
 *
 * @param value mean of its quiet readings, in the channel's unit; NaN if there were none
 * @param noise their standard deviation; 0 if all were equal
 * @param readings how many there were
 * @param firstSeq number of the first; 0 if there were none
 * @param lastSeq number of the last
 */
public record ZeroLevel(double value, double noise, int readings, long firstSeq, long lastSeq) {
  /** Whether there is a zero. */
  public boolean isKnown() {
    return !Double.isNaN(value);
  }
}
