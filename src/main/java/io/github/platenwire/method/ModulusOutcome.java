package io.github.platenwire.method;

import io.github.platenwire.live.ChordCycle;
import io.github.platenwire.live.LoneReadingFilter;
import io.github.platenwire.live.StrainFeed;
import io.github.platenwire.live.ZeroFinder;
import io.github.platenwire.method.MethodResult.Figure;
import io.github.platenwire.quantity.UncertaintyBudget;
import io.github.platenwire.quantity.Unit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The figures of one cylinder, out of its cycles. Used once; not thread-safe. */
final class ModulusOutcome {
  /** The first cycle seats the gauges. */
  private static final int SEATING = 1;

  private final ModulusRules rules;
  private final ModulusRules.Rounding rounding;
  private final Specimen specimen;
  private final TestSetting setting;
  private final Section section;
  private final double area;
  private final LoadChannel load;
  private final List<StrainGauge> gauges;
  private final List<Figure> figures = new ArrayList<>();

  ModulusOutcome(
      ModulusRules rules,
      Specimen specimen,
      TestSetting setting,
      Section section,
      LoadChannel load,
      List<StrainGauge> gauges) {
    this.rules = rules;
    this.rounding = rules.rounding();
    this.specimen = specimen;
    this.setting = setting;
    this.section = section;
    this.area = section.newtonsPerMegapascal();
    this.load = load;
    this.gauges = gauges;
  }

  MethodResult result(
      StrainFeed feed, ZeroFinder zero, List<Method.Objection> objections, long overReadings) {
    List<ChordCycle> cycles = feed.cycles();
    List<ChordCycle> counted = cycles.stream().filter(c -> c.number() > SEATING).toList();
    if (!counted.isEmpty()) {
      addMeans(counted, new ModulusBudget(rules, section, load, gauges, counted, feed));
    }
    cycles.forEach(this::addCycle);
    addCompanions();
    section.properties().forEach(property -> figures.add(property.figure()));
    SpecimenAge age = SpecimenAge.of(rules.ages(), rounding.ageDays(), specimen, setting);
    Properties.age(age, rounding.ageDays()).ifPresent(one -> figures.add(one.figure()));
    Properties.zero(zero, rounding.zero()).ifPresent(figures::add);
    ModulusChecks checks = new ModulusChecks(rules, section, strength(), load, gauges);
    Findings findings = checks.findings(feed, counted, age, objections, setting, overReadings);
    return new MethodResult(figures, findings.checks(), findings.departures(), suspects(feed));
  }

  private void addMeans(List<ChordCycle> counted, ModulusBudget budget) {
    double modulus = counted.stream().mapToDouble(this::modulus).average().orElseThrow();
    List<Long> rows = counted.stream().flatMap(cycle -> rows(cycle).stream()).toList();
    add(
        "modulus",
        "Modulus of elasticity, mean of " + count(counted.size()),
        modulus,
        rounding.modulus(),
        Optional.of(budget.ofModulus(modulus)),
        rows);
    double ratio =
        counted.stream().mapToDouble(ChordCycle::acrossOverAlong).average().orElseThrow();
    if (Double.isFinite(ratio)) {
      addPlain(
          "poisson",
          "Poisson's ratio, mean of " + count(counted.size()),
          ratio,
          Optional.of(budget.ofPoisson(ratio)),
          rows);
    }
  }

  private static String count(int cycles) {
    return cycles == 1 ? "1 cycle after the first" : cycles + " cycles after the first";
  }

  private double modulus(ChordCycle cycle) {
    return cycle.newtonsPerStrain() / area;
  }

  private void addCycle(ChordCycle cycle) {
    String suffix = "-cycle-" + cycle.number();
    String in =
        " in cycle "
            + cycle.number()
            + (cycle.number() == SEATING ? " (seating, not counted)" : "");
    List<Long> rows = rows(cycle);
    Optional<UncertaintyBudget> none = Optional.empty();
    add("modulus" + suffix, "Chord modulus" + in, modulus(cycle), rounding.modulus(), none, rows);
    if (Double.isFinite(cycle.acrossOverAlong())) {
      addPlain("poisson" + suffix, "Poisson's ratio" + in, cycle.acrossOverAlong(), none, rows);
    }
    String first =
        BothUnits.plain(Unit.MICROSTRAIN.fromBase(rules.chord().firstStrain())) + " µm/m";
    addStress("stress-low" + suffix, "Stress S1 at " + first + in, cycle.first());
    addStress("stress-high" + suffix, "Stress S2 at the end of the chord" + in, cycle.second());
    double strain = Unit.MICROSTRAIN.fromBase(cycle.second().strain());
    String printed = BothUnits.rounded(strain, rounding.strain());
    figures.add(
        new Figure(
            "strain-high" + suffix,
            "Strain at the end of the chord" + in,
            strain,
            Unit.MICROSTRAIN,
            printed,
            Unit.MICROSTRAIN,
            printed,
            none,
            Optional.empty(),
            seqs(cycle.second())));
  }

  private void addStress(String name, String title, ChordCycle.Mark mark) {
    add(name, title, mark.newtons() / area, rounding.stress(), Optional.empty(), seqs(mark));
  }

  private double strength() {
    return specimen.dimension(Dimension.COMPANION_STRENGTH).orElseThrow();
  }

  private void addCompanions() {
    add(
        "companion-strength",
        "Strength of the companions, as given",
        strength(),
        rounding.stress(),
        Optional.empty(),
        List.of());
  }

  private void add(
      String name,
      String title,
      double megapascals,
      Steps steps,
      Optional<UncertaintyBudget> budget,
      List<Long> rows) {
    figures.add(
        new Figure(
            name,
            title,
            megapascals,
            Unit.MEGAPASCAL,
            BothUnits.rounded(megapascals, steps.si()),
            Unit.PSI,
            BothUnits.rounded(BothUnits.megapascalsToPsi(megapascals), steps.inchPound()),
            budget,
            Optional.empty(),
            rows));
  }

  private void addPlain(
      String name,
      String title,
      double value,
      Optional<UncertaintyBudget> budget,
      List<Long> rows) {
    String printed = BothUnits.rounded(value, rounding.poisson());
    figures.add(
        new Figure(
            name,
            title,
            value,
            Unit.ONE,
            printed,
            Unit.ONE,
            printed,
            budget,
            Optional.empty(),
            rows));
  }

  /** The second mark's rows first, then the first mark's, then those of the gauges' zero. */
  private static List<Long> rows(ChordCycle cycle) {
    List<Long> rows = new ArrayList<>(seqs(cycle.second()));
    rows.addAll(seqs(cycle.first()));
    rows.add(cycle.lowest().firstSeq());
    rows.add(cycle.lowest().lastSeq());
    return List.copyOf(rows);
  }

  private static List<Long> seqs(ChordCycle.Mark mark) {
    return List.of(mark.lastSeq(), mark.firstSeq());
  }

  private static List<Long> suspects(StrainFeed feed) {
    List<Long> suspects = new ArrayList<>(feed.loadFilter().suspects());
    for (LoneReadingFilter filter : feed.gaugeFilters()) {
      suspects.addAll(filter.suspects());
    }
    suspects.sort(Long::compare);
    return suspects;
  }
}
