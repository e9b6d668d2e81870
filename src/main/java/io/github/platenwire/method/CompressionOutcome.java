package io.github.platenwire.method;

import io.github.platenwire.live.BandJudge;
import io.github.platenwire.live.PeakTracker;
import io.github.platenwire.live.ZeroFinder;
import io.github.platenwire.method.MethodResult.Figure;
import io.github.platenwire.quantity.UncertaintyBudget;
import io.github.platenwire.quantity.Unit;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** The figures of one cylinder, out of what was followed. Used once; not thread-safe. */
final class CompressionOutcome {
  private static final Optional<UncertaintyBudget> NO_BUDGET = Optional.empty();
  private static final Optional<Double> NO_BOUND = Optional.empty();

  private final CompressionRules rules;
  private final CompressionRules.Rounding rounding;
  private final Specimen specimen;
  private final TestSetting setting;
  private final List<Method.Objection> objections;
  private final CylinderGeometry geometry;
  private final LoadFollower follower;
  private final Optional<BandJudge.Verdict> verdict;
  private final List<Figure> figures = new ArrayList<>();

  CompressionOutcome(
      CompressionRules rules,
      Specimen specimen,
      TestSetting setting,
      List<Method.Objection> objections,
      CylinderGeometry geometry,
      LoadFollower follower) {
    this.rules = rules;
    this.rounding = rules.rounding();
    this.specimen = specimen;
    this.setting = setting;
    this.objections = objections;
    this.geometry = geometry;
    this.follower = follower;
    this.verdict = follower.judge().judge(rules.rate().fromShare(), rules.rate().toShare());
  }

  MethodResult result() {
    CylinderAge age = CylinderAge.of(rules, specimen, setting);
    if (follower.wasLoaded()) {
      addStrength();
    }
    addGeometry();
    if (age.days().isPresent()) {
      addSame("age", "Age at test", age.days().getAsDouble(), Unit.DAY, rounding.ageDays());
    }
    addZero();
    verdict.ifPresent(this::addRate);
    CompressionChecks checks = new CompressionChecks(rules, setting, objections, follower, verdict);
    return new MethodResult(
        figures, checks.checks(geometry, age), checks.departures(), follower.filter().suspects());
  }

  private void addStrength() {
    double peakNewtons = follower.peak().peak();
    double uncorrected = peakNewtons / geometry.area();
    Optional<Double> correction = rules.correction().factor(geometry.lengthRatio());
    double factor = correction.orElse(1.0);
    double strength = uncorrected * factor;
    double bound = follower.samplingBoundNewtons();
    StrengthBudget budget = new StrengthBudget(rules, geometry, follower);
    List<Long> rows = rows();
    addStress(
        "strength",
        "Compressive strength",
        strength,
        Optional.of(budget.ofStrength(strength, factor)),
        known(bound / geometry.area() * factor));
    if (correction.isPresent()) {
      addStress(
          "strength-uncorrected",
          "Compressive strength before correction for length",
          uncorrected,
          NO_BUDGET,
          known(bound / geometry.area()));
    }
    double kilonewtons = Unit.KILONEWTON.fromBase(peakNewtons);
    figures.add(
        new Figure(
            "peak-load",
            "Greatest load",
            kilonewtons,
            Unit.KILONEWTON,
            BothUnits.rounded(kilonewtons, rounding.load().si()),
            Unit.POUND_FORCE,
            BothUnits.rounded(Unit.POUND_FORCE.fromBase(peakNewtons), rounding.load().inchPound()),
            Optional.of(budget.ofLoad(1 / Unit.KILONEWTON.factor())),
            known(Unit.KILONEWTON.fromBase(bound)),
            rows));
  }

  private void addStress(
      String name,
      String title,
      double megapascals,
      Optional<UncertaintyBudget> budget,
      Optional<Double> bound) {
    figures.add(
        new Figure(
            name,
            title,
            megapascals,
            Unit.MEGAPASCAL,
            BothUnits.rounded(megapascals, rounding.stress().si()),
            Unit.PSI,
            BothUnits.rounded(
                BothUnits.megapascalsToPsi(megapascals), rounding.stress().inchPound()),
            budget,
            bound,
            rows()));
  }

