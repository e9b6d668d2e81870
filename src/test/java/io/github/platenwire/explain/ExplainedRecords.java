package io.github.platenwire.explain;

import io.github.platenwire.emulate.BeamDevice;
import io.github.platenwire.emulate.BeamProgram;
import io.github.platenwire.emulate.BeamTruth;
import io.github.platenwire.emulate.EmulatedBeam;
import io.github.platenwire.emulate.EmulatedModulus;
import io.github.platenwire.emulate.ModulusTruth;
import io.github.platenwire.method.BreakPosition;
import io.github.platenwire.method.Dimension;
import io.github.platenwire.method.GaugeMount;
import io.github.platenwire.quantity.Unit;
import io.github.platenwire.record.Observations;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** One record of every kind of method, each made of the bytes that devices send. Stateless. */
final class ExplainedRecords {
  /** Every kind, in a name of its own. */
  static final List<String> KINDS =
      List.of(
          "cylinder",
          "short-cylinder",
          "core",
          "cube",
          "cylinder-en",
          "splitting",
          "flexure",
          "flexure-outside",
          "modulus",
          "split-beam",
          "notched-beam",
          "front",
          "front-many",
          "absorption");

  private static final BreakPosition MIDDLE = BreakPosition.MIDDLE_THIRD;

  private ExplainedRecords() {}

  static Path make(String kind, Path folder) throws Exception {
    return switch (kind) {
      case "cylinder" -> compression("compression-cylinder-c39", 200.1, 194.4, folder);
      case "short-cylinder" -> compression("compression-cylinder-c39", 137.5, 194.4, folder);
      case "core" ->
          cylinder("compression-core-c42", 120, 150.3)
              .shape("core", Map.of())
              .close(folder, Observations.NONE);
      case "cube" -> cube().close(folder, Observations.NONE);
      case "cylinder-en" -> compression("compression-cylinder-en12390", 200, 194.4, folder);
      case "splitting" -> splitting().close(folder, Observations.NONE);
      case "flexure" -> flexure(folder, MIDDLE);
      case "flexure-outside" -> flexure(folder, BreakPosition.outside(140));
      case "flexure-discarded" -> flexure(folder, BreakPosition.outside(100));
      case "modulus" -> modulus().close(folder, Observations.NONE);
      case "split-beam" -> splitBeam().close(folder, Observations.NONE);
      case "notched-beam" -> notchedBeam().close(folder, Observations.NONE);
      case "front" -> front().close(folder, Observations.NONE);
      case "front-many" -> frontMany().close(folder, Observations.NONE);
      case "absorption" -> absorption(0).close(folder, Observations.NONE);
      case "absorption-bent" -> absorption(3).close(folder, Observations.NONE);
      default -> throw new IllegalArgumentException(kind);
    };
  }

  private static Path compression(String method, double length, double peak, Path folder)
      throws Exception {
    return cylinder(method, length, peak).close(folder, Observations.NONE);
  }

  private static RecordMaker cylinder(String method, double length, double peak) {
    return new RecordMaker(method)
        .cylinder(99.8, 100.2, length)
        .mass(3.59)
        .load(Unit.KILONEWTON)
        .crush(0.05, peak, 30);
  }

  private static RecordMaker cube() {
    return new RecordMaker("compression-cube-en12390")
        .shape("cube", Map.of(Dimension.WIDTH, 150.2, Dimension.DEPTH, 149.7))
        .height(150.1)
        .mass(8.11)
        .load(Unit.KILONEWTON)
        .crush(0.05, 812.4, 30);
  }

  private static RecordMaker splitting() {
    return new RecordMaker("splitting-cylinder-c496")
        .cylinder(100.0, 100.0, 201.0)
        .load(Unit.KILONEWTON)
        .crush(0.05, 135.10, 30);
  }

  /** 6 x 6 in on 18 in in a frame that tells pounds. */
  private static Path flexure(Path folder, BreakPosition position) throws Exception {
    return new RecordMaker("flexure-third-point-c78")
        .shape(
            "beam", Map.of(Dimension.WIDTH, 152.4, Dimension.DEPTH, 152.4, Dimension.SPAN, 457.2))
        .load(Unit.POUND_FORCE)
        .crush(12, 5150, 30)
        .close(folder, Observations.NONE.withBreakPosition(position));
  }

  private static RecordMaker modulus() {
    EmulatedModulus cylinder = new EmulatedModulus(27_500, 32, 0.2, 0.19, 40e-6, 150);
    ModulusTruth truth =
        new ModulusTruth(
            cylinder,
            ModulusTruth.cycles(cylinder, 3, 0.42, 2.5, 4),
            List.of(5.25 * 25.4 * 2, 1e6));
    GaugeMount lever = new GaugeMount(false, true, OptionalDouble.of(5.25 * 25.4), 2);
    GaugeMount across = new GaugeMount(true, true, OptionalDouble.empty(), 1);
    return new RecordMaker("modulus-c469")
        .cylinder(150, 150, 300)
        .shape("cylinder", Map.of(Dimension.COMPANION_STRENGTH, 32.0))
        .load(Unit.KILONEWTON)
        .channel("axial", Unit.MILLIMETRE, "gauge-line-mm", 5, Optional.of(lever))
        .channel("across", Unit.MICROSTRAIN, "strain-line", 3000, Optional.of(across))
        .send(
            truth,
            List.of(
                BeamDevice.load(10, 20, 10),
                BeamDevice.gauge(0, 10, 0.0001, 0.0001),
                BeamDevice.strain(1, 8, 0.3, 0.1)),
            7);
  }

