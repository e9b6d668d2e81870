package io.github.platenwire.explain;

import io.github.platenwire.live.FollowedRow;
import io.github.platenwire.method.MethodResult.Figure;
import io.github.platenwire.quantity.Unit;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/**
 * Tells of the work done on opening a crack: load times opening, summed from row to row. Immutable.
 */
final class WorkStory implements Story {
  private static final int PARTS = 5;

  private final Evidence evidence;

  WorkStory(Evidence evidence) {
    this.evidence = evidence;
  }

  @Override
  public boolean tells(Figure figure) {
    return figure.name().equals("work") && evidence.trail().crack().isPresent();
  }

  @Override
  public void tell(Figure figure, Telling telling) {
    List<FollowedRow> rows =
        evidence.trail().rows().stream().filter(row -> !Double.isNaN(row.opening())).toList();
    int greatest = greatest(rows);
    new RowStory(evidence, rows.get(greatest)).tell(telling);
    telling.step(
        "Steps: from each row to the next, the mean of the two loads times the change of the"
            + " opening as the gauges have it (no averages; no stretch taken off, since unloading"
            + " gives that back). The greatest step of all, from row "
            + rows.get(greatest - 1).seq()
            + " to row "
            + rows.get(greatest).seq()
            + ":");
    telling.formula(
        step(rows.get(greatest - 1), rows.get(greatest)), Unit.JOULE, Unit.INCH_POUND_FORCE);
    sum(rows, figure, telling);
  }

  private static int greatest(List<FollowedRow> rows) {
    int at = 1;
    for (int i = 2; i < rows.size(); i++) {
      if (Math.abs(work(rows, i)) > Math.abs(work(rows, at))) {
        at = i;
      }
    }
    return at;
  }

  private void sum(List<FollowedRow> rows, Figure figure, Telling telling) {
    telling.step(
        "Sum over all "
            + rows.size()
            + " rows, in "
            + PARTS
            + " parts (steps back, where the crack closes, count as less):");
    List<Term> parts = new ArrayList<>();
    for (int part = 0; part < PARTS; part++) {
      int from = part * (rows.size() - 1) / PARTS;
      int to = (part + 1) * (rows.size() - 1) / PARTS;
      double joules = 0;
      for (int i = from + 1; i <= to; i++) {
        joules += work(rows, i);
      }
      Term term = new Term(joules, Unit.JOULE, Unit.INCH_POUND_FORCE);
      parts.add(term);
      telling.more(part(rows.get(from), rows.get(to)) + ": " + term.both(evidence.first()));
    }
    String places = parts.stream().map(part -> "{}").collect(Collectors.joining(" + "));
    telling.formula(
        Formula.of(
            "work", places, n -> java.util.Arrays.stream(n).sum(), parts.toArray(Term[]::new)),
        figure);
  }

  private String part(FollowedRow from, FollowedRow to) {
    return "rows "
        + from.seq()
        + " to "
        + to.seq()
        + ", opening "
        + Term.millimetres(from.opening()).both(evidence.first())
        + " to "
        + Term.millimetres(to.opening()).both(evidence.first());
  }

  private static Formula step(FollowedRow from, FollowedRow to) {
    return Formula.of(
        "(F1 + F2) / 2 x (w2 - w1)",
        "({} + {}) / 2 x ({} - {})",
        n -> (n[0] + n[1]) / 2 * (n[2] - n[3]),
        Term.kilonewtons(from.newtons()),
        Term.kilonewtons(to.newtons()),
        Term.millimetres(to.opening()),
        Term.millimetres(from.opening()));
  }

  /** Joules from the row before to a row; nothing where the gauges that count changed. */
  private static double work(List<FollowedRow> rows, int at) {
    FollowedRow from = rows.get(at - 1);
    FollowedRow to = rows.get(at);
    return from.mask() != to.mask()
        ? 0
        : (from.newtons() + to.newtons()) / 2 * (to.opening() - from.opening()) / 1000;
  }
}
