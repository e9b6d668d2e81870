package io.github.platenwire.live;

import java.util.Arrays;

/** What {@link GaugeHealth} remembers of one gauge. Not thread-safe. */
final class GaugeState {
  final GaugeLimits limits;
  final double[] othersBefore;
  final double[] othersNewer;
  final double[] othersAtRunStart;
  double zero;
  double noise;
  int equalReadingsAllowed = Integer.MAX_VALUE;
  boolean seen;
  boolean lost;
  long silentMicros;
  double lastValue = Double.NaN;
  long goodMicros = Long.MIN_VALUE;
  double goodValue = Double.NaN;
  long newerMicros = Long.MIN_VALUE;
  boolean jumping;
  int jumpReadings;
  double jumpValue;
  long jumpMicros;
  boolean atEnd;
  int endReadings;
  long endMicros;
  int runReadings;
  long runMicros;
  double runValue = Double.NaN;

  GaugeState(GaugeLimits limits, int gauges) {
    this.limits = limits;
    othersBefore = new double[gauges];
    othersNewer = new double[gauges];
    othersAtRunStart = new double[gauges];
    Arrays.fill(othersBefore, Double.NaN);
    Arrays.fill(othersNewer, Double.NaN);
    Arrays.fill(othersAtRunStart, Double.NaN);
  }

  boolean isSuspected() {
    return jumping || atEnd;
  }

  /** What noise and resolution alone can make of two readings. */
  double margin() {
    return 6 * noise + 2 * limits.resolution();
  }

  /**
   * How many equal readings in a row chance makes of this noise once in 10^8: two readings of a
   * normal noise s, shown in steps r, are equal with probability r/(2 s sqrt(pi)) for s above r/2.
   */
  void setNoise(double standardDeviation) {
    noise = standardDeviation;
    double resolution = limits.resolution();
    if (resolution > 0 && noise < resolution / 2) {
      equalReadingsAllowed = Integer.MAX_VALUE;
      return;
    }
    double chance = Math.min(0.6, resolution / (2 * noise * Math.sqrt(Math.PI)));
    equalReadingsAllowed =
        noise > 0
            ? Math.max(5, (int) Math.ceil(-18.4 / Math.log(Math.max(chance, 1e-3))))
            : Integer.MAX_VALUE;
  }
}