  private static RecordMaker splitBeam() {
    BeamProgram program =
        new BeamProgram(6)
            .to(11_500, 1000)
            .hold(14)
            .to(2_000, 2000)
            .hold(1)
            .to(22_000, 1000)
            .hold(1);
    BeamTruth truth = new BeamTruth(EmulatedBeam.withWidth(9_200, 13_344, 0.32), program);
    return new RecordMaker("split-beam")
        .shape("beam", Map.of(Dimension.WEDGE_ANGLE, 30.0))
        .load(Unit.KILONEWTON)
        .channel("gauge-a", Unit.MILLIMETRE, "gauge-line-mm", 5)
        .channel("gauge-b", Unit.MILLIMETRE, "gauge-line-mm", 5)
        .send(
            truth,
            List.of(
                BeamDevice.load(40, 20, 1),
                BeamDevice.gauge(0, 10, 0.0005, 0.0001),
                BeamDevice.gauge(1, 30, 0.0005, 0.0001)),
            3);
  }

  /** Load on opening, noiseless: up to 15 kN at 0.04 mm, a fall to 10 kN at 0.5 mm, and on. */
  private static RecordMaker notchedBeam() {
    RecordMaker maker =
        new RecordMaker("notched-beam-en14651")
            .shape(
                "beam",
                Map.of(
                    Dimension.WIDTH, 150.0,
                    Dimension.DEPTH, 150.0,
                    Dimension.NOTCH_DEPTH, 25.0,
                    Dimension.SPAN, 500.0))
            .load(Unit.KILONEWTON)
            .channel("cmod", Unit.MILLIMETRE, "gauge-line-mm", 5);
    for (int i = 0; i < 20 * 130; i++) {
      double seconds = i / 20.0;
      double slow = Math.max(0, seconds - 4) * 0.005;
      double opening = slow <= 0.1 ? slow : 0.1 + (seconds - 24) * 0.04;
      String text = String.format(Locale.ROOT, "%+07.4f", opening);
      double shown = Double.parseDouble(text);
      maker.load(seconds, notchedLoad(shown));
      maker.row(Math.round(seconds * 1e6), 1, text + " mm", shown);
    }
    return maker;
  }

  static double notchedLoad(double opening) {
    if (opening <= 0.04) {
      return 15 * opening / 0.04;
    }
    return opening <= 0.5 ? 15 - 5 * (opening - 0.04) / 0.46 : 10 - 4 * (opening - 0.5) / 3.0;
  }

  private static RecordMaker typed(String method, Unit unit, String device) {
    return new RecordMaker(method).cylinder(100.0, 100.0, 50).channel("entry", unit, device, 1e4);
  }

  private static RecordMaker front() {
    RecordMaker maker = typed("front-advance", Unit.MILLIMETRE, "typed-length");
    double[] minutes = {0, 30, 60, 120, 240, 360};
    double[] depths = {0, 10.5, 14.6, 20.9, 29.8, 36.1};
    for (int i = 0; i < minutes.length; i++) {
      String after = i == 0 ? "" : " after " + Math.round(minutes[i] * 60) + " s";
      maker.row(1_000_000L * (i + 1), 0, ">" + depths[i] + " mm;" + after, depths[i]);
    }
    maker.row(9_000_000, 0, ">37 mm; for 6", 37);
    return maker;
  }

  /** A gauge that sends a depth each ten seconds. */
  private static RecordMaker frontMany() {
    RecordMaker maker =
        new RecordMaker("front-advance").channel("depth", Unit.MILLIMETRE, "gauge-line-mm", 100);
    for (int i = 0; i < 400; i++) {
      String text = String.format(Locale.ROOT, "%+08.4f", 0.02 * i + 0.001 * (i % 3));
      maker.row(10_000_000L * i, 0, text + " mm", Double.parseDouble(text));
    }
    return maker;
  }

  /** Six hours at 0.02 mm a root second and days at 0.004, or bent. */
  private static RecordMaker absorption(double bend) {
    RecordMaker maker = typed("absorption-c1585", Unit.GRAM, "typed-mass");
    long[] seconds = {0, 60, 300, 600, 1200, 3600, 7200, 21600, 86400, 172800, 345600, 604800};
    for (int i = 0; i < seconds.length; i++) {
      double root = Math.sqrt((double) seconds[i]);
      double gain =
          0.157 * Math.min(root, 147) + 0.031 * Math.max(0, root - 147) + (i % 2) * 3 * bend;
      double mass = Math.round((952.31 + gain) * 100) / 100.0;
      String after = i == 0 ? "" : " after " + seconds[i] + " s";
      maker.row(1_000_000L * (i + 1), 0, ">" + mass + " g;" + after, mass);
    }
    return maker;
  }
}
