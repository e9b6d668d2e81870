package io.github.platenwire.explain;

import io.github.platenwire.live.FollowedRow;
import io.github.platenwire.method.MethodResult.Figure;
import java.util.ArrayList;
import java.util.List;

/** Tells of the stiffness of a beam before and after it cracked: lines by least squares. */
final class StiffnessStory implements Story {
  private final Evidence evidence;

  StiffnessStory(Evidence evidence) {
    this.evidence = evidence;
  }

  @Override
  public boolean tells(Figure figure) {
    return figure.name().startsWith("stiffness-") && evidence.trail().crack().isPresent();
  }

  @Override
  public void tell(Figure figure, Telling telling) {
    if (figure.name().equals("stiffness-before")) {
      before(figure, telling);
    } else {
      after(figure, telling);
    }
  }

  private void before(Figure figure, Telling telling) {
    List<FollowedRow> rows = new InitialRows(evidence).rows();
    if (rows.isEmpty()) {
      telling.step("Line before cracking: see the rows that the figure rests on.");
      telling.noFormula(figure);
      return;
    }
    new RowStory(evidence, rows.get(0)).tell(telling);
    telling.step(
        "Rows: "
            + rows.size()
            + " load readings with an opening, from row "
            + rows.get(0).seq()
            + " to row "
            + rows.get(rows.size() - 1).seq()
            + ", each as it is: loads from "
            + load(rows.stream().mapToDouble(FollowedRow::newtons).min().orElseThrow())
            + " (the method's lower end of the line) up to "
            + load(rows.stream().mapToDouble(FollowedRow::newtons).max().orElseThrow())
            + " (four fifths of the load before the crack was seen, or the line's upper end; the"
            + " load was followed for that up to row "
            + figure.rows().get(figure.rows().size() - 1)
            + ").");
    point("First:    ", rows.get(0), telling);
    point("In the middle: ", rows.get(rows.size() / 2), telling);
    point("Last:     ", rows.get(rows.size() - 1), telling);
    LineSums sums = new InitialRows(evidence).line();
    centre(sums.meanX(), sums.meanY(), telling);
    telling.step(
        "Line of opening w on load F by least squares; the stiffness is one over its slope, with"
            + " the sums over all rows of the differences from the centre:");
    slope("F²", sums, figure, telling);
  }

  private void after(Figure figure, Telling telling) {
    List<FollowedRow> rows = cracked();
    new RowStory(evidence, rows.get(0)).tell(telling);
    telling.step(
        "Rows: "
            + rows.size()
            + " averages on first loading (those whose load is the greatest so far) with an opening"
            + " from "
            + width(evidence.number("cracked-stiffness", "from-mm"))
            + " to "
            + width(evidence.number("cracked-stiffness", "to-mm"))
            + ", up to rows "
            + rows.get(0).seq()
            + " to "
            + rows.get(rows.size() - 1).seq()
            + ".");
    telling.more("First:  " + new RowStory(evidence, rows.get(0)).averaged());
    telling.more("In the middle: " + new RowStory(evidence, rows.get(rows.size() / 2)).averaged());
    telling.more("Last:   " + new RowStory(evidence, rows.get(rows.size() - 1)).averaged());
    List<LineSums.Point> points =
        rows.stream()
            .map(row -> new LineSums.Point(row.averaged().opening(), row.averaged().newtons()))
            .toList();
    LineSums sums = LineSums.of(points);
    centre(sums.meanY(), sums.meanX(), telling);
    telling.step(
        "Line of load F on opening w by least squares; the stiffness is its slope, with the sums"
            + " over all rows of the differences from the centre:");
    telling.formula(
        Formula.inSi(
            "sum of F w / sum of w²",
            "{} kN mm / {} mm²",
            n -> n[0] / n[1],
            Term.plain(sums.xy() / 1000),
            Term.plain(sums.xx())),
        figure);
  }

  /** The averages of the curve of first loading between the two openings. */
  private List<FollowedRow> cracked() {
    double from = evidence.number("cracked-stiffness", "from-mm");
    double to = evidence.number("cracked-stiffness", "to-mm");
    List<FollowedRow> rows = new ArrayList<>();
    double greatest = Double.NEGATIVE_INFINITY;
    for (FollowedRow row : evidence.trail().rows()) {
      FollowedRow.Averaged averaged = row.averaged();
      if (!Double.isNaN(averaged.opening()) && averaged.newtons() > greatest) {
        greatest = averaged.newtons();
        if (averaged.opening() >= from && averaged.opening() <= to) {
          rows.add(row);
        }
      }
    }
    return rows;
  }

  private static void slope(String squares, LineSums sums, Figure figure, Telling telling) {
    telling.formula(
        Formula.inSi(
            "sum of " + squares + " / sum of F w",
            "{} kN² / {} kN mm",
            n -> n[0] / n[1],
            Term.plain(sums.xx() / 1e6),
            Term.plain(sums.xy() / 1000)),
        figure);
  }

  private void point(String which, FollowedRow row, Telling telling) {
    telling.more(
        which
            + "row "
            + row.seq()
            + ": load "
            + load(row.newtons())
            + ", opening "
            + width(row.opening()));
  }

  private void centre(double newtons, double millimetres, Telling telling) {
    telling.more("Centre of all: load " + load(newtons) + ", opening " + width(millimetres));
  }

  private String load(double newtons) {
    return Term.kilonewtons(newtons).both(evidence.first());
  }

  private String width(double millimetres) {
    return Term.millimetres(millimetres).both(evidence.first());
  }
}
