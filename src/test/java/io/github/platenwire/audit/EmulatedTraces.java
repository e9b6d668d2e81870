package io.github.platenwire.audit;

import io.github.platenwire.emulate.BeamDevice;
import io.github.platenwire.emulate.BeamProgram;
import io.github.platenwire.emulate.BeamReadings;
import io.github.platenwire.emulate.BeamTruth;
import io.github.platenwire.emulate.CylinderTruth;
import io.github.platenwire.emulate.EmulatedBeam;
import io.github.platenwire.emulate.EmulatedCylinder;
import io.github.platenwire.emulate.EmulatedCylinder.BreakKind;
import io.github.platenwire.emulate.EmulatedFrame;
import io.github.platenwire.emulate.EmulatedIndicator;
import io.github.platenwire.emulate.FrameProgram;
import io.github.platenwire.emulate.LineLayout;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.Iterator;
import java.util.List;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;

/** Honest traces, as emulated devices send them. */
final class EmulatedTraces {
  private EmulatedTraces() {}

  /** An indicator, and a name for it in messages. */
  record Kind(String name, EmulatedIndicator indicator) {
    /** Whether its noise, or the load's wander within its jitter, is more than its rounding. */
    boolean showsNoise() {
      double step = indicator.layout().unit().toBase(indicator.resolution().doubleValue());
      return indicator.noiseNewtons() >= 0.39 * step;
    }
  }

  /**
   * Every line layout, at rates from slow to fast, with fine and coarse steps, with and without
   * noise, jitter and bursts.
   */
  static List<Kind> kinds() {
    return List.of(
        kind(LineLayout.KILONEWTONS, "0.01", 50, 15, 0.1, EmulatedIndicator.ADAPTER_BURST_NANOS),
        kind(LineLayout.KILONEWTONS, "0.05", 50, 20, 0.05, 0),
        kind(LineLayout.KILONEWTONS, "0.05", 50, 0, 0, 0),
        kind(LineLayout.KILONEWTONS, "0.50", 10, 60, 0.2, 0),
        kind(LineLayout.KILONEWTONS, "1.00", 10, 0, 0, 0),
        kind(LineLayout.KILONEWTONS, "0.20", 20, 5, 0, EmulatedIndicator.ADAPTER_BURST_NANOS),
        kind(LineLayout.STATUS_KILONEWTONS, "0.02", 100, 10, 0.3, 0),
        kind(LineLayout.STATUS_KILONEWTONS, "0.10", 5, 30, 0.1, 0),
        kind(LineLayout.POUNDS, "1", 200, 12, 0.1, EmulatedIndicator.ADAPTER_BURST_NANOS),
        kind(LineLayout.POUNDS, "5", 20, 0, 0.2, 0),
        kind(LineLayout.POUNDS, "10", 2, 40, 0.1, 0),
        kind(LineLayout.POUNDS, "50", 100, 20, 0, 0));
  }

  private static Kind kind(
      LineLayout layout, String step, double hertz, double noise, double jitter, long burst) {
    String name = layout.unit().symbol() + " step " + step + " at " + hertz + " Hz noise " + noise;
    return new Kind(
        name,
        EmulatedIndicator.perfect(layout, new BigDecimal(step), 1_500_000, hertz)
            .withNoiseAndZero(noise, 60)
            .withJitterAndBursts(jitter, burst));
  }

  /** A cylinder of a series, drawn by a seed as the demo draws its companions. */
  static LoadTrace cylinder(EmulatedIndicator indicator, long seed) {
    Random random = new Random(seed * 0x9E3779B97F4A7C15L);
    double strength = Math.max(20, Math.min(31, 25.5 * (1 + 0.035 * random.nextGaussian())));
    EmulatedCylinder cylinder =
        EmulatedCylinder.ofNormalConcrete(
            100 + 0.15 * random.nextGaussian(),
            200,
            strength,
            random.nextInt(3) == 0 ? BreakKind.GRADUAL : BreakKind.BRITTLE);
    CylinderTruth truth =
        new CylinderTruth(cylinder, FrameProgram.cylinderAtCommonRate(25.5), random.nextLong());
    EmulatedFrame frame = new EmulatedFrame(truth, indicator, random.nextLong());
    TraceBuilder builder = new TraceBuilder("load");
    while (frame.hasNext()) {
      var sent = frame.next();
      for (String line : new String(sent.bytes(), StandardCharsets.US_ASCII).split("\n", -1)) {
        if (!line.isEmpty()) {
          byte[] bytes = line.strip().getBytes(StandardCharsets.US_ASCII);
          builder.add(sent.nanos() / 1000, bytes, number(line));
        }
      }
    }
    return builder.trace();
  }

