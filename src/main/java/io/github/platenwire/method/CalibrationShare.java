package io.github.platenwire.method;

import java.util.List;

/**
 * What the calibration of some channels leaves uncertain: a relative standard uncertainty with its
 * words. Several gauges are taken as one, since they usually come from one laboratory; the worst
 * counts. Immutable.
 */
record CalibrationShare(double relative, String words) {
  private static final double ROOT_3 = Math.sqrt(3);
  private static final double COVERAGE = 2;

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
    boolean known = true;
    for (ChannelFacts channel : channels) {
      known &= channel.calibrationPercent().isPresent();
      worst = Math.max(worst, channel.calibrationPercent().orElse(0));
    }
    return known
        ? new CalibrationShare(worst / 100 / COVERAGE, name + ": calibration certificate")
        : new CalibrationShare(
            limitPercent / 100 / ROOT_3,
            name + ": no certificate, limit of " + BothUnits.plain(limitPercent) + " %");
  }
}
