package io.github.platenwire.live;

/** Time, time within each band, and extremes of some rates of loading. Not thread-safe. */
final class RateSums {
  double seconds;
  final double[] secondsInBand;
  double rateSeconds;
  double least = Double.POSITIVE_INFINITY;
  double greatest = Double.NEGATIVE_INFINITY;

  RateSums(int bands) {
    secondsInBand = new double[bands];
  }

  void clear() {
    seconds = 0;
    rateSeconds = 0;
    least = Double.POSITIVE_INFINITY;
    greatest = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < secondsInBand.length; i++) {
      secondsInBand[i] = 0;
    }
  }

  void add(RateSums other) {
    seconds += other.seconds;
    rateSeconds += other.rateSeconds;
    least = Math.min(least, other.least);
    greatest = Math.max(greatest, other.greatest);
    for (int i = 0; i < secondsInBand.length; i++) {
      secondsInBand[i] += other.secondsInBand[i];
    }
  }
}
