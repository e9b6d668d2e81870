package io.github.platenwire.explain;

import io.github.platenwire.live.Cycles;
import io.github.platenwire.live.FollowedRow;
import io.github.platenwire.live.Holds;
import io.github.platenwire.method.MethodResult.Figure;
import io.github.platenwire.quantity.Unit;
import java.util.Optional;

/** Tells of what cycles and holds left: residual widths and creep. Immutable. */
final class CourseStory implements Story {
  private final Evidence evidence;
  private final FollowedRows rows;

  CourseStory(Evidence evidence) {
    this.evidence = evidence;
    rows = new FollowedRows(evidence.trail().rows());
  }

  @Override
  public boolean tells(Figure figure) {
    return cycle(figure).isPresent() || hold(figure).isPresent();
  }

  private Optional<Cycles.Cycle> cycle(Figure figure) {
    return figure.name().startsWith("residual-")
        ? evidence.trail().crack().map(crack -> crack.cycles().get(number(figure) - 1))
        : Optional.empty();
  }

  private Optional<Holds.Hold> hold(Figure figure) {
    return figure.name().startsWith("creep-")
        ? evidence.trail().crack().map(crack -> crack.holds().get(number(figure) - 1))
        : Optional.empty();
  }

  private static int number(Figure figure) {
    return Integer.parseInt(figure.name().substring(figure.name().indexOf('-') + 1));
  }

  @Override
  public void tell(Figure figure, Telling telling) {
    if (cycle(figure).isPresent()) {
      residual(cycle(figure).get(), figure, telling);
    } else {
      creep(hold(figure).orElseThrow(), figure, telling);
    }
  }

  private void residual(Cycles.Cycle cycle, Figure figure, Telling telling) {
    FollowedRow bottom = rows.of(cycle.bottomLastSeq()).orElseThrow();
    new RowStory(evidence, bottom).tell(telling);
    telling.step(
        "Cycle "
            + number(figure)
            + ": from "
            + load(cycle.topNewtons())
            + " (row "
            + cycle.topSeq()
            + ") the load came down; it was least here, "
            + load(cycle.bottomNewtons())
            + (cycle.reloaded() ? ", and rose again." : ", and was not raised again."));
    telling.more("The " + new RowStory(evidence, bottom).averaged());
    telling.step("Width left: the opening less the elastic stretch at that load" + stretch(bottom));
    telling.formula(new RowStory(evidence, bottom).width(bottom.averaged().stretch()), figure);
  }

  private String stretch(FollowedRow row) {
    return row.averaged().stretch() == 0
        ? " (none is taken off by this method):"
        : ", load / k with k of the line before cracking (explain stiffness-before):";
  }

  private void creep(Holds.Hold hold, Figure figure, Telling telling) {
    FollowedRow end = rows.of(hold.lastSeq()).orElseThrow();
    FollowedRow start =
        rows.first(
                row ->
                    row.averaged().firstSeq() == hold.firstSeq()
                        && row.averaged().micros() == hold.startMicros())
            .orElseThrow();
    RowStory last = new RowStory(evidence, end);
    RowStory firstRow = new RowStory(evidence, start);
    last.tell(telling);
    telling.step(
        "Hold "
            + number(figure)
            + ": the load stayed within "
            + FigureWords.number(evidence.number("hold", "percent"))
            + " % of "
            + load(hold.newtons())
            + " from "
            + Evidence.seconds(hold.startMicros())
            + " to "
            + Evidence.seconds(hold.endMicros())
            + ".");
    telling.more("First: " + firstRow.averaged());
    telling.more("Last:  " + last.averaged());
    telling.step("Widths: the opening less the elastic stretch" + stretch(end));
    Formula from = firstRow.width(start.averaged().stretch());
    Formula to = last.width(end.averaged().stretch());
    telling.formula(from, Unit.MILLIMETRE, Unit.INCH);
    telling.formula(to, Unit.MILLIMETRE, Unit.INCH);
    telling.step("Creep: the last width less the first.");
    telling.formula(
        Formula.of(
            "last - first",
            "{} - {}",
            n -> n[0] - n[1],
            Term.millimetres(to.result()),
            Term.millimetres(from.result())),
        figure);
  }

  private String load(double newtons) {
    return Term.kilonewtons(newtons).both(evidence.first());
  }
}
