package io.github.platenwire.audit;

import java.util.Optional;

/**
 * Where a trace first reaches 20 % and 90 % of its peak: two places that no shift in time, no scale
 * and no cut before or after the loading moves. Immutable.
 *
 * @param peak greatest value
 * @param from index of the first reading from 20 % of it on
 * @param to index of the first reading from 90 % of it on
 * @param fromMicros when 20 % was crossed
 * @param toMicros when 90 % was crossed
 */
record Landmarks(double peak, double from, double to, double fromMicros, double toMicros) {
  static final double LOW = 0.2;
  private static final double HIGH = 0.9;

  /** Readings between the two. */
  double span() {
    return to - from;
  }

  static Optional<Landmarks> of(LoadTrace trace) {
    int peakIndex = trace.peakIndex();
    if (peakIndex < 0 || trace.values()[peakIndex] <= 0) {
      return Optional.empty();
    }
    double peak = trace.values()[peakIndex];
    int from = crossing(trace.values(), LOW * peak, peakIndex);
    int to = crossing(trace.values(), HIGH * peak, peakIndex);
    if (from < 1 || to - from < 2 || trace.micros()[to] <= trace.micros()[from]) {
      return Optional.empty();
    }
    return Optional.of(new Landmarks(peak, from, to, trace.micros()[from], trace.micros()[to]));
  }

  /**
   * Index at which a level is reached: halfway between the first reading above it and the last one
   * below it, where noise makes the trace cross more than once within a short time.
   */
  private static int crossing(double[] values, double level, int before) {
    int first = 0;
    while (first < before && values[first] < level) {
      first++;
    }
    int nearBy = Math.min(before, first + 2 + before / 100);
    int last = first;
    for (int i = first; i < nearBy; i++) {
      last = values[i] < level ? i + 1 : last;
    }
    return (first + last) / 2;
  }
}
