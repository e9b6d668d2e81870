package io.github.platenwire.live;

/**
 * Looks for the quiet start of one channel: the first stretch of readings that is long enough and
 * whose spread stays within a limit. A reading that would widen it too far starts it anew. Where
 * none was long enough, the longest serves. Not thread-safe.
 */
final class ZeroSearch {
  private static final int LEAST_READINGS = 3;

  private final double quietSpread;
  private final long windowMicros;
  private int count;
  private double mean;
  private double squares;
  private double least;
  private double greatest;
  private long firstMicros;
  private long firstSeq;
  private long lastSeq;
  private boolean found;
  private double leastSeen = Double.POSITIVE_INFINITY;
  private int bestCount;
  private double bestMean;
  private double bestSquares;
  private long bestFirstSeq;
  private long bestLastSeq;

  ZeroSearch(double quietSpread, long windowMicros) {
    this.quietSpread = quietSpread;
    this.windowMicros = windowMicros;
  }

  void accept(long seq, long micros, double value) {
    if (found) {
      return;
    }
    leastSeen = Math.min(leastSeen, value);
    if (count == 0 || Math.max(greatest, value) - Math.min(least, value) > quietSpread) {
      keepIfBest();
      count = 0;
      mean = 0;
      squares = 0;
      least = value;
      greatest = value;
      firstMicros = micros;
      firstSeq = seq;
    }
    least = Math.min(least, value);
    greatest = Math.max(greatest, value);
    lastSeq = seq;
    count++;
    double from = value - mean;
    mean += from / count;
    squares += from * (value - mean);
    found = count >= LEAST_READINGS && micros - firstMicros >= windowMicros;
  }

  boolean isFound() {
    return found;
  }

  private void keepIfBest() {
    if (count > bestCount) {
      bestCount = count;
      bestMean = mean;
      bestSquares = squares;
      bestFirstSeq = firstSeq;
      bestLastSeq = lastSeq;
    }
  }

  /** Whether a value lies above the least so far by more than a rise. */
  boolean isLeftBy(double value, double rise) {
    return value - leastSeen > rise;
  }

  /** The zero found, or else the longest quiet stretch so far. */
  ZeroLevel level() {
    if (found) {
      return level(count, mean, squares, firstSeq, lastSeq);
    }
    keepIfBest();
    return bestCount >= LEAST_READINGS
        ? level(bestCount, bestMean, bestSquares, bestFirstSeq, bestLastSeq)
        : new ZeroLevel(Double.NaN, Double.NaN, 0, 0, 0);
  }

  private static ZeroLevel level(int count, double mean, double squares, long first, long last) {
    return new ZeroLevel(mean, Math.sqrt(squares / (count - 1)), count, first, last);
  }
}
