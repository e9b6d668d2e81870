package io.github.platenwire.audit;

import java.util.Arrays;
import java.util.Optional;
import java.util.function.IntToDoubleFunction;

/**
 * How alike the noise of two traces is, once their times and loads are laid over each other. The
 * loading is cut into short stretches; in each the shift is sought at which the residuals agree
 * best; the middle one of the stretches' correlations counts, so that neither one lucky stretch nor
 * one spoilt by an edit decides. Confined to one thread.
 */
final class NoiseMatch {
  private static final int MOST_STRETCHES = 12;
  private static final int FEWEST_TO_PROBE = 6;

  /** Three stretches that all correlate less than this are not of one trace. */
  private static final double UNLIKE = 0.4;

  private static final int READINGS = 128;
  private static final int FEWEST_READINGS = 40;
  private static final double SHIFT_SHARE = 0.004;
  private static final int MOST_SHIFT = 48;

  /**
   * Below this many steps of the indicator, residuals are rounding and nothing else. Rounding of an
   * even course leaves at most 0.289 steps (one over the root of twelve), and its pattern repeats
   * in any two tests of the same rate; where a step takes three readings, taking the course out
   * makes that pattern greater by 1.29, which is the most it can.
   */
  private static final double MUTE_STEPS = 0.289 * 1.3;

  private final LoadTrace sparse;
  private final LoadTrace dense;
  private final Landmarks sparseMarks;
  private final Landmarks denseMarks;
  private final double ratio;

  private NoiseMatch(
      LoadTrace sparse, Landmarks sparseMarks, LoadTrace dense, Landmarks denseMarks) {
    this.sparse = sparse;
    this.sparseMarks = sparseMarks;
    this.dense = dense;
    this.denseMarks = denseMarks;
    this.ratio = denseMarks.span() / sparseMarks.span();
  }

  /**
   * Compares two traces.
   *
   * @return the middle correlation of their noise, -1 to 1; empty if too little of it is more than
   *     rounding, or the traces are too short, so that nothing can be told
   */
  static Optional<Found> of(LoadTrace a, Landmarks aMarks, LoadTrace b, Landmarks bMarks) {
    NoiseMatch match =
        aMarks.span() <= bMarks.span()
            ? new NoiseMatch(a, aMarks, b, bMarks)
            : new NoiseMatch(b, bMarks, a, aMarks);
    double best = match.best();
    return Double.isNaN(best)
        ? Optional.empty()
        : Optional.of(new Found(best, (int) match.sparseMarks.span() / READINGS));
  }

  /**
   * What was found.
   *
   * @param correlation the middle one of the stretches' correlations
   * @param stretches how many full stretches there were; 0 if the traces are shorter than one
   */
  record Found(double correlation, int stretches) {}

  private double best() {
    double byNumber = middle(dense.values(), Clock.NUMBER);
    double byTime = middle(dense.values(), Clock.TIME);
    double best = Math.max(byNumber, byTime); // both are NaN or none is
    if (ratio >= 1.8) {
      double[] averaged = averaged(dense.values(), (int) Math.round(ratio));
      best = Math.max(best, middle(averaged, Clock.NUMBER));
      best = Math.max(best, middle(averaged, Clock.TIME));
    }
    return best;
  }

  /** What runs evenly in both traces: the number of the reading, or its time. */
  private enum Clock {
    NUMBER,
    TIME
  }

  private double middle(double[] denseValues, Clock clock) {
    int from = (int) sparseMarks.from();
    int span = (int) sparseMarks.span();
    int stretches = Math.max(1, Math.min(MOST_STRETCHES, span / READINGS));
    int readings = Math.min(READINGS, span / stretches);
    if (readings < FEWEST_READINGS) {
      return Double.NaN;
    }
    double[] denseTimes = clock == Clock.TIME ? Times.even(dense.micros()) : new double[0];
    double[] sparseTimes = clock == Clock.TIME ? Times.even(sparse.micros()) : new double[0];
    IntToDoubleFunction correlation =
        stretch -> {
          int start = from + (int) ((long) stretch * span / stretches);
          double[] places = places(start, readings, clock, sparseTimes, denseTimes);
          return stretch(start, readings, places, denseValues);
        };
    double probed = probe(stretches, correlation);
    return Double.isNaN(probed) ? middle(stretches, correlation) : probed;
  }

