package io.github.platenwire.explain;

import io.github.platenwire.live.CrackResult;
import io.github.platenwire.live.FollowedRow;
import io.github.platenwire.live.WidthAtLoad;
import io.github.platenwire.method.MethodResult.Figure;
import java.util.List;
import java.util.Optional;

/** Tells of the width where a load was reached for the first time. Immutable. */
final class WidthStory implements Story {
  private static final String NAME = "width-at-";

  private final Evidence evidence;
  private final FollowedRows rows;

  WidthStory(Evidence evidence) {
    this.evidence = evidence;
    rows = new FollowedRows(evidence.trail().rows());
  }

  @Override
  public boolean tells(Figure figure) {
    return figure.name().startsWith(NAME) && width(figure).isPresent();
  }

  private Optional<WidthAtLoad> width(Figure figure) {
    return evidence
        .trail()
        .crack()
        .flatMap(
            crack ->
                crack.widths().stream()
                    .filter(one -> one.millimetres() == figure.exact())
                    .filter(one -> one.lastSeq() == last(figure))
                    .findFirst());
  }

  private static long last(Figure figure) {
    return figure.rows().get(figure.rows().size() - 1);
  }

  @Override
  public void tell(Figure figure, Telling telling) {
    WidthAtLoad width = width(figure).orElseThrow();
    List<CrackResult.Point> curve = evidence.trail().crack().orElseThrow().curve();
    CrackResult.Point low = curve.get(0);
    CrackResult.Point high = curve.get(curve.size() - 1);
    for (int i = curve.size() - 1; i >= 0 && curve.get(i).newtons() >= width.newtons(); i--) {
      high = curve.get(i);
    }
    for (int i = 0; i < curve.size() && curve.get(i).newtons() <= width.newtons(); i++) {
      low = curve.get(i);
    }
    telling.head(
        "The width is read off the curve of first loading: for each of its loads, the width when"
            + " that load was reached for the first time.");
    telling.head("");
    if (low.newtons() == high.newtons()) {
      at(high, telling).ifPresent(between -> point(between, width.newtons(), figure, telling));
      return;
    }
    onCurve(width, low, high, figure, telling);
  }

  private void onCurve(
      WidthAtLoad width,
      CrackResult.Point low,
      CrackResult.Point high,
      Figure figure,
      Telling telling) {
    Optional<BetweenRows> between = at(high, telling);
    between.ifPresent(
        rowsThere -> {
          telling.step("The curve's point above, on the straight line between the two rows:");
          telling.formula(rowsThere.widthAt(high.newtons()), Term.millimetres(high.millimetres()));
        });
    telling.step(
        "The curve's point below, found in the same way in rows "
            + figure.rows().get(0)
            + " to "
            + low.lastSeq()
            + ": "
            + Term.kilonewtons(low.newtons()).both(evidence.first())
            + ", "
            + Term.millimetres(low.millimetres()).both(evidence.first())
            + ".");
    telling.step("On the straight line between the curve's two points the width there was:");
    telling.formula(
        BetweenRows.line(
            "w",
            Term.millimetres(low.millimetres()),
            Term.millimetres(high.millimetres()),
            Term.kilonewtons(low.newtons()),
            Term.kilonewtons(high.newtons()),
            Term.kilonewtons(width.newtons())),
        figure);
  }

  private static void point(BetweenRows between, double newtons, Figure figure, Telling telling) {
    telling.step("On the straight line between the two rows the width at that load was:");
    telling.formula(between.widthAt(newtons), figure);
  }

  /** The two rows between which a load of the curve was reached, told. */
  private Optional<BetweenRows> at(CrackResult.Point point, Telling telling) {
    Optional<FollowedRow> high = rows.of(point.lastSeq());
    Optional<FollowedRow> low = high.flatMap(rows::before);
    if (low.isEmpty()) {
      return Optional.empty();
    }
    BetweenRows between = new BetweenRows(evidence, low.get(), high.get(), finalStretch());
    between.tell(telling);
    return Optional.of(between);
  }

  /** What was taken off in the end, from earlier rows too. */
  private double finalStretch() {
    List<FollowedRow> all = rows.all();
    for (int i = all.size() - 1; i >= 0; i--) {
      if (!Double.isNaN(all.get(i).averaged().opening())) {
        return all.get(i).averaged().stretch();
      }
    }
    return 0;
  }
}
