package io.github.platenwire.audit;

import java.util.Optional;

/**
 * The outline of a loading, freed from its scale and its time: what share of the peak was reached
 * at each of {@value #POINTS} equal parts of the time between 20 % and 90 % of the peak. Small
 * enough to be kept for every record of an archive. Immutable; safe for any thread.
 *
 * <p>Two tests of companions have similar outlines; two that are the same within the scatter of
 * their averages may be the same readings, and then only their noise can tell.
 */
final class TraceShape {
  /** Points of an outline. */
  static final int POINTS = 24;

  private static final double PLACE_READINGS = 0.4;
  private static final double PLACE_STEPS = 0.7;
  private static final double SCATTERS = 3;
  private static final int FEWEST_READINGS = 2 * POINTS;

  private final double[] shares;
  private final double blur;

  private TraceShape(double[] shares, double blur) {
    this.shares = shares;
    this.blur = blur;
  }

  /**
   * The outline of a trace.
   *
   * @return empty if it has no rise from 20 % to 90 % of its peak in at least {@value
   *     #FEWEST_READINGS} readings
   */
  static Optional<TraceShape> of(LoadTrace trace) {
    Optional<Landmarks> found = Landmarks.of(trace);
    if (found.isEmpty() || found.get().span() < FEWEST_READINGS) {
      return Optional.empty();
    }
    Landmarks marks = found.get();
    double[] sums = new double[POINTS];
    int[] numbers = new int[POINTS];
    double from = marks.fromMicros();
    double duration = marks.toMicros() - from;
    for (int i = (int) marks.from(); i <= marks.to(); i++) {
      int point = (int) (POINTS * (trace.micros()[i] - from) / duration);
      if (point >= 0 && point < POINTS) {
        sums[point] += trace.values()[i];
        numbers[point]++;
      }
    }
    return shape(trace, marks, sums, numbers);
  }

  private static Optional<TraceShape> shape(
      LoadTrace trace, Landmarks marks, double[] sums, int[] numbers) {
    double[] shares = new double[POINTS];
    double last = Landmarks.LOW;
    for (int point = 0; point < POINTS; point++) {
      last = numbers[point] == 0 ? last : sums[point] / numbers[point] / marks.peak();
      shares[point] = last;
    }
    double noise = Residuals.roughness(trace.values(), (int) marks.from(), (int) marks.to());
    double scatter = noise / Residuals.GAIN / marks.peak() / Math.sqrt(marks.span() / POINTS);
    double blur =
        PLACE_READINGS / marks.span()
            + PLACE_STEPS * trace.step() / marks.peak()
            + SCATTERS * scatter;
    return Optional.of(new TraceShape(shares, blur));
  }

  /** Share of the peak at one point. */
  double share(int point) {
    return shares[point];
  }

  /**
   * How far the outline of a copy may lie from this one: its landmarks are known to a reading and a
   * step, its averages as well as noise lets them. A share of the peak.
   */
  double blur() {
    return blur;
  }

  /** Root mean square of the difference to another outline, as a share of the peak. */
  double distance(TraceShape other) {
    double sum = 0;
    for (int point = 0; point < POINTS; point++) {
      double difference = shares[point] - other.shares[point];
      sum += difference * difference;
    }
    return Math.sqrt(sum / POINTS);
  }
}
