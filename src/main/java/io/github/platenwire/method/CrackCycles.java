package io.github.platenwire.method;

import io.github.platenwire.live.CrackResult;
import io.github.platenwire.live.Cycles;
import io.github.platenwire.live.Holds;
import java.util.List;
import java.util.Optional;

/** The width that each cycle left and the creep in each hold. Used once; not thread-safe. */
final class CrackCycles {
  private final CrackRules rules;
  private final List<GaugeChannel> gauges;
  private final CrackBudget budget;
  private final CrackFigures figures;

  CrackCycles(
      CrackRules rules, List<GaugeChannel> gauges, CrackBudget budget, CrackFigures figures) {
    this.rules = rules;
    this.gauges = gauges;
    this.budget = budget;
    this.figures = figures;
  }

  void add(CrackResult result) {
    addCycles(result);
    addHolds(result);
  }

  private double gaugeNoise(CrackResult result) {
    double squares = 0;
    int count = 0;
    for (int i = 0; i < gauges.size(); i++) {
      if ((result.mask() & (1 << i)) != 0 && result.gaugeZeros().get(i).isKnown()) {
        double step = rules.settings(gauges).gauges().get(i).resolution() / Math.sqrt(12);
        double noise = result.gaugeZeros().get(i).noise();
        squares += Math.max(noise * noise, step * step);
        count++;
      }
    }
    return count == 0 ? 0 : Math.sqrt(squares) / count;
  }

  private void addCycles(CrackResult result) {
    int number = 0;
    for (Cycles.Cycle cycle : result.cycles()) {
      number++;
      if (Double.isFinite(cycle.residualMillimetres())) {
        figures.width(
            "residual-" + number,
            "Width left at the least load of cycle "
                + number
                + ", "
                + BothUnits.force(cycle.bottomNewtons(), rules.rounding().load())
                + ", after "
                + BothUnits.force(cycle.topNewtons(), rules.rounding().load())
                + (cycle.reloaded() ? "" : ", not loaded again"),
            cycle.residualMillimetres(),
            Optional.of(budget.ofCreep(cycle.residualMillimetres(), gaugeNoise(result))),
            CrackFigures.rows(cycle.topSeq(), cycle.bottomFirstSeq(), cycle.bottomLastSeq()));
      }
    }
  }

  private void addHolds(CrackResult result) {
    int number = 0;
    for (Holds.Hold hold : result.holds()) {
      number++;
      if (Double.isFinite(hold.creepMillimetres())) {
        figures.width(
            "creep-" + number,
            "Creep of the crack in hold "
                + number
                + ", "
                + BothUnits.force(hold.newtons(), rules.rounding().load())
                + " for "
                + BothUnits.fixed((hold.endMicros() - hold.startMicros()) * 1e-6, 1)
                + " s",
            hold.creepMillimetres(),
            Optional.of(budget.ofCreep(hold.creepMillimetres(), gaugeNoise(result))),
            CrackFigures.rows(hold.firstSeq(), hold.lastSeq()));
      }
    }
  }
}