  /**
   * Looks at three of many stretches: where none of them is alike, the others need not be looked
   * at, and nearly all pairs of an archive end here.
   *
   * @return the greatest correlation of the three; NaN if the others must be looked at
   */
  private static double probe(int stretches, IntToDoubleFunction correlation) {
    if (stretches < FEWEST_TO_PROBE) {
      return Double.NaN;
    }
    double greatest = -1;
    for (int stretch : new int[] {1, stretches / 2, stretches - 2}) {
      double found = correlation.applyAsDouble(stretch);
      if (!(found < UNLIKE)) {
        return Double.NaN;
      }
      greatest = Math.max(greatest, found);
    }
    return greatest;
  }

  private static double middle(int stretches, IntToDoubleFunction correlation) {
    double[] found = new double[stretches];
    int speaking = 0;
    for (int stretch = 0; stretch < stretches; stretch++) {
      double one = correlation.applyAsDouble(stretch);
      if (!Double.isNaN(one)) {
        found[speaking++] = one;
      }
    }
    if (2 * speaking < stretches) {
      return Double.NaN;
    }
    double[] heard = Arrays.copyOf(found, speaking);
    Arrays.sort(heard);
    return heard[(speaking - 1) / 2];
  }

  /**
   * Where in the dense trace each reading of a stretch would lie, as a broken index. The times are
   * those of even samplers: with stamps as they came, the jitter of one trace would show up in
   * both.
   */
  private double[] places(
      int start, int readings, Clock clock, double[] sparseTimes, double[] denseTimes) {
    double[] places = new double[readings];
    double stretching =
        (denseMarks.toMicros() - denseMarks.fromMicros())
            / (sparseMarks.toMicros() - sparseMarks.fromMicros());
    for (int i = 0; i < readings; i++) {
      if (clock == Clock.NUMBER) {
        places[i] = denseMarks.from() + (start + i - sparseMarks.from()) * ratio;
      } else {
        double after = sparseTimes[start + i] - sparseTimes[(int) sparseMarks.from()];
        double at = denseTimes[(int) denseMarks.from()] + after * stretching;
        places[i] = Times.index(denseTimes, at);
      }
    }
    return places;
  }

  private double stretch(int start, int readings, double[] places, double[] denseValues) {
    double[] own = new double[readings - 2 * Residuals.REACH];
    Residuals.of(Arrays.copyOfRange(sparse.values(), start, start + readings), own);
    if (rootMeanSquare(own) < MUTE_STEPS * sparse.step()) {
      return Double.NaN;
    }
    Residuals.clip(own);
    double[] course = new double[readings];
    double[] other = new double[own.length];
    double reach = Math.min(MOST_SHIFT, 6 + SHIFT_SHARE * sparseMarks.span()) * ratio;
    double best = -1;
    for (double shift = -reach; shift <= reach; shift += 0.5) {
      for (int i = 0; i < readings; i++) {
        course[i] = Times.at(denseValues, places[i] + shift);
      }
      Residuals.of(course, other);
      best = Math.max(best, Residuals.correlation(own, other));
    }
    return best;
  }

  private static double rootMeanSquare(double[] values) {
    double sum = 0;
    for (double value : values) {
      sum += value * value;
    }
    return Math.sqrt(sum / values.length);
  }

  /** Running means, as a copy with fewer readings may have been made from. */
  private static double[] averaged(double[] values, int width) {
    double[] averaged = new double[values.length];
    double sum = 0;
    for (int i = 0; i < values.length; i++) {
      sum += values[i] - (i >= width ? values[i - width] : 0);
      averaged[Math.max(0, i - width / 2)] = sum / Math.min(width, i + 1);
    }
    return averaged;
  }
}
