package io.github.platenwire.emulate;

import java.util.Random;

/**
 * A split beam with a known truth: elastic up to its first crack, then a jump and a width that
 * grows with a power of the load beyond it, as the bond of the bar lets it; part of the width stays
 * on unloading, the crack creeps while the load is held, and two faces open unequally. Invented,
 * not fitted to anybody's tests. Immutable.
 *
 * @param crackNewtons load at first cracking
 * @param stretchA elastic stretch on the first face, mm/N
 * @param stretchB on the second
 * @param jumpMillimetres width that the crack takes at once
 * @param power of the load beyond cracking, 0.3 to 3
 * @param widthAtTwice width at twice the load of first cracking, millimetres
 * @param residualShare share of the width that stays without load, 0 to 1
 * @param faceDifference by what share of the mean the first face opens more, -1 to 1
 * @param creepShare by what share of its width the crack creeps in one hold
 */
public record EmulatedBeam(
    double crackNewtons,
    double stretchA,
    double stretchB,
    double jumpMillimetres,
    double power,
    double widthAtTwice,
    double residualShare,
    double faceDifference,
    double creepShare) {
  /** Checks the ranges. */
  public EmulatedBeam {
    Ranges.within("crackNewtons", crackNewtons, 100, 1e7);
    Ranges.within("stretchA", stretchA, 0, 1e-3);
    Ranges.within("stretchB", stretchB, 0, 1e-3);
    Ranges.within("power", power, 0.3, 3);
    Ranges.within("widthAtTwice", widthAtTwice, 1e-4, 50);
    Ranges.within("jumpMillimetres", jumpMillimetres, 0, widthAtTwice);
    Ranges.within("residualShare", residualShare, 0, 1);
    Ranges.within("faceDifference", faceDifference, -1, 1);
    Ranges.within("creepShare", creepShare, 0, 1);
  }

  /**
   * A beam whose crack has a given width at a given load on first loading.
   *
   * @param crackNewtons load at first cracking
   * @param newtons the load, above that
   * @param millimetres the width there
   */
  public static EmulatedBeam withWidth(double crackNewtons, double newtons, double millimetres) {
    return withWidth(crackNewtons, newtons, millimetres, 0.1);
  }

  /**
   * The same.
   *
   * @param jumpShare share of that width by which the crack opens at once, 0 to 0.5
   */
  public static EmulatedBeam withWidth(
      double crackNewtons, double newtons, double millimetres, double jumpShare) {
    Ranges.within("jumpShare", jumpShare, 0, 0.5);
    double jump = jumpShare * millimetres;
    double twice = jump + (millimetres - jump) / (newtons / crackNewtons - 1);
    double stretch = 0.006 / crackNewtons;
    return new EmulatedBeam(
        crackNewtons, 1.1 * stretch, 0.9 * stretch, jump, 1, twice, 0.3, 0.25, 0.05);
  }

  /** A beam drawn by chance; the same seed draws the same. */
  public static EmulatedBeam random(long seed) {
    Random random = new Random(seed * 0x9E3779B97F4A7C15L);
    double crack = 8_000 + 17_000 * random.nextDouble();
    double stretch = (0.004 + 0.012 * random.nextDouble()) / crack;
    return new EmulatedBeam(
        crack,
        stretch * (0.8 + 0.4 * random.nextDouble()),
        stretch * (0.8 + 0.4 * random.nextDouble()),
        random.nextBoolean() ? 0 : 0.02 * random.nextDouble(),
        0.7 + 0.6 * random.nextDouble(),
        0.25 + 0.35 * random.nextDouble(),
        0.1 + 0.5 * random.nextDouble(),
        0.8 * random.nextDouble() - 0.4,
        random.nextBoolean() ? 0 : 0.1 * random.nextDouble());
  }

  /** Width on first loading without creep, millimetres. */
  public double firstWidth(double newtons) {
    return newtons <= crackNewtons
        ? 0
        : jumpMillimetres
            + (widthAtTwice - jumpMillimetres) * Math.pow(newtons / crackNewtons - 1, power);
  }
}
