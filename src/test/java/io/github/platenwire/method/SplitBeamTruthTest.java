package io.github.platenwire.method;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.withinPercentage;

import io.github.platenwire.emulate.BeamDevice;
import io.github.platenwire.emulate.BeamProgram;
import io.github.platenwire.emulate.BeamTruth;
import io.github.platenwire.emulate.EmulatedBeam;
import io.github.platenwire.method.MethodResult.Figure;
import io.github.platenwire.quantity.Unit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Test;

/**
 * Truth against measured over seeded random beams, through the whole method. Drawn by chance for
 * each: the beam, its cycles and holds, noise, steps, rates and delays, and, as plain normal errors
 * of the standard uncertainty that the method is told, the scale of the load's calibration, the
 * scale of both gauges' (one laboratory, one error) and the time between load and gauges.
 *
 * <p>Asserted of each kind of figure: 93 to 97 % of the errors lie within the claim (k = 2); no
 * more lie beyond both the claim and the project's bound than chance makes of an honest claim; none
 * lies beyond the bound and 4.5 standard uncertainties (one honest figure in 150 000); and the same
 * errors against claims of half or twice the size are refused. The bounds are those that the
 * project set itself; there is no outside source for them. The seeds were not used while the claims
 * were worked out.
 */
class SplitBeamTruthTest {
  private static final long FIRST_SEED = 930_001;
  private static final int BEAMS = 300;
  private static final double[] THRESHOLDS = {0.10, 0.15, 0.20, 0.30, 0.40};
  private static final double LOAD_STANDARD = 0.0025;
  private static final double GAUGE_STANDARD = 0.0040;

  private final ClaimTally departure = new ClaimTally("first crack, departure", 0.02);
  private final ClaimTally smallWidth = new ClaimTally("first crack, 0.05 mm", 0.02);
  private final ClaimTally widths = new ClaimTally("width at load, mm", 0.005);
  private final ClaimTally loads = new ClaimTally("load at threshold", 0.01);
  private final ClaimTally residuals = new ClaimTally("width left by a cycle, mm", 0.005);
  private final ClaimTally creeps = new ClaimTally("creep in a hold, mm", 0.005);
  private int falseThresholds;
  private int missedThresholds;
  private int lostGauges;

  @Test
  void randomBeams_throughTheMethod_withinBoundsAndHonestClaims() {
    for (long seed = FIRST_SEED; seed < FIRST_SEED + BEAMS; seed++) {
      compare(seed);
    }
    List<ClaimTally> all = List.of(departure, smallWidth, widths, loads, residuals, creeps);
    all.forEach(tally -> System.out.println(tally.line()));
    for (ClaimTally tally : all) {
      assertThat(tally.objections()).as(tally.name).isEmpty();
      assertThat(tally.withClaimsTimes(0.5).objections()).as(tally.name).isNotEmpty();
      assertThat(tally.withClaimsTimes(2).objections()).as(tally.name).isNotEmpty();
    }
    assertThat(falseThresholds).isZero();
    assertThat(missedThresholds).isZero();
    assertThat(lostGauges).isZero();
  }

  /** A beam's program with the moments at which it stands unloaded. */
  private record Plan(BeamProgram program, List<Double> bottoms) {
    static Plan of(EmulatedBeam beam, Random random) {
      double crack = beam.crackNewtons();
      double rate = crack / (30 + 40 * random.nextDouble());
      BeamProgram program = new BeamProgram(4);
      List<Double> bottoms = new ArrayList<>();
      int cycles = random.nextInt(4);
      for (int i = 1; i <= cycles; i++) {
        program.to(crack * (0.71 + i * 0.9 / (cycles + 1)), rate);
        if (random.nextBoolean()) {
          program.hold(12);
        }
        program.to(crack * 0.3 * random.nextDouble(), 2 * rate);
        bottoms.add(program.seconds());
        program.hold(1);
      }
      return new Plan(program.to(crack * (1.7 + 0.5 * random.nextDouble()), rate).hold(1), bottoms);
    }
  }

