package io.github.platenwire.audit;

import java.util.Arrays;

/** Places between readings. Stateless. */
final class Times {
  /** Readings on each side over which stamps are evened out. */
  private static final int EVEN_REACH = 16;

  private Times() {}

  /**
   * Arrival times with those that share a stamp spread back to the stamp before: adapters hand
   * several frames over at once.
   *
   * @return microseconds, rising
   */
  static double[] spread(long[] micros) {
    double[] spread = new double[micros.length];
    int from = 0;
    while (from < micros.length) {
      int to = from + 1;
      while (to < micros.length && micros[to] == micros[from]) {
        to++;
      }
      double before = from == 0 ? micros[0] - 1.0 : micros[from - 1];
      for (int i = from; i < to; i++) {
        spread[i] = micros[from] - (micros[from] - before) * (to - 1 - i) / (to - from);
      }
      from = to;
    }
    return spread;
  }

  /** Times as an even sampler would have had them: stamps come in bursts and with jitter. */
  static double[] even(long[] micros) {
    double[] times = spread(micros);
    double[] even = new double[times.length];
    for (int i = 0; i < times.length; i++) {
      int reach = Math.min(EVEN_REACH, Math.min(i, times.length - 1 - i));
      double sum = 0;
      for (int k = i - reach; k <= i + reach; k++) {
        sum += times[k];
      }
      even[i] = sum / (2 * reach + 1);
    }
    return even;
  }

  /** The place of a time among rising times, as a broken index; held at the ends. */
  static double index(double[] rising, double at) {
    int found = Arrays.binarySearch(rising, at);
    if (found >= 0) {
      return found;
    }
    int next = -found - 1;
    if (next == 0 || next == rising.length) {
      return next == 0 ? 0 : rising.length - 1;
    }
    return next - 1 + (at - rising[next - 1]) / (rising[next] - rising[next - 1]);
  }

  /** The value at a broken index, straight between readings, held at the ends. */
  static double at(double[] values, double index) {
    if (index <= 0) {
      return values[0];
    }
    int before = (int) index;
    if (before >= values.length - 1) {
      return values[values.length - 1];
    }
    return values[before] + (index - before) * (values[before + 1] - values[before]);
  }
}
