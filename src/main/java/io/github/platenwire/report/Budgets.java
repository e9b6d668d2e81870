package io.github.platenwire.report;

import io.github.platenwire.method.MethodResult.Figure;
import io.github.platenwire.quantity.UncertaintyBudget;
import java.util.List;

/** Uncertainty budgets as a table. Stateless. */
final class Budgets {
  private Budgets() {}

  /** The budgets of all figures that have one. */
  static PageTable table(List<Figure> figures) {
    PageTable table =
        PageTable.named("uncertainty", "")
            .words("Contribution")
            .numbers("Standard uncertainty", "standard_uncertainty")
            .numbers("Share of the square", "share")
            .numbers("Degrees of freedom", "degrees_of_freedom")
            .hidden("figure");
    for (Figure figure : figures) {
      figure.uncertainty().ifPresent(budget -> add(table, figure, budget));
    }
    return table;
  }

  private static void add(PageTable table, Figure figure, UncertaintyBudget budget) {
    String unit = " " + figure.unit().symbol();
    table.group(
        Inline.text(
            Words.shortTitle(figure)
                + ": combined "
                + Words.significant(budget.combined(), 3)
                + unit
                + ", expanded (k = 2) "
                + Words.significant(budget.expanded(), 3)
                + unit
                + ", effective degrees of freedom "
                + degrees(budget.effectiveDegreesOfFreedom())));
    double square = budget.combined() * budget.combined();
    for (UncertaintyBudget.Line line : budget.lines()) {
      double share = line.contribution() * line.contribution() / square;
      table.row(
          Cell.of(line.source()),
          Cell.of(Words.significant(line.contribution(), 3) + unit, line.contribution()),
          Cell.of(Words.decimals(100 * share, 1) + " %", share),
          Cell.of(degrees(line.degreesOfFreedom()), line.degreesOfFreedom()),
          Cell.of(figure.name()));
    }
  }

  private static String degrees(double degrees) {
    return degrees > 9999 ? "∞" : Words.decimals(degrees, degrees < 100 ? 1 : 0);
  }
}
