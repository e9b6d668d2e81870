package io.github.platenwire.method;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.platenwire.emulate.BeamDevice;
import io.github.platenwire.emulate.BeamProgram;
import io.github.platenwire.emulate.BeamTruth;
import io.github.platenwire.emulate.EmulatedBeam;
import io.github.platenwire.method.MethodResult.Figure;
import io.github.platenwire.quantity.Unit;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Test;

/**
 * Truth against measured over seeded random beams, through the whole method: noise, steps, rates,
 * delays, cycles, holds and the errors of both calibrations are drawn by chance. The bounds are
 * those that the project set itself; there is no outside source for them.
 */
class SplitBeamTruthTest {
  private static final int BEAMS = 200;
  private static final double[] THRESHOLDS = {0.10, 0.15, 0.20, 0.30, 0.40};

  private static final class Tally {
    final String name;
    final double bound;
    final List<Double> errors = new ArrayList<>();
    final List<Double> claims = new ArrayList<>();
    final List<String> beyond = new ArrayList<>();
    int covered;

    Tally(String name, double bound) {
      this.name = name;
      this.bound = bound;
    }

    /** Everything in the figure's unit; a bound is a share of {@code scale}. */
    void add(long seed, double truth, Figure figure, double scale) {
      double claim = figure.uncertainty().orElseThrow().expanded();
      double error = figure.exact() - truth;
      errors.add(error / scale);
      claims.add(claim / scale);
      covered += Math.abs(error) <= claim ? 1 : 0;
      if (!(Math.abs(error) <= Math.max(bound * scale, claim))) {
        beyond.add("seed " + seed + " truth " + truth + " off " + error + " claimed " + claim);
      }
      assertThat(figure.rows()).isNotEmpty();
    }

    double coverage() {
      return (double) covered / errors.size();
    }

    String line() {
      List<Double> sorted = new ArrayList<>(errors);
      Collections.sort(sorted);
      Collections.sort(claims);
      int n = sorted.size();
      return String.format(
          Locale.ROOT,
          "%-26s n=%4d off by min %+.4f p5 %+.4f median %+.4f p95 %+.4f max %+.4f"
              + " | claimed median %.4f | covered %.1f %% | beyond bound and claim %d",
          name,
          n,
          sorted.get(0),
          sorted.get(n / 20),
          sorted.get(n / 2),
          sorted.get(n * 19 / 20),
          sorted.get(n - 1),
          claims.get(n / 2),
          100 * coverage(),
          beyond.size());
    }
  }

  private final Tally departure = new Tally("first crack, departure", 0.02);
  private final Tally smallWidth = new Tally("first crack, 0.05 mm", 0.02);
  private final Tally widths = new Tally("width at load, mm", 0.005);
  private final Tally loads = new Tally("load at threshold", 0.01);
  private int falseThresholds;
  private int missedThresholds;
  private int lostGauges;

  @Test
  void randomBeams_throughTheMethod_withinBoundsAndClaims() {
    for (long seed = 1; seed <= BEAMS; seed++) {
      compare(seed);
    }
    List<Tally> all = List.of(departure, smallWidth, widths, loads);
    all.forEach(tally -> System.out.println(tally.line()));
    for (Tally tally : all) {
      assertThat(tally.coverage()).as(tally.name).isGreaterThan(0.93);
      // Claims are meant to cover 95 %, so of many figures a few lie beyond both bound and claim.
      assertThat(tally.beyond.size())
          .as(tally.name + " " + tally.beyond)
          .isLessThanOrEqualTo(tally.errors.size() / 200);
    }
    assertThat(falseThresholds).isZero();
    assertThat(missedThresholds).isZero();
    assertThat(lostGauges).isZero();
  }

