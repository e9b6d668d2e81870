package io.github.platenwire.method;

import io.github.platenwire.live.CrackResult;
import io.github.platenwire.live.FirstCrack;
import io.github.platenwire.live.Thresholds;
import io.github.platenwire.quantity.UncertaintyBudget;
import java.util.ArrayList;
import java.util.List;

/**
 * Strengths of a notched beam by EN 14651 (from memory): f = 3 F l / (2 b h_sp^2), with l the span,
 * b the width and h_sp the depth above the notch.
 */
final class NotchedBeamFigures {
  /** Up to which the load of f_LOP is sought, millimetres (EN 14651, from memory). */
  private static final double SMALL_OPENING = 0.05;

  private final CrackRules.Notch notch;
  private final CrackBudget budget;
  private final CrackFigures figures;
  private final double width;
  private final double above;
  private final double span;

  NotchedBeamFigures(
      CrackRules.Notch notch, Specimen specimen, CrackBudget budget, CrackFigures figures) {
    this.notch = notch;
    this.budget = budget;
    this.figures = figures;
    width = specimen.dimension(Dimension.WIDTH).orElseThrow();
    span = specimen.dimension(Dimension.SPAN).orElseThrow();
    above =
        specimen.dimension(Dimension.DEPTH).orElseThrow()
            - specimen.dimension(Dimension.NOTCH_DEPTH).orElseThrow();
  }

  /** Strength in megapascals for a load in newtons and sizes in millimetres. */
  static double strength(double newtons, double span, double width, double above) {
    return 3 * newtons * span / (2 * width * above * above);
  }

  void add(CrackResult result, FallingSlopes slopes) {
    result
        .firstCrack()
        .bySmallWidth()
        .ifPresent(
            (FirstCrack.Figure figure) ->
                add(
                    "f-lop",
                    "Limit of proportionality f_LOP, greatest load up to an opening of 0.05 mm",
                    figure.newtons(),
                    known(figure.uncertaintyNewtons()),
                    figure.newtonsPerMillimetre(),
                    SMALL_OPENING,
                    CrackFigures.rows(figure.firstSeq(), figure.lastSeq())));
    int number = 0;
    double noise = result.loadZero().isKnown() ? 2 * result.loadZero().noise() : 0;
    for (Thresholds.Crossing crossing : result.crossings()) {
      number++;
      double opening = crossing.threshold().millimetres();
      add(
          "f-r" + number,
          "Residual strength f_R," + number + " at an opening of " + opening + " mm",
          crossing.newtons(),
          noise,
          slopes.at(opening),
          opening,
          CrackFigures.rows(crossing.firstSeq(), crossing.lastSeq()));
    }
  }

  private static double known(double expanded) {
    return Double.isFinite(expanded) ? expanded : 0;
  }

  private void add(
      String name,
      String title,
      double newtons,
      double expanded,
      double slope,
      double opening,
      List<Long> rows) {
    double scale = strength(1000, span, width, above);
    double stress = strength(newtons, span, width, above);
    double size = notch.measuring() / 2 / Math.sqrt(3);
    List<UncertaintyBudget.Line> lines = new ArrayList<>();
    for (UncertaintyBudget.Line line : budget.ofLoad(newtons, expanded, slope, opening).lines()) {
      CrackBudget.add(lines, line.source(), line.contribution() * scale);
    }
    CrackBudget.add(lines, "width: step of the measuring", stress / width * size);
    CrackBudget.add(
        lines, "depth above the notch: step of the measuring", 2 * stress / above * size);
    figures.stress(name, title, stress, new UncertaintyBudget(lines), rows);
  }
}
