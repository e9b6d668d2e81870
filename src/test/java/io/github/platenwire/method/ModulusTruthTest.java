package io.github.platenwire.method;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.platenwire.emulate.BeamDevice;
import io.github.platenwire.emulate.EmulatedModulus;
import io.github.platenwire.emulate.ModulusTruth;
import io.github.platenwire.method.MethodResult.Figure;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Test;

/**
 * Truth against measured over seeded random cylinders, from the bytes that the devices send: noise,
 * steps, rates, delays, seating, and the errors of calibrations, gauge length and diameter are
 * drawn by chance. The bounds are those that the project set itself; there is no outside source for
 * them.
 */
class ModulusTruthTest {
  private static final int CYLINDERS = 64;
  private static final double FIRST_STRAIN = 50e-6;
  private static final double SECOND_SHARE = 0.40;
  private static final double GAUGE_LENGTH = 133.35;

  private final Tally modulus = new Tally("modulus", 0.02);
  private final Tally poisson = new Tally("Poisson's ratio", 0.05);

  /** Errors as shares of the truth. */
  private static final class Tally {
    final String name;
    final double bound;
    final List<Double> errors = new ArrayList<>();
    final List<Double> claims = new ArrayList<>();
    final List<Long> beyond = new ArrayList<>();
    int covered;

    Tally(String name, double bound) {
      this.name = name;
      this.bound = bound;
    }

    void add(long seed, double truth, Figure figure) {
      double claim = figure.uncertainty().orElseThrow().expanded() / truth;
      double error = figure.exact() / truth - 1;
      errors.add(error);
      claims.add(claim);
      covered += Math.abs(error) <= claim ? 1 : 0;
      if (!(Math.abs(error) <= bound)) {
        beyond.add(seed);
      }
    }

    void print() {
      Collections.sort(errors);
      Collections.sort(claims);
      int n = errors.size();
      System.out.printf(
          Locale.ROOT,
          "%-16s n=%3d off by min %+.4f p5 %+.4f median %+.4f p95 %+.4f max %+.4f"
              + " | claimed median %.4f | covered %.1f %% | beyond the bound %s%n",
          name,
          n,
          errors.get(0),
          errors.get(n / 20),
          errors.get(n / 2),
          errors.get(n * 19 / 20),
          errors.get(n - 1),
          claims.get(n / 2),
          100.0 * covered / n,
          beyond);
    }
  }

  @Test
  void randomCylinders_fromBytesToResult_withinBoundsAndClaims() {
    for (long seed = 1; seed <= CYLINDERS; seed++) {
      compare(seed);
    }
    for (Tally tally : List.of(modulus, poisson)) {
      tally.print();
      assertThat(tally.beyond).as(tally.name).isEmpty();
      assertThat((double) tally.covered / tally.errors.size())
          .as(tally.name)
          .isGreaterThanOrEqualTo(0.92);
    }
    assertThat(modulus.errors).hasSize(CYLINDERS);
    assertThat(modulus.errors.get(CYLINDERS / 2)).isBetween(-0.004, 0.004);
    // a claim so wide that it always holds would be worth nothing
    assertThat(modulus.claims.get(CYLINDERS - 1)).isLessThan(0.03);
  }

  private void compare(long seed) {
    Random random = new Random(~seed * 0x9E3779B97F4A7C15L);
    EmulatedModulus cylinder = EmulatedModulus.random(seed);
    double diameter = cylinder.diameterMillimetres();
    boolean strain = random.nextBoolean();
    double lever = random.nextBoolean() ? 1 : 2;
    double trueLength = GAUGE_LENGTH * (1 + 0.005 * (2 * random.nextDouble() - 1));
    double trueAcross = diameter * (1 + 0.005 * (2 * random.nextDouble() - 1));
    List<BeamDevice> devices = new ArrayList<>(List.of(load(random)));
    List<GaugeMount> mounts = new ArrayList<>();
    devices.add(gauge(random, 0, strain));
    mounts.add(mount(false, strain, lever));
    boolean across = random.nextBoolean();
    if (across) {
      devices.add(
          BeamDevice.gauge(1, 20, 0.00005, 0.0001).scaled(withinCertificate(random, 0.004)));
      mounts.add(new GaugeMount(true, true, OptionalDouble.of(diameter), 2));
    }
    ModulusTruth truth =
        new ModulusTruth(
            cylinder,
            ModulusTruth.cycles(
                cylinder,
                3,
                0.41 + 0.03 * random.nextDouble(),
                0.21 + 0.08 * random.nextDouble(),
                4),
            List.of(strain ? 1e6 : trueLength * lever, trueAcross * 2));
    Specimen measured =
        ModulusBench.cylinder(cylinder, read(diameter, random), read(diameter, random));
    ModulusBench bench = new ModulusBench(measured, devices, mounts).send(truth, seed);
    MethodResult result = bench.run.finish();
    assertThat(bench.run.ending()).as("seed %d", seed).contains(MethodRun.Ending.COMPLETE);
    modulus.add(
        seed,
        cylinder.chordMegapascals(FIRST_STRAIN, SECOND_SHARE),
        result.figure("modulus").orElseThrow());
    assertThat(result.figure("poisson").isPresent()).isEqualTo(across);
    result.figure("poisson").ifPresent(figure -> poisson.add(seed, cylinder.poisson(), figure));
  }

  private static GaugeMount mount(boolean across, boolean strain, double lever) {
    return strain
        ? GaugeMount.PLAIN
        : new GaugeMount(across, true, OptionalDouble.of(GAUGE_LENGTH), lever);
  }

  private static BeamDevice load(Random random) {
    double[] rates = {20, 50, 100};
    return BeamDevice.load(
            rates[random.nextInt(3)], 5 + 60 * random.nextDouble(), 10 * random.nextInt(6))
        .scaled(withinCertificate(random, 0.0025));
  }

  private static BeamDevice gauge(Random random, int face, boolean strain) {
    double[] rates = {10, 20, 60, 100};
    double rate = rates[random.nextInt(4)];
    double[] lengthSteps = {0.0001, 0.0002, 0.001};
    double[] strainSteps = {0.1, 1, 2};
    BeamDevice device =
        strain
            ? BeamDevice.strain(
                face, rate, 0.2 + random.nextDouble(), strainSteps[random.nextInt(3)])
            : BeamDevice.gauge(
                face, rate, 0.00005 + 0.0002 * random.nextDouble(), lengthSteps[random.nextInt(3)]);
    return device.scaled(withinCertificate(random, 0.004)).delayed(1_000_000L * random.nextInt(60));
  }

  /** What a rule shows of the diameter: to the nearest 0.25 mm, its zero anywhere. */
  private static double read(double diameter, Random random) {
    return diameter + 0.25 * (random.nextDouble() - 0.5);
  }

  /** A calibration's error as a factor: a standard uncertainty, within the certificate's k = 2. */
  private static double withinCertificate(Random random, double standard) {
    double drawn = random.nextGaussian();
    while (Math.abs(drawn) > 2) {
      drawn = random.nextGaussian();
    }
    return 1 + standard * drawn;
  }
}
