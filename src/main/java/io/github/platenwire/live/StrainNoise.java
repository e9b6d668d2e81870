package io.github.platenwire.live;

import java.util.Arrays;

/**
 * Noise of the load and of each gauge, from their readings, as it is left in what is averaged over
 * the settings' time. Steps of the resolution are in it. Constant work a reading. Not thread-safe.
 */
public final class StrainNoise {
  private final ChordSettings settings;
  private final DifferenceNoise load = new DifferenceNoise();
  private final DifferenceNoise[] gauges;

  StrainNoise(ChordSettings settings) {
    this.settings = settings;
    gauges = new DifferenceNoise[settings.axial().size()];
    Arrays.setAll(gauges, i -> new DifferenceNoise());
  }

  void load(long micros, double newtons) {
    load.accept(micros, newtons);
  }

  void gauge(int gauge, long micros, double strain) {
    gauges[gauge].accept(micros, strain);
  }

  /** Standard deviation of an averaged load, newtons; NaN if unknown. */
  public double ofLoad() {
    return load.deviation() / Math.sqrt(load.readingsIn(settings.smoothMicros()));
  }

  /**
   * Standard deviation of an averaged strain, as the mean over the gauges; NaN if unknown.
   *
   * @param across of those across the axis, not of those along it
   */
  public double ofStrain(boolean across) {
    double squares = 0;
    int count = 0;
    for (int i = 0; i < gauges.length; i++) {
      if (settings.axial().get(i) != across) {
        double one = gauges[i].deviation();
        squares += one * one / gauges[i].readingsIn(settings.smoothMicros());
        count++;
      }
    }
    return Math.sqrt(squares) / count;
  }
}