  private static List<BeamDevice> devices(Random random) {
    double[] rates = {10, 20, 60, 100};
    double[] steps = {0, 0.0001, 0.001};
    double noise = 0.0002 + 0.0010 * random.nextDouble();
    double step = steps[random.nextInt(3)];
    double loadScale = 1 + LOAD_STANDARD * random.nextGaussian();
    double gaugeScale = 1 + GAUGE_STANDARD * random.nextGaussian();
    double loadRate = random.nextBoolean() ? 50 : 100;
    List<BeamDevice> devices = new ArrayList<>();
    devices.add(
        BeamDevice.load(loadRate, 2 + 18 * random.nextDouble(), 10 * random.nextInt(2))
            .scaled(loadScale));
    for (int face = 0; face < 2; face++) {
      devices.add(
          BeamDevice.gauge(face, rates[random.nextInt(4)], noise, step)
              .scaled(gaugeScale)
              .delayed(1_000_000L * (30 + random.nextInt(60))));
    }
    return devices;
  }

  /** One random beam and what was made of it. */
  private record Run(BeamTruth truth, List<Double> bottoms, BeamBench bench, MethodResult result) {
    static Run of(long seed) {
      Random random = new Random(~seed * 0x9E3779B97F4A7C15L);
      EmulatedBeam beam = EmulatedBeam.random(seed);
      Plan plan = Plan.of(beam, random);
      BeamTruth truth = new BeamTruth(beam, plan.program);
      List<BeamDevice> devices = devices(random);
      long timing = Math.round(BeamBench.TIMING_MICROS * random.nextGaussian());
      BeamBench bench =
          new BeamBench(BeamBench.SPLIT, BeamBench.beam(), devices, timing).send(truth, seed);
      return new Run(truth, plan.bottoms, bench, bench.run.finish());
    }

    Figure figure(String name) {
      return result.figure(name).orElseThrow();
    }
  }

  /**
   * A crack that opens so slowly that it shows only while the beam is unloaded was there at the
   * top; the figure was 8 % too low once.
   */
  @Test
  void beamWhoseCrackShowsOnUnloading_firstCrack_isPutAtTheGreatestLoad() {
    Run run = Run.of(324);
    double crack = run.truth.beam().crackNewtons() / 1000;
    assertThat(run.figure("first-crack-departure").exact()).isCloseTo(crack, withinPercentage(2));
  }

  private void compare(long seed) {
    Run run = Run.of(seed);
    BeamTruth truth = run.truth;
    MethodResult result = run.result;
    lostGauges +=
        (int) run.bench.happenings.stream().filter(text -> text.startsWith("gauge lost")).count();
    double crack = truth.beam().crackNewtons() / 1000;
    departure.add(seed, crack, run.figure("first-crack-departure"), crack);
    double small = truth.loadAtOpening(0.05) / 1000;
    smallWidth.add(seed, small, run.figure("first-crack-width"), small);
    for (String asked : List.of("10 kN", "15 kN", "20 kN", "3000 lbf", "4000 lbf", "5000 lbf")) {
      compareWidth(seed, asked, truth, result);
    }
    for (double threshold : THRESHOLDS) {
      compareThreshold(seed, threshold, truth, result);
    }
    for (int i = 0; i < run.bottoms.size(); i++) {
      double left = truth.widthAt(run.bottoms.get(i) + 0.5);
      residuals.add(seed, left, run.figure("residual-" + (i + 1)), 1);
    }
    compareCreep(seed, truth, run.bench, result);
  }

  /** The first and the last row of a hold are the ends of half a second's averaging. */
  private void compareCreep(long seed, BeamTruth truth, BeamBench bench, MethodResult result) {
    for (int i = 1; result.figure("creep-" + i).isPresent(); i++) {
      Figure creep = result.figure("creep-" + i).orElseThrow();
      double from = bench.seconds(creep.rows().get(0)) + 0.25;
      double to = bench.seconds(creep.rows().get(1)) - 0.25;
      creeps.add(seed, truth.widthAt(to) - truth.widthAt(from), creep, 1);
    }
  }

  private void compareWidth(long seed, String asked, BeamTruth truth, MethodResult result) {
    String[] parts = asked.split(" ", 2);
    Unit unit = parts[1].equals("kN") ? Unit.KILONEWTON : Unit.POUND_FORCE;
    double newtons = unit.toBase(Double.parseDouble(parts[0]));
    result
        .figure("width-at-" + asked.replace(' ', '-'))
        .filter(figure -> truth.greatestNewtons() >= newtons)
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
