package io.github.platenwire.live;

import java.util.Arrays;

/**
 * What noise, resolution, zero and timing make uncertain, by JCGM 100:2008; the calibrations are
 * for the method to add. Not thread-safe.
 */
final class CrackUncertainty {
  private static final int REACH_OF_JUMP = 64;
  private static final double LEAST_JUMP = 0.002;

  private final CrackSettings settings;
  private final InitialLine line;
  private final VirginCurve curve;
  private final CrackWidth width;
  private final double[] zeroVariances;
  private double loadNoise;

  CrackUncertainty(CrackSettings settings, InitialLine line, VirginCurve curve, CrackWidth width) {
    this.settings = settings;
    this.line = line;
    this.curve = curve;
    this.width = width;
    zeroVariances = new double[settings.gauges().size()];
    Arrays.fill(zeroVariances, Double.NaN);
  }

  void zero(int gauge, ZeroLevel level) {
    zeroVariances[gauge] =
        SteppedMean.variance(
            level.noise(), settings.gauges().get(gauge).resolution(), level.readings());
  }

  void loadNoise(double newtons) {
    loadNoise = newtons;
  }

  double loadNoise() {
    return loadNoise;
  }

  /** Parts of the width at a place of the curve; NaN where the initial line is unknown. */
  WidthAtLoad.Parts ofWidth(int place, double load) {
    int mask = curve.mask(place);
    int rows = curve.rows(place);
    double slope = Math.abs(curve.slopeAt(place));
    return new WidthAtLoad.Parts(
        noise(rows, mask),
        Math.sqrt(zeroVariance(mask)),
        stretch(load, mask),
        slope * curve.rateAt(place) * settings.timingMicros() * 1e-6,
        slope * loadNoise / Math.sqrt(rows),
        jump(place));
  }

  /** Parts of the width of a row at which the load stands still, as at the end of an unloading. */
  WidthAtLoad.Parts atRest(CrackRow row) {
    return new WidthAtLoad.Parts(
        noise(row.rows, row.mask),
        Math.sqrt(zeroVariance(row.mask)),
        stretch(row.load, row.mask),
        0,
        0,
        0);
  }

  /** Standard uncertainty of the mean opening over some rows by noise; NaN without a line. */
  double noise(int rows, int mask) {
    return line.isFitted(mask) ? Math.sqrt(line.noiseVariance(rows, mask)) : Double.NaN;
  }

  /** Of the difference in width of two rows at nearly one load, gauges' scale left out. */
  double ofDifference(CrackRow from, CrackRow to) {
    int place = curve.placeNear(to.load);
    double slope = place < 0 ? 0 : Math.abs(curve.slopeAt(place));
    double moved = slope * Math.abs(to.load - from.load);
    return Math.hypot(moved, Math.hypot(noise(from.rows, to.mask), noise(to.rows, to.mask)));
  }

  private double jump(int place) {
    double travel = curve.rateAt(place) * settings.smoothMicros() * 1e-6;
    int places = (int) Math.min(REACH_OF_JUMP, Math.ceil(travel / curve.step()));
    double excess = curve.excessAt(place, Math.max(1, places));
    return settings.smoothMicros() > 0 && excess > LEAST_JUMP ? excess / 2 : 0;
  }

  private double stretch(double load, int mask) {
    if (!settings.takeOffStretch()) {
      return 0;
    }
    return line.isFitted(mask) ? Math.abs(load) * Math.sqrt(line.slopeVariance(mask)) : Double.NaN;
  }

  private double zeroVariance(int mask) {
    double sum = 0;
    for (int i = 0; i < zeroVariances.length; i++) {
      sum += (mask & (1 << i)) == 0 ? 0 : zeroVariances[i];
    }
    return sum / (Integer.bitCount(mask) * (double) Integer.bitCount(mask));
  }

  /**
   * Expanded uncertainty (k = 2) of the load at which a width was reached; NaN where the curve has
   * no slope to tell it by.
   *
   * @param openingAsMeasured whether the width is the opening, nothing taken off
   */
  double ofLoad(double load, boolean openingAsMeasured) {
    int place = curve.placeNear(load);
    if (place < 0) {
      return Double.NaN;
    }
    WidthAtLoad.Parts parts = ofWidth(place, load);
    double slope = curve.slopeAt(place);
    double stretch = parts.stretch();
    if (openingAsMeasured) {
      slope += width.compliance(curve.mask(place));
      stretch = 0;
    }
    double ofWidth =
        Math.hypot(Math.hypot(parts.noise(), parts.zero()), Math.hypot(stretch, parts.jump()));
    double timing = curve.rateAt(place) * settings.timingMicros() * 1e-6;
    double ofLoad = Math.hypot(timing, loadNoise / Math.sqrt(curve.rows(place)));
    return slope > 0 ? 2 * Math.hypot(ofWidth / slope, ofLoad) : Double.NaN;
  }

  /** Slope of load on opening about a load, N/mm; 0 where the curve cannot tell. */
  double newtonsPerOpening(double load) {
    int place = curve.placeNear(load);
    if (place < 0) {
      return 0;
    }
    double slope = curve.slopeAt(place) + width.compliance(curve.mask(place));
    return slope > 0 ? 1 / slope : 0;
  }
}
