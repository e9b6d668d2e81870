package io.github.platenwire.audit;

/** Parts of a rise whose digits lie on a perfect line. Stateless. */
final class StraightRuns {
  /** The rise from 20 % to 90 % of the peak is cut into so many parts. */
  static final int PARTS = 8;

  /** From so many straight parts on the rise was not measured. */
  static final int MOST_HONEST = 3;

  /** Rounding of a straight line leaves up to half a step; the rest is for the fit. */
  private static final double STEPS_OFF = 0.65;

  private static final int FEWEST_READINGS = 20;

  private StraightRuns() {}

  /**
   * How many parts of the rise lie on a straight line over the number of the reading, or over its
   * time, to within rounding.
   *
   * @param fewestSteps steps of the indicator that a part must rise by for that to say anything
   */
  static int parts(LoadTrace trace, Landmarks rise, int fewestSteps) {
    double step = trace.digitStep();
    int straight = 0;
    int length = (int) (rise.span() / PARTS);
    for (int part = 0; part < PARTS && length >= FEWEST_READINGS; part++) {
      int from = (int) rise.from() + part * length;
      long rises = trace.counts()[from + length - 1] - trace.counts()[from];
      if (rises >= fewestSteps * step
          && (isStraight(trace, from, length, false, step)
              || isStraight(trace, from, length, true, step))) {
        straight++;
      }
    }
    return straight;
  }

  private static boolean isStraight(
      LoadTrace trace, int from, int length, boolean overTime, double step) {
    double meanX = 0;
    double meanY = 0;
    for (int i = from; i < from + length; i++) {
      meanX += x(trace, i, overTime) / length;
      meanY += (double) trace.counts()[i] / length;
    }
    double xx = 0;
    double xy = 0;
    for (int i = from; i < from + length; i++) {
      double x = x(trace, i, overTime) - meanX;
      xx += x * x;
      xy += x * (trace.counts()[i] - meanY);
    }
    double slope = xx == 0 ? 0 : xy / xx;
    for (int i = from; i < from + length; i++) {
      double off = trace.counts()[i] - meanY - slope * (x(trace, i, overTime) - meanX);
      if (Math.abs(off) > STEPS_OFF * step) {
        return false;
      }
    }
    return true;
  }

  private static double x(LoadTrace trace, int index, boolean overTime) {
    return overTime ? trace.micros()[index] : index;
  }
}