  private static Optional<Double> known(double value) {
    return Double.isNaN(value) ? NO_BOUND : Optional.of(value);
  }

  /** The peak's row first, then its neighbours, then the first and last that the zero rests on. */
  private List<Long> rows() {
    PeakTracker peak = follower.peak();
    Set<Long> rows = new LinkedHashSet<>();
    rows.add(peak.peakSeq());
    rows.add(peak.beforeSeq());
    rows.add(peak.afterSeq());
    rows.addAll(zeroRows());
    rows.remove(0L);
    return List.copyOf(rows);
  }

  private List<Long> zeroRows() {
    ZeroFinder zero = follower.zero();
    return zero.readings() == 0 ? List.of() : List.of(zero.firstSeq(), zero.lastSeq());
  }

  private void addGeometry() {
    add(
        "area",
        "Cross-section",
        geometry.area(),
        Unit.SQUARE_MILLIMETRE,
        Unit.SQUARE_INCH,
        rounding.area());
    add(
        "diameter",
        "Mean diameter",
        geometry.meanDiameter(),
        Unit.MILLIMETRE,
        Unit.INCH,
        rounding.diameter());
    addSame(
        "length-ratio", "Length over diameter", geometry.lengthRatio(), Unit.ONE, rounding.ratio());
    rules
        .correction()
        .factor(geometry.lengthRatio())
        .ifPresent(
            factor ->
                addSame(
                    "correction", "Correction for length", factor, Unit.ONE, rounding.factor()));
    specimen
        .massKilograms()
        .ifPresent(
            mass ->
                add(
                    "density",
                    "Density",
                    geometry.density(mass),
                    Unit.KILOGRAM_PER_CUBIC_METRE,
                    Unit.POUND_PER_CUBIC_FOOT,
                    rounding.density()));
  }

  private void addZero() {
    if (follower.zero().readings() == 0) {
      return;
    }
    double newtons = follower.zero().zero();
    double kilonewtons = Unit.KILONEWTON.fromBase(newtons);
    figures.add(
        new Figure(
            "zero",
            "Load at zero, taken off",
            kilonewtons,
            Unit.KILONEWTON,
            BothUnits.rounded(kilonewtons, rounding.zero().si()),
            Unit.POUND_FORCE,
            BothUnits.rounded(Unit.POUND_FORCE.fromBase(newtons), rounding.zero().inchPound()),
            NO_BUDGET,
            NO_BOUND,
            zeroRows()));
  }

  private void addRate(BandJudge.Verdict seen) {
    String part =
        " from "
            + BothUnits.wholePercent(rules.rate().fromShare())
            + " to "
            + BothUnits.wholePercent(rules.rate().toShare())
            + " of the greatest load";
    addRate("rate", "Mean rate of loading" + part, seen.mean());
    addRate("rate-least", "Least rate of loading" + part, seen.least());
    addRate("rate-greatest", "Greatest rate of loading" + part, seen.greatest());
  }

  private void addRate(String name, String title, double newtonsPerSecond) {
    add(
        name,
        title,
        newtonsPerSecond / geometry.area(),
        Unit.MEGAPASCAL_PER_SECOND,
        Unit.PSI_PER_SECOND,
        rounding.rate());
  }

  private void addSame(String name, String title, double value, Unit unit, BigDecimal step) {
    add(name, title, value, unit, unit, new CompressionRules.Steps(step, step));
  }

  private void add(
      String name,
      String title,
      double value,
      Unit si,
      Unit inchPound,
      CompressionRules.Steps steps) {
    figures.add(
        new Figure(
            name,
            title,
            value,
            si,
            BothUnits.rounded(value, steps.si()),
            inchPound,
            BothUnits.rounded(si.convert(value, inchPound), steps.inchPound()),
            NO_BUDGET,
            NO_BOUND,
            List.of()));
  }
}