  private static BeamProgram program(EmulatedBeam beam, Random random) {
    double crack = beam.crackNewtons();
    double rate = crack / (30 + 40 * random.nextDouble());
    BeamProgram program = new BeamProgram(4);
    int cycles = random.nextInt(4);
    for (int i = 1; i <= cycles; i++) {
      program.to(crack * (0.71 + i * 0.9 / (cycles + 1)), rate);
      if (random.nextBoolean()) {
        program.hold(12);
      }
      program.to(crack * 0.3 * random.nextDouble(), 2 * rate).hold(1);
    }
    return program.to(crack * (1.7 + 0.5 * random.nextDouble()), rate).hold(1);
  }

  private static List<BeamDevice> devices(Random random) {
    double[] rates = {10, 20, 60, 100};
    double[] steps = {0, 0.0001, 0.001};
    double noise = 0.0002 + 0.0010 * random.nextDouble();
    double step = steps[random.nextInt(3)];
    double loadScale = 1 + 0.0025 * withinCertificate(random);
    double gaugeScale = 1 + 0.0040 * withinCertificate(random);
    double loadRate = random.nextBoolean() ? 50 : 100;
    List<BeamDevice> devices = new ArrayList<>();
    devices.add(
        BeamDevice.load(loadRate, 2 + 18 * random.nextDouble(), 10 * random.nextInt(2))
            .scaled(loadScale));
    for (int face = 0; face < 2; face++) {
      devices.add(
          BeamDevice.gauge(face, rates[random.nextInt(4)], noise, step)
              .scaled(gaugeScale)
              .delayed(1_000_000L * random.nextInt(60)));
    }
    return devices;
  }

  /** A calibration's error in standard uncertainties, within the certificate's k = 2. */
  private static double withinCertificate(Random random) {
    double drawn = random.nextGaussian();
    while (Math.abs(drawn) > 2) {
      drawn = random.nextGaussian();
    }
    return drawn;
  }

  private void compare(long seed) {
    Random random = new Random(~seed * 0x9E3779B97F4A7C15L);
    EmulatedBeam beam = EmulatedBeam.random(seed);
    BeamTruth truth = new BeamTruth(beam, program(beam, random));
    BeamBench bench = new BeamBench(BeamBench.SPLIT, BeamBench.beam(), devices(random));
    MethodResult result = bench.send(truth, seed).run.finish();
    lostGauges +=
        (int) bench.happenings.stream().filter(text -> text.startsWith("gauge lost")).count();
    double crack = beam.crackNewtons() / 1000;
    departure.add(seed, crack, result.figure("first-crack-departure").orElseThrow(), crack);
    double small = truth.loadAtOpening(0.05) / 1000;
    smallWidth.add(seed, small, result.figure("first-crack-width").orElseThrow(), small);
    for (String asked : List.of("10 kN", "15 kN", "20 kN", "3000 lbf", "4000 lbf", "5000 lbf")) {
      compareWidth(seed, asked, truth, result);
    }
    for (double threshold : THRESHOLDS) {
      compareThreshold(seed, threshold, truth, result);
    }
  }

  private void compareWidth(long seed, String asked, BeamTruth truth, MethodResult result) {
    String[] parts = asked.split(" ", 2);
    Unit unit = parts[1].equals("kN") ? Unit.KILONEWTON : Unit.POUND_FORCE;
    double newtons = unit.toBase(Double.parseDouble(parts[0]));
    result
        .figure("width-at-" + asked.replace(' ', '-'))
        .ifPresent(figure -> widths.add(seed, truth.widthAtLoad(newtons), figure, 1));
  }

  private void compareThreshold(long seed, double threshold, BeamTruth truth, MethodResult result) {
    double real = truth.loadAtWidth(threshold) / 1000;
    var figure = result.figure(String.format(Locale.ROOT, "load-at-%.2f-mm", threshold));
    if (figure.isPresent() && Double.isNaN(real)) {
      falseThresholds += truth.loadAtWidth(threshold * 0.985 - 0.002) > 0 ? 0 : 1;
    } else if (figure.isPresent()) {
      loads.add(seed, real, figure.get(), real);
    } else if (truth.widthAt(truth.seconds() - 1) > threshold * 1.015 + 0.002) {
      missedThresholds++;
    }
  }
}
