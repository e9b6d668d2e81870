package io.github.platenwire.method;

import io.github.platenwire.quantity.UncertaintyBudget;
import java.util.List;

/**
 * What the calibration of some channels leaves uncertain, as relative standard uncertainties.
 * Several gauges are taken as one, since they usually come from one laboratory; the worst counts.
 * Immutable.
 *
 * @param scale of the certificate, or of the limit in its place
 * @param words what that is
 * @param residual of what the correction leaves over
 * @param residualWords what that is
 */
record CalibrationShare(double scale, String words, double residual, String residualWords) {
  private static final double ROOT_3 = Math.sqrt(3);
  private static final double COVERAGE = 2;
  private static final String RESIDUAL = ": calibration certificate, residual of its correction";

  /**
   * From the certificates; where one is missing, from a limit taken as rectangular (JCGM 100,
   * 4.3.7).
   *
   * @param name for the words, such as {@code load}
   * @param channels at least one
   * @param limitPercent the limit
   */
  static CalibrationShare of(String name, List<ChannelFacts> channels, double limitPercent) {
    double worst = 0;
    double residual = 0;
    boolean known = true;
    for (ChannelFacts channel : channels) {
      known &= channel.calibrationPercent().isPresent();
      worst = Math.max(worst, channel.calibrationPercent().orElse(0));
      residual = Math.max(residual, channel.correctionPercent().orElse(0) / 100 / COVERAGE);
    }
    return known
        ? new CalibrationShare(
            worst / 100 / COVERAGE, name + ": calibration certificate", residual, name + RESIDUAL)
        : new CalibrationShare(
            limitPercent / 100 / ROOT_3,
            name + ": no certificate, limit of " + BothUnits.plain(limitPercent) + " %",
            residual,
            name + RESIDUAL);
  }

  /** Both together. */
  double relative() {
    return Math.hypot(scale, residual);
  }

  /** A line for each, of what they are worth in a figure. */
  void addTo(List<UncertaintyBudget.Line> lines, double worth) {
    CrackBudget.add(lines, words, scale * worth);
    CrackBudget.add(lines, residualWords, residual * worth);
  }
}
