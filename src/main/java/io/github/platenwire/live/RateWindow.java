package io.github.platenwire.live;

/**
 * The least-squares slope of values against time over a window that slides with the readings. Where
 * readings come too seldom for the window to hold the least number asked for, the latest of them
 * are taken, however old, up to the longest gap; after a longer gap it starts anew. Where they come
 * faster than its capacity allows, the window is as much shorter.
 *
 * <p>Running sums are taken about an origin that moves on with the window; each time it moves, once
 * a window, the sums are formed afresh from the readings held, so rounding errors cannot creep.
 * Each reading is visited about twice in all: constant work a reading on average, no allocation.
 * Not thread-safe.
 */
public final class RateWindow {
  private static final double SECONDS_PER_MICROSECOND = 1e-6;

  private final Settings settings;
  private final long[] micros;
  private final double[] values;
  private int oldest;
  private int count;
  private long originMicros;
  private double originValue;
  private double sumT;
  private double sumY;
  private double sumTt;
  private double sumTy;

  /** Starts empty. */
  public RateWindow(Settings settings) {
    this.settings = settings;
    this.micros = new long[settings.capacity];
    this.values = new double[settings.capacity];
  }

  /**
   * How the window slides.
   *
   * @param windowMicros its length, microseconds
   * @param leastReadings fewest readings that give a slope, at least 2
   * @param longestGapMicros greatest time between two readings in a row
   * @param capacity most readings held, more than {@code leastReadings}
   */
  public record Settings(
      long windowMicros, int leastReadings, long longestGapMicros, int capacity) {
    /** Checks that the figures go together. */
    public Settings {
      if (leastReadings < 2 || capacity <= leastReadings || windowMicros <= 0) {
        throw new IllegalArgumentException(
            "window=" + windowMicros + " least=" + leastReadings + " capacity=" + capacity);
      }
    }
  }

  /** Takes the next trusted reading; times must not fall. */
  public void accept(long elapsedMicros, double value) {
    if (count > 0 && elapsedMicros - newestMicros() > settings.longestGapMicros) {
      count = 0;
    }
    if (count == settings.capacity) {
      removeOldest();
    }
    int slot = (oldest + count) % settings.capacity;
    micros[slot] = elapsedMicros;
    values[slot] = value;
    count++;
    if (count == 1) {
      moveOrigin();
    } else {
      addToSums(slot, 1);
    }
    while (count > settings.leastReadings
        && elapsedMicros - micros[oldest] > settings.windowMicros) {
      removeOldest();
    }
    if (micros[oldest] - originMicros > settings.windowMicros) {
      moveOrigin();
    }
  }

  private long newestMicros() {
    return micros[(oldest + count - 1) % settings.capacity];
  }

  private void removeOldest() {
    addToSums(oldest, -1);
    oldest = (oldest + 1) % settings.capacity;
    count--;
  }

  private void moveOrigin() {
    originMicros = micros[oldest];
    originValue = values[oldest];
    sumT = 0;
    sumY = 0;
    sumTt = 0;
    sumTy = 0;
    for (int i = 0; i < count; i++) {
      addToSums((oldest + i) % settings.capacity, 1);
    }
  }

  private void addToSums(int slot, int sign) {
    double t = (micros[slot] - originMicros) * SECONDS_PER_MICROSECOND;
    double y = values[slot] - originValue;
    sumT += sign * t;
    sumY += sign * y;
    sumTt += sign * t * t;
    sumTy += sign * t * y;
  }

  /**
   * The slope, in the values' unit a second; NaN while there are too few readings, or all of one
   * moment.
   */
  public double slope() {
    if (count < settings.leastReadings || newestMicros() == micros[oldest]) {
      return Double.NaN;
    }
    return (count * sumTy - sumT * sumY) / (count * sumTt - sumT * sumT);
  }

  /** How many readings the slope rests on. */
  public int readings() {
    return count;
  }

  /** Mean time between the readings held, microseconds; 0 while there are fewer than two. */
  public long meanIntervalMicros() {
    return count < 2 ? 0 : (newestMicros() - micros[oldest]) / (count - 1);
  }
}
