package io.github.platenwire.emulate;

import java.util.SplittableRandom;

/**
 * A smooth, seeded wander about a set rate: three sines of periods between 3 s and 15 s. Given as
 * its integral too, so that the load it makes is known exactly at any time. Immutable.
 */
final class RateWander {
  private static final int SINES = 3;

  private final double amplitude;
  private final double[] frequency = new double[SINES];
  private final double[] phase = new double[SINES];

  /**
   * Draws one wander.
   *
   * @param amplitude greatest deviation, in the unit of the rate
   * @param seed the same seed gives the same wander
   */
  RateWander(double amplitude, long seed) {
    this.amplitude = amplitude;
    SplittableRandom random = new SplittableRandom(seed);
    for (int i = 0; i < SINES; i++) {
      frequency[i] = 2 * Math.PI / (3 + 12 * random.nextDouble());
      phase[i] = 2 * Math.PI * random.nextDouble();
    }
  }

  /** Deviation from the set rate. */
  double rate(double seconds) {
    double sum = 0;
    for (int i = 0; i < SINES; i++) {
      sum += StrictMath.sin(frequency[i] * seconds + phase[i]);
    }
    return amplitude * sum / SINES;
  }

  /** Integral of the deviation from zero to a time. */
  double integral(double seconds) {
    double sum = 0;
    for (int i = 0; i < SINES; i++) {
      double start = StrictMath.cos(phase[i]);
      sum += (start - StrictMath.cos(frequency[i] * seconds + phase[i])) / frequency[i];
    }
    return amplitude * sum / SINES;
  }
}