  /**
   * A cylinder in a frame without noise that holds its rate as evenly as is said, begun at some
   * moment between two readings. Strengths lie so near each other that many peaks are the same
   * step.
   *
   * @param stepKilonewtons of the indicator
   * @param jitterShare by how much of the interval a reading comes late
   * @param wanderShare by how much the rate wanders at most; 0 for perfectly even
   */
  static LoadTrace evenCylinder(
      double stepKilonewtons, double hertz, double jitterShare, double wanderShare, long seed) {
    Random random = new Random(seed * 0x9E3779B97F4A7C15L);
    EmulatedCylinder cylinder =
        new EmulatedCylinder(
            100,
            200,
            25.5 + 0.03 * random.nextGaussian(),
            20_000 + 6_000 * random.nextDouble(),
            0.05,
            0.1,
            0.6,
            random.nextInt(3) == 0 ? BreakKind.GRADUAL : BreakKind.BRITTLE);
    FrameProgram program = new FrameProgram(5, 3, 1.0, 25.5, 0.45, 0.25, wanderShare, 0.95, 8);
    CylinderTruth truth = new CylinderTruth(cylinder, program, random.nextLong());
    return even(
        at -> truth.loadNewtons(Math.round(at * 1e9)) / 1000,
        new double[] {truth.endNanos() / 1e9, hertz, stepKilonewtons, jitterShare},
        random.nextInt(4) / 4.0,
        random);
  }

  /**
   * The load of a beam that is loaded, held, unloaded and loaded again, perfectly evenly and
   * without noise, begun at one of ten moments between two readings.
   *
   * @param jitterShare by how much of the interval a reading comes late
   */
  static LoadTrace evenBeam(double hertz, double stepNewtons, double jitterShare, long seed) {
    BeamProgram program =
        new BeamProgram(8).to(11_500, 500).hold(12).to(2_000, 1000).hold(1).to(22_000, 500).hold(1);
    BeamTruth truth = new BeamTruth(EmulatedBeam.withWidth(9_200, 13_344, 0.032), program);
    Random random = new Random(seed);
    return even(
        truth::loadAt,
        new double[] {truth.seconds(), hertz, stepNewtons, jitterShare},
        random.nextInt(10) / 10.0,
        random);
  }

  /** Samples a load; the figures are duration in s, rate in Hz, step, and share of jitter. */
  private static LoadTrace even(
      DoubleUnaryOperator load, double[] figures, double phase, Random random) {
    int length = (int) (figures[0] * figures[1]) - 2;
    long[] micros = new long[length];
    double[] values = new double[length];
    for (int i = 0; i < length; i++) {
      double at = (i + phase + figures[3] * random.nextDouble()) / figures[1];
      micros[i] = Math.round(at * 1e6);
      values[i] = Math.rint(load.applyAsDouble(at) / figures[2]) * figures[2];
    }
    return LoadTrace.of(micros, values);
  }

  private static double number(String line) {
    return Double.parseDouble(line.replaceAll("[^0-9.+-]", ""));
  }

  /** The load of one of two beams that are loaded in the very same way. */
  static LoadTrace beamLoad(double noiseNewtons, double stepNewtons, long seed) {
    BeamProgram program =
        new BeamProgram(8).to(11_500, 500).hold(12).to(2_000, 1000).hold(1).to(22_000, 500).hold(1);
    BeamTruth truth = new BeamTruth(EmulatedBeam.withWidth(9_200, 13_344, 0.032), program);
    Iterator<BeamReadings.Reading> readings =
        new BeamReadings(truth, BeamDevice.load(100, noiseNewtons, stepNewtons), seed);
    BeamReadings lines = new BeamReadings(truth, BeamDevice.load(100, 0, 1), seed);
    TraceBuilder builder = new TraceBuilder("load");
    while (readings.hasNext()) {
      BeamReadings.Reading reading = readings.next();
      String line = new String(lines.line(reading), StandardCharsets.US_ASCII).strip();
      builder.add(
          reading.sentNanos() / 1000,
          line.getBytes(StandardCharsets.US_ASCII),
          reading.value() / 1000);
    }
    return builder.trace();
  }
}
