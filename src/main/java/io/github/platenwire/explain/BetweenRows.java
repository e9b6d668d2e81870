package io.github.platenwire.explain;

import io.github.platenwire.live.FollowedRow;
import io.github.platenwire.quantity.Unit;

/**
 * Two rows, one after the other, and what lies between them: the load at a width, or the width at a
 * load, on the straight line from one to the other. Immutable.
 *
 * @param evidence the record
 * @param low the earlier row
 * @param high the later
 * @param stretch elastic stretch a newton that is taken off the opening; 0 for none
 */
record BetweenRows(Evidence evidence, FollowedRow low, FollowedRow high, double stretch) {
  /** Tells how both rows came about, up to their widths. */
  void tell(Telling telling) {
    new RowStory(evidence, high).tell(telling);
    RowStory before = new RowStory(evidence, low);
    RowStory after = new RowStory(evidence, high);
    telling.step("The two rows that decide:");
    telling.more("  " + before.averaged());
    telling.more("  " + after.averaged());
    if (stretch != 0) {
      telling.step(
          "Width: the opening less the elastic stretch of the uncracked beam, load / k, with k ="
              + " "
              + RowStory.stiffness(stretch).both(evidence.first())
              + " from the line before cracking (explain stiffness-before).");
      telling.formula(before.width(stretch), Unit.MILLIMETRE, Unit.INCH);
      telling.formula(after.width(stretch), Unit.MILLIMETRE, Unit.INCH);
    }
  }

  double widthLow() {
    return new RowStory(evidence, low).width(stretch).result();
  }

  double widthHigh() {
    return new RowStory(evidence, high).width(stretch).result();
  }

  /** The load where the width passed a level. */
  Formula loadAt(double millimetres) {
    return line(
        "F",
        Term.kilonewtons(low.averaged().newtons()),
        Term.kilonewtons(high.averaged().newtons()),
        Term.millimetres(widthLow()),
        Term.millimetres(widthHigh()),
        Term.millimetres(millimetres));
  }

  /** The width where the load passed a level. */
  Formula widthAt(double newtons) {
    return line(
        "w",
        Term.millimetres(widthLow()),
        Term.millimetres(widthHigh()),
        Term.kilonewtons(low.averaged().newtons()),
        Term.kilonewtons(high.averaged().newtons()),
        Term.kilonewtons(newtons));
  }

  /** On the line from (x1, y1) to (x2, y2) the y at an x. */
  static Formula line(String name, Term y1, Term y2, Term x1, Term x2, Term x) {
    return Formula.of(
        name,
        "{} + ({} - {}) x ({} - {}) / ({} - {})",
        n -> n[0] + (n[1] - n[2]) * (n[3] - n[4]) / (n[5] - n[6]),
        y1,
        y2,
        y1,
        x,
        x1,
        x2,
        x1);
  }
}
