package io.github.platenwire.emulate;

import java.util.Random;

/**
 * A cylinder with a known stiffness: its strain is s/E (1 + k s/f) at a stress s, so that its curve
 * bends a little, as concrete's does; on its first loading the gauges seat, which adds a strain
 * that stays. Invented, not fitted to anybody's tests. Immutable.
 *
 * @param modulusMegapascals slope E at the origin
 * @param strengthMegapascals strength f of the companions
 * @param curvature k
 * @param poisson widening over shortening
 * @param slackStrain strain that seating adds in the end
 * @param diameterMillimetres diameter
 */
public record EmulatedModulus(
    double modulusMegapascals,
    double strengthMegapascals,
    double curvature,
    double poisson,
    double slackStrain,
    double diameterMillimetres) {
  private static final double SEATING_MEGAPASCALS = 1.5;
  private static final int HALVINGS = 60;

  /** Checks the ranges. */
  public EmulatedModulus {
    Ranges.within("modulusMegapascals", modulusMegapascals, 1000, 100_000);
    Ranges.within("strengthMegapascals", strengthMegapascals, 1, 300);
    Ranges.within("curvature", curvature, 0, 2);
    Ranges.within("poisson", poisson, 0, 0.5);
    Ranges.within("slackStrain", slackStrain, 0, 1e-3);
    Ranges.within("diameterMillimetres", diameterMillimetres, 25, 600);
  }

  /** A cylinder drawn by chance; the same seed draws the same. */
  public static EmulatedModulus random(long seed) {
    Random random = new Random(seed * 0x9E3779B97F4A7C15L);
    double strength = 18 + 42 * random.nextDouble();
    return new EmulatedModulus(
        4700 * Math.sqrt(strength) * (0.85 + 0.3 * random.nextDouble()),
        strength,
        0.3 * random.nextDouble(),
        0.15 + 0.1 * random.nextDouble(),
        60e-6 * random.nextDouble(),
        random.nextBoolean() ? 100 : 150);
  }

  /** Cross-section, square millimetres. */
  public double area() {
    return Math.PI * diameterMillimetres * diameterMillimetres / 4;
  }

  /** Strain along the axis at a stress in megapascals, seating not in it. */
  public double strainAt(double megapascals) {
    return megapascals / modulusMegapascals * (1 + curvature * megapascals / strengthMegapascals);
  }

  /** What seating has added once a stress was reached. */
  double slackAfter(double greatestMegapascals) {
    return slackStrain * -Math.expm1(-Math.max(0, greatestMegapascals) / SEATING_MEGAPASCALS);
  }

  /**
   * The true chord modulus, megapascals.
   *
   * @param firstStrain strain at which the chord begins
   * @param secondShare share of the strength at which it ends
   */
  public double chordMegapascals(double firstStrain, double secondShare) {
    double from = 0;
    double to = strengthMegapascals;
    for (int i = 0; i < HALVINGS; i++) {
      double middle = (from + to) / 2;
      boolean reached = strainAt(middle) >= firstStrain;
      from = reached ? from : middle;
      to = reached ? middle : to;
    }
    double second = secondShare * strengthMegapascals;
    return (second - to) / (strainAt(second) - firstStrain);
  }
}
