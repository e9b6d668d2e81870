package io.github.platenwire.method;

import java.util.List;

/** Mean rate of opening in each of some bands of opening. Constant work a row. Not thread-safe. */
final class OpeningRates {
  private final List<Band> bands;
  private final double[] from;
  private final double[] to;
  private final long[] fromMicros;
  private final long[] toMicros;

  /**
   * Openings between which a notch is opened at one rate.
   *
   * @param fromMillimetres lower end
   * @param toMillimetres upper end
   * @param perMinute rate, millimetres a minute
   */
  record Band(double fromMillimetres, double toMillimetres, double perMinute) {}

  OpeningRates(List<Band> bands) {
    this.bands = bands;
    from = new double[bands.size()];
    to = new double[bands.size()];
    fromMicros = new long[bands.size()];
    toMicros = new long[bands.size()];
  }

  void accept(long micros, double opening) {
    for (int i = 0; i < from.length; i++) {
      Band band = bands.get(i);
      if (opening >= band.fromMillimetres && opening <= band.toMillimetres && opening > to[i]) {
        if (to[i] == 0) {
          from[i] = opening;
          fromMicros[i] = micros;
        }
        to[i] = opening;
        toMicros[i] = micros;
      }
    }
  }

  /**
   * Mean rate in a band, millimetres a minute; NaN where it was not opened through at least half.
   */
  double perMinute(int band) {
    Band asked = bands.get(band);
    double half = (asked.toMillimetres - asked.fromMillimetres) / 2;
    long micros = toMicros[band] - fromMicros[band];
    return micros <= 0 || to[band] - from[band] < half
        ? Double.NaN
        : (to[band] - from[band]) / (micros / 60e6);
  }
}
