package io.github.platenwire.recorder;

import io.github.platenwire.reading.EscapedBytes;
import io.github.platenwire.reading.Quality;
import java.util.Arrays;

/** Follows one channel before the start. Not thread-safe. */
final class PreviewCounter {
  /** At 10 readings a second, two seconds; at 100, a fifth. */
  private static final int RECENT = 20;

  private final double[] recent = new double[RECENT];
  private long readings;
  private long good;
  private byte[] last = {};
  private boolean linkUp = true;

  void count(byte[] frame, int from, int length, double value, Quality quality) {
    readings++;
    last = Arrays.copyOfRange(frame, from, from + length);
    if (quality == Quality.OK) {
      recent[(int) (good % RECENT)] = value;
      good++;
    }
  }

  void link(boolean up) {
    linkUp = up;
  }

  long readings() {
    return readings;
  }

  Preview.ChannelPreview snapshot() {
    int n = (int) Math.min(good, RECENT);
    double sum = 0;
    double least = Double.POSITIVE_INFINITY;
    double greatest = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < n; i++) {
      sum += recent[i];
      least = Math.min(least, recent[i]);
      greatest = Math.max(greatest, recent[i]);
    }
    return new Preview.ChannelPreview(
        readings,
        good,
        n,
        n == 0 ? Double.NaN : sum / n,
        n == 0 ? Double.NaN : greatest - least,
        EscapedBytes.encode(last),
        linkUp);
  }
}
