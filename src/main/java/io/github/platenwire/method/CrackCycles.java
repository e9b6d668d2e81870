package io.github.platenwire.method;

import io.github.platenwire.live.CrackResult;
import io.github.platenwire.live.Cycles;
import io.github.platenwire.live.Holds;
import java.util.Optional;

/** The width that each cycle left and the creep in each hold. Used once; not thread-safe. */
final class CrackCycles {
  private final CrackRules rules;
  private final CrackBudget budget;
  private final CrackFigures figures;

  CrackCycles(CrackRules rules, CrackBudget budget, CrackFigures figures) {
    this.rules = rules;
    this.budget = budget;
    this.figures = figures;
  }

  void add(CrackResult result) {
    addCycles(result);
    addHolds(result);
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
            Optional.of(budget.ofRest(cycle.residualMillimetres(), cycle.parts())),
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
            Optional.of(budget.ofCreep(hold.creepMillimetres(), hold.noiseMillimetres())),
            CrackFigures.rows(hold.firstSeq(), hold.lastSeq()));
      }
    }
  }
}
