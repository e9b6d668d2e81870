package io.github.platenwire.method;

import io.github.platenwire.live.ZeroFinder;
import io.github.platenwire.quantity.UncertaintyBudget;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/**
 * Where the uncertainty of a strength comes from, by JCGM 100:2008. The strength is f = c P k with
 * P the peak load less the zero, c the correction, and k a product of powers of the sizes, such as
 * 4/(pi d^2); so its sensitivities are f/P to the load, n f/d to a size d with the exponent n, and
 * f/c to the correction. An input known only to lie within +/- a is taken as rectangular: standard
 * uncertainty a / sqrt 3 (JCGM 100, 4.3.7).
 */
final class StrengthBudget {
  private static final double ROOT_3 = Math.sqrt(3);
  static final String ROUNDING = "rounding of the result";
  private static final String RESIDUAL =
      "load: calibration certificate, residual of its correction";
  private static final double COVERAGE = 2;

  private final StrengthRules rules;
  private final Section section;
  private final LoadFollower follower;
  private final double peakNewtons;

  StrengthBudget(StrengthRules rules, Section section, LoadFollower follower) {
    this.rules = rules;
    this.section = section;
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
   */
  UncertaintyBudget ofStrength(double strength) {
    List<UncertaintyBudget.Line> lines = measured(strength);
    section
        .correction()
        .ifPresent(
            factor ->
                add(
                    lines,
                    "correction for length: last printed digit",
                    factor.halfWidth() / ROOT_3 * strength / factor.value()));
    addRounding(lines);
    return new UncertaintyBudget(lines);
  }

  /**
   * The budget of the strength before the correction for length, in megapascals.
   *
   * @param uncorrected that strength, not rounded
   */
  UncertaintyBudget ofUncorrected(double uncorrected) {
    List<UncertaintyBudget.Line> lines = measured(uncorrected);
    addRounding(lines);
    return new UncertaintyBudget(lines);
  }

  /** What load and sizes bring to a stress. */
  private List<UncertaintyBudget.Line> measured(double megapascals) {
    List<UncertaintyBudget.Line> lines = loadLines(megapascals / peakNewtons);
    section.sizes().forEach(size -> addSize(lines, size, megapascals));
    return lines;
  }

  private void addRounding(List<UncertaintyBudget.Line> lines) {
    double step = rules.rounding().stress().si().doubleValue();
    add(lines, ROUNDING, step / 2 / ROOT_3);
  }

  static void addSize(List<UncertaintyBudget.Line> lines, Section.Size size, double strength) {
    double perMillimetre = Math.abs(size.exponent()) * strength / size.mean();
    int readings = size.readings().size();
    double step = size.stepMillimetres() / 2 / ROOT_3;
    add(lines, size.name() + ": step of the measuring", step / Math.sqrt(readings) * perMillimetre);
    if (readings > 1) {
      lines.add(
          new UncertaintyBudget.Line(
              size.name() + ": spread of the " + readings + " measured",
              size.deviation() / Math.sqrt(readings) * perMillimetre,
              readings - 1));
    }
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
    double residual = follower.channel().facts().correctionPercent().orElse(0);
    add(lines, RESIDUAL, residual / 100 / COVERAGE * peakNewtons * scale);
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
