package io.github.platenwire.study;

import java.util.SplittableRandom;

/** Seeded standard normal numbers by the polar method. */
final class Normal {
  private final SplittableRandom random;

  Normal(SplittableRandom random) {
    this.random = random;
  }

  double next() {
    while (true) {
      double x = 2 * random.nextDouble() - 1;
      double y = 2 * random.nextDouble() - 1;
      double square = x * x + y * y;
      if (square > 0 && square < 1) {
        return x * Math.sqrt(-2 * Math.log(square) / square);
      }
    }
  }

  double[] sample(int n, double mean, double deviation) {
    double[] values = new double[n];
    for (int i = 0; i < n; i++) {
      values[i] = mean + deviation * next();
    }
    return values;
  }
}
