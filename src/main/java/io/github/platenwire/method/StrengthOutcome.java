package io.github.platenwire.method;

import io.github.platenwire.live.BandJudge;
import io.github.platenwire.live.PeakTracker;
import io.github.platenwire.method.MethodResult.Figure;
import io.github.platenwire.quantity.UncertaintyBudget;
import io.github.platenwire.quantity.Unit;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** The figures of one specimen, out of what was followed. Used once; not thread-safe. */
final class StrengthOutcome {
  private static final Optional<Double> NO_BOUND = Optional.empty();

  private final StrengthRules rules;
  private final StrengthRules.Rounding rounding;
  private final Specimen specimen;
  private final TestSetting setting;
  private final List<Method.Objection> objections;
  private final Section section;
  private final LoadFollower follower;
  private final Optional<BandJudge.Verdict> verdict;
  private final List<Figure> figures = new ArrayList<>();

  StrengthOutcome(
      StrengthRules rules,
      Specimen specimen,
      TestSetting setting,
      List<Method.Objection> objections,
      Section section,
      LoadFollower follower) {
    this.rules = rules;
    this.rounding = rules.rounding();
    this.specimen = specimen;
    this.setting = setting;
    this.objections = objections;
    this.section = section;
    this.follower = follower;
    this.verdict = follower.judge().judge(rules.rate().fromShare(), rules.rate().toShare());
  }

  MethodResult result() {
    SpecimenAge age = SpecimenAge.of(rules.ages(), rounding.ageDays(), specimen, setting);
    if (follower.wasLoaded()) {
      addStrength();
    }
    section.properties().forEach(this::add);
    Properties.age(age, rounding.ageDays()).ifPresent(this::add);
    Properties.zero(follower.zero(), rounding.zero()).ifPresent(figures::add);
    verdict.ifPresent(this::addRate);
    StrengthChecks checks = new StrengthChecks(rules, setting, objections, follower, verdict);
    return new MethodResult(
        figures, checks.checks(section, age), checks.departures(), follower.filter().suspects());
  }

  private void addStrength() {
    double peakNewtons = follower.peak().peak();
    double uncorrected = peakNewtons / section.newtonsPerMegapascal();
    double factor = section.factor();
    double strength = uncorrected * factor;
    double bound = follower.samplingBoundNewtons();
    StrengthBudget budget = new StrengthBudget(rules, section, follower);
    List<Long> rows = rows();
    addStress(
        "strength",
        rules.resultTitle(),
        strength,
        Optional.of(budget.ofStrength(strength)),
        known(bound / section.newtonsPerMegapascal() * factor));
    if (section.correction().isPresent()) {
      addStress(
          "strength-uncorrected",
          rules.resultTitle() + " before correction for length",
          uncorrected,
          Optional.of(budget.ofUncorrected(uncorrected)),
          known(bound / section.newtonsPerMegapascal()));
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
    rows.addAll(Properties.rows(follower.zero()));
    rows.remove(0L);
    return List.copyOf(rows);
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
    double base = newtonsPerSecond / section.newtonsPerMegapascal();
    Unit unit = rules.rate().unit();
    Unit inchPound = rules.rate().inchPoundUnit();
    add(new Section.Property(name, title, unit.fromBase(base), unit, inchPound, rounding.rate()));
  }

  private void add(Section.Property property) {
    figures.add(property.figure());
  }
}
