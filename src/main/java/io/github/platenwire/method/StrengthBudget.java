package io.github.platenwire.method;

import io.github.platenwire.live.ZeroFinder;
import io.github.platenwire.quantity.UncertaintyBudget;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/**
 * Where the uncertainty of a strength comes from, by JCGM 100:2008. The strength is f = c P / (pi
 * d^2 / 4) with P the peak load less the zero, d the mean diameter and c the correction for length,
 * so its sensitivities are f/P to the load, -2 f/d to the diameter and f/c to the correction. An
 * input known only to lie within +/- a is taken as rectangular: standard uncertainty a / sqrt 3
 * (JCGM 100, 4.3.7).
 */
final class StrengthBudget {
  private static final double ROOT_3 = Math.sqrt(3);
  private static final double COVERAGE = 2;

  private final CompressionRules rules;
  private final CylinderGeometry geometry;
  private final LoadFollower follower;
  private final double peakNewtons;

  StrengthBudget(CompressionRules rules, CylinderGeometry geometry, LoadFollower follower) {
    this.rules = rules;
    this.geometry = geometry;
    this.follower = follower;
    this.peakNewtons = follower.peak().peak();
  }

  /** The budget of the peak load, in the unit in which a newton is {@code scale}. */
  UncertaintyBudget ofLoad(double scale) {
    return new UncertaintyBudget(loadLines(scale));
  }

  /**
   * The budget of the strength in megapascals.
   *
   * @param strength the strength, not rounded
   * @param factor the correction for length, 1 if there is none
   */
  UncertaintyBudget ofStrength(double strength, double factor) {
    List<UncertaintyBudget.Line> lines = loadLines(strength / peakNewtons);
    double perMillimetre = 2 * strength / geometry.meanDiameter();
    double reading = rules.specimen().readingMillimetres() / 2 / ROOT_3;
    int diameters = geometry.diameters().size();
    add(lines, "diameter: step of the measuring", reading / Math.sqrt(diameters) * perMillimetre);
    if (diameters > 1) {
      lines.add(
          new UncertaintyBudget.Line(
              "diameter: spread of the " + diameters + " measured",
              geometry.diameterDeviation() / Math.sqrt(diameters) * perMillimetre,
              diameters - 1));
    }
    if (factor != 1) {
      add(
          lines,
          "correction for length: last printed digit",
          rules.correction().halfWidth() / ROOT_3 * strength / factor);
    }
    double step = rules.rounding().stress().si().doubleValue();
    add(lines, "rounding of the result", step / 2 / ROOT_3);
    return new UncertaintyBudget(lines);
  }

  private List<UncertaintyBudget.Line> loadLines(double scale) {
    List<UncertaintyBudget.Line> lines = new ArrayList<>();
    OptionalDouble certificate = follower.channel().facts().calibrationPercent();
    if (certificate.isPresent()) {
      double standard = certificate.getAsDouble() / 100 / COVERAGE * peakNewtons;
      add(lines, "load: calibration certificate", standard * scale);
    } else {
      double limit = rules.machineAccuracyPercent() / 100 * peakNewtons;
      add(
          lines,
          "load: no certificate, limit of "
              + BothUnits.plain(rules.machineAccuracyPercent())
              + " %",
          limit / ROOT_3 * scale);
    }
    double resolution = follower.resolutionNewtons();
    if (!Double.isNaN(resolution)) {
      add(lines, "load: resolution", resolution / 2 / ROOT_3 * scale);
    }
    addZero(lines, scale);
    double bound = follower.samplingBoundNewtons();
    if (!Double.isNaN(bound)) {
      add(lines, "load: peak between two readings", bound / 2 / ROOT_3 * scale);
    }
    return lines;
  }

  private void addZero(List<UncertaintyBudget.Line> lines, double scale) {
    ZeroFinder zero = follower.zero();
    ZeroFinder after = follower.zeroAfter();
    if (zero.readings() == 0) {
      double tolerance = follower.channel().zeroToleranceNewtons();
      add(lines, "zero: none found, greatest allowed", tolerance / ROOT_3 * scale);
    } else if (after.state() == ZeroFinder.State.QUIET) {
      add(lines, "zero: drift from before to after", Math.abs(after.zero()) / ROOT_3 * scale);
    } else {
      lines.add(
          new UncertaintyBudget.Line(
              "zero: noise before loading", zero.noise() * scale, zero.readings() - 1.0));
    }
  }

  private static void add(List<UncertaintyBudget.Line> lines, String source, double contribution) {
    lines.add(new UncertaintyBudget.Line(source, contribution, Double.POSITIVE_INFINITY));
  }
}
