package io.github.platenwire.method;

import io.github.platenwire.live.ChordCycle;
import io.github.platenwire.live.StrainFeed;
import io.github.platenwire.quantity.UncertaintyBudget;
import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;

/**
 * Where the uncertainty of a modulus comes from, by JCGM 100:2008. The modulus of a cycle is E =
 * (F2 - F1) / (A (e2 - e1)), with e1 and F2 set by the method, and F1 and e2 read at them; the
 * result is the mean of m cycles. So its relative sensitivities are 1 to both calibrations, to the
 * gauge length and to the lever, 2 to the diameter. Noise of a load moves F1 as it is, and e2 by
 * what the load is off over the tangent there; noise of a strain moves e2 as it is, and F1 by the
 * tangent there; both shrink with the root of m, what is common to all cycles does not. A time t
 * between load and gauges moves F1 and e2 by their rates, which cancels where the curve is
 * straight. An input known only to lie within +/- a has the standard uncertainty a / sqrt 3 (JCGM
 * 100, 4.3.7). Immutable.
 */
final class ModulusBudget {
  private static final double ROOT_3 = Math.sqrt(3);

  private final ModulusRules rules;
  private final Section section;
  private final List<StrainGauge> gauges;
  private final List<ChordCycle> cycles;
  private final CalibrationShare load;
  private final double loadNoise;
  private final double alongNoise;
  private final double acrossNoise;

  ModulusBudget(
      ModulusRules rules,
      Section section,
      LoadChannel channel,
      List<StrainGauge> gauges,
      List<ChordCycle> counted,
      StrainFeed feed) {
    this.rules = rules;
    this.section = section;
    this.gauges = gauges;
    cycles = counted;
    load = CalibrationShare.of("load", List.of(channel.facts()), rules.machineAccuracyPercent());
    loadNoise = known(feed.noise().ofLoad());
    alongNoise = known(feed.noise().ofStrain(/* across= */ false));
    acrossNoise = known(feed.noise().ofStrain(/* across= */ true));
  }

  private static double known(double noise) {
    return Double.isFinite(noise) ? noise : 0;
  }

  /** Of the mean modulus, megapascals. */
  UncertaintyBudget ofModulus(double modulus) {
    List<UncertaintyBudget.Line> lines = new ArrayList<>();
    load.addTo(lines, modulus);
    addGauges(lines, /* across= */ false, modulus);
    section.sizes().forEach(size -> StrengthBudget.addSize(lines, size, modulus));
    add(lines, "load at the marks: noise and resolution", ofMean(this::loadShare) * modulus);
    add(lines, "strain at the marks: noise and resolution", ofMean(this::strainShare) * modulus);
    double micros = rules.timing().uncertaintyMicros();
    add(
        lines,
        "alignment: timing of gauges and load",
        common(this::timingShare) * micros * modulus);
    add(lines, StrengthBudget.ROUNDING, rules.rounding().modulus().si().doubleValue() / 2 / ROOT_3);
    return new UncertaintyBudget(lines);
  }

  /** Of the mean of Poisson's ratio. */
  UncertaintyBudget ofPoisson(double ratio) {
    List<UncertaintyBudget.Line> lines = new ArrayList<>();
    addGauges(lines, /* across= */ false, ratio);
    addGauges(lines, /* across= */ true, ratio);
    add(lines, "strain along at the marks: noise", ofMean(this::alongShare) * ratio);
    add(lines, "strain across at the marks: noise", ofMean(this::acrossShare) * ratio);
    add(lines, StrengthBudget.ROUNDING, rules.rounding().poisson().doubleValue() / 2 / ROOT_3);
    return new UncertaintyBudget(lines);
  }

  private void addGauges(List<UncertaintyBudget.Line> lines, boolean across, double value) {
    List<StrainGauge> of = gauges.stream().filter(gauge -> gauge.across() == across).toList();
    String words = across ? "gauges across" : "gauges along";
    CalibrationShare share =
        CalibrationShare.of(
            words, of.stream().map(StrainGauge::facts).toList(), rules.gauge().accuracyPercent());
    share.addTo(lines, value);
    if (of.stream().anyMatch(StrainGauge::readsLength)) {
      add(lines, words + ": gauge length", percent(rules.gauge().lengthPercent()) * value);
    }
    if (of.stream().anyMatch(gauge -> gauge.readsLength() && gauge.mount().lever() != 1)) {
      add(lines, words + ": ratio of the lever", percent(rules.gauge().leverPercent()) * value);
    }
  }

  private static double percent(double halfWidth) {
    return halfWidth / 100 / ROOT_3;
  }

  /** What differs from cycle to cycle, in the mean of them. */
  private double ofMean(ToDoubleFunction<ChordCycle> share) {
    double squares = 0;
    for (ChordCycle cycle : cycles) {
      double one = share.applyAsDouble(cycle);
      squares += one * one;
    }
    return Math.sqrt(squares) / cycles.size();
  }

  /** What is the same in each cycle. */
  private double common(ToDoubleFunction<ChordCycle> share) {
    return Math.abs(cycles.stream().mapToDouble(share).average().orElse(0));
  }

  private double loadShare(ChordCycle cycle) {
    double first = loadNoise / newtons(cycle);
    double second = loadNoise / tangent(cycle, cycle.second()) / strain(cycle);
    return Math.hypot(first, second);
  }

  private double strainShare(ChordCycle cycle) {
    double first = alongNoise * tangent(cycle, cycle.first()) / newtons(cycle);
    return Math.hypot(first, alongNoise / strain(cycle));
  }

  private double alongShare(ChordCycle cycle) {
    return alongNoise * Math.sqrt(2) / strain(cycle);
  }

  private double acrossShare(ChordCycle cycle) {
    double wide = cycle.second().across() - cycle.first().across();
    return acrossNoise * Math.sqrt(2) / Math.abs(wide);
  }

  /** Relative error of the modulus for each microsecond between load and gauges. */
  private double timingShare(ChordCycle cycle) {
    double share =
        cycle.second().strainPerSecond() / strain(cycle)
            - cycle.first().newtonsPerSecond() / newtons(cycle);
    return known(share) * 1e-6;
  }

  private static double newtons(ChordCycle cycle) {
    return cycle.second().newtons() - cycle.first().newtons();
  }

  private static double strain(ChordCycle cycle) {
    return cycle.second().strain() - cycle.first().strain();
  }

  /** Newtons for a strain of one at a mark; that of the chord where it is not known. */
  private static double tangent(ChordCycle cycle, ChordCycle.Mark mark) {
    double seen = mark.newtonsPerSecond() / mark.strainPerSecond();
    return Double.isFinite(seen) && seen > 0 ? seen : cycle.newtonsPerStrain();
  }

  private static void add(List<UncertaintyBudget.Line> lines, String source, double contribution) {
    CrackBudget.add(lines, source, contribution);
  }
}
