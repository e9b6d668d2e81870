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
    double step = settings.gauges().get(gauge).resolution() / Math.sqrt(12);
    double averaged = level.noise() * level.noise() / Math.max(1, level.readings());
    boolean coarse = level.noise() < 1.5 * step;
    zeroVariances[gauge] = coarse ? Math.max(averaged, step * step) : averaged;
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
        line.isFitted(mask) ? Math.sqrt(line.noiseVariance(rows, mask)) : Double.NaN,
        Math.sqrt(zeroVariance(mask)),
        stretch(load, mask),
        slope * curve.rateAt(place) * settings.timingMicros() * 1e-6,
        slope * loadNoise / Math.sqrt(rows),
        jump(place));
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
}
