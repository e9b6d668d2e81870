package io.github.platenwire.audit;

import java.util.Random;

/** What somebody may do to an honest trace to pass it off as another specimen's. */
final class Forgeries {
  private Forgeries() {}

  /** The same readings at another time of day, rounded to the step they had. */
  static LoadTrace scaled(LoadTrace trace, double load, double time, double step) {
    return changed(trace, i -> Math.rint(trace.values()[i] * load / step) * step, time, 1);
  }

  /** With noise added; {@code share} of the noise that was in it, as a standard deviation. */
  static LoadTrace noisy(LoadTrace trace, double share, double step, long seed) {
    Random random = new Random(seed);
    int from = trace.length() / 3;
    double noise = Residuals.roughness(trace.values(), from, 2 * from);
    return changed(
        trace,
        i -> Math.rint((trace.values()[i] + share * noise * random.nextGaussian()) / step) * step,
        1,
        1);
  }

  /** Without its beginning and its end. */
  static LoadTrace cropped(LoadTrace trace) {
    int from = 0;
    double peak = trace.values()[trace.peakIndex()];
    while (trace.values()[from] < 0.08 * peak) {
      from++;
    }
    int to = Math.min(trace.length(), trace.peakIndex() + 10);
    return LoadTrace.of(
        java.util.Arrays.copyOfRange(trace.micros(), from, to),
        java.util.Arrays.copyOfRange(trace.values(), from, to));
  }

  /** Only every second reading. */
  static LoadTrace thinned(LoadTrace trace, int every) {
    int length = trace.length() / every;
    long[] micros = new long[length];
    double[] values = new double[length];
    for (int i = 0; i < length; i++) {
      micros[i] = trace.micros()[i * every];
      values[i] = trace.values()[i * every];
    }
    return LoadTrace.of(micros, values);
  }

  /** At another rate, with straight lines between the readings. */
  static LoadTrace resampled(LoadTrace trace, double ratio, double step) {
    double[] times = Times.spread(trace.micros());
    int length = (int) (trace.length() * ratio);
    double from = times[0];
    double each = (times[times.length - 1] - from) / length;
    long[] micros = new long[length];
    double[] values = new double[length];
    for (int i = 0; i < length; i++) {
      micros[i] = Math.round(from + i * each);
      double value = Times.at(trace.values(), Times.index(times, from + i * each));
      values[i] = Math.rint(value / step) * step;
    }
    return LoadTrace.of(micros, values);
  }

  /** Sent again through a port: the same readings, stamped anew with jitter of their own. */
  static LoadTrace replayed(LoadTrace trace, long seed) {
    Random random = new Random(seed);
    long[] micros = new long[trace.length()];
    long each = (trace.micros()[trace.length() - 1] - trace.micros()[0]) / trace.length();
    for (int i = 0; i < micros.length; i++) {
      micros[i] = Math.round((i + 0.3 * random.nextDouble()) * each * 1.01) / 16_000 * 16_000;
    }
    return LoadTrace.of(micros, trace.values());
  }

  private interface Value {
    double at(int index);
  }

  private static LoadTrace changed(LoadTrace trace, Value value, double time, long shift) {
    long[] micros = new long[trace.length()];
    double[] values = new double[trace.length()];
    for (int i = 0; i < micros.length; i++) {
      micros[i] = Math.round(trace.micros()[i] * time) + shift;
      values[i] = value.at(i);
    }
    return LoadTrace.of(micros, values);
  }
}
