package io.github.platenwire.explain;

import io.github.platenwire.live.CrackResult;
import io.github.platenwire.live.FirstCrack;
import io.github.platenwire.live.FollowedRow;
import io.github.platenwire.method.MethodResult.Figure;
import java.util.Optional;

/** Tells of the first crack as the load at which the opening began to leave its line. Immutable. */
final class DepartureStory implements Story {
  private final Evidence evidence;
  private final FollowedRows rows;

  DepartureStory(Evidence evidence) {
    this.evidence = evidence;
    rows = new FollowedRows(evidence.trail().rows());
  }

  @Override
  public boolean tells(Figure figure) {
    return figure.name().equals("first-crack-departure")
        && departure().isPresent()
        && inside(departure().get()).isPresent();
  }

  private Optional<FirstCrack.Figure> departure() {
    return evidence.trail().crack().map(CrackResult::firstCrack).flatMap(FirstCrack::byDeparture);
  }

  private Optional<FollowedRow> inside(FirstCrack.Figure figure) {
    return rows.first(
        row ->
            row.averaged().firstSeq() == figure.firstSeq()
                && row.averaged().micros() == figure.micros());
  }

  @Override
  public void tell(Figure figure, Telling telling) {
    FirstCrack.Figure departure = departure().orElseThrow();
    FollowedRow inside = inside(departure).orElseThrow();
    FollowedRow outside = rows.of(departure.lastSeq()).orElseThrow();
    FollowedRow began = began(inside, departure.newtons());
    new RowStory(evidence, began).tell(telling);
    LineSums line = new InitialRows(evidence).line();
    telling.step(
        "Line before cracking, from "
            + line.count()
            + " rows (explain stiffness-before): at a load F it has the opening "
            + FigureWords.number(line.at(0))
            + " mm + F x "
            + FigureWords.number(line.slope() * 1000)
            + " mm/kN.");
    off("Last still on the line:   ", inside, line, telling);
    off("First plainly off it:     ", outside, line, telling);
    telling.more("  " + evidence.inShort(outside.seq()));
    telling.more(
        "Plainly off is more than "
            + FigureWords.number(evidence.number("first-crack", "departure-factor"))
            + " standard deviations of noise and line together, and that lastingly ("
            + FigureWords.number(evidence.number("lasting", "seconds"))
            + " s at least).");
    load(began, inside, departure, figure, telling);
  }

  /** The row whose load the figure is. */
  private FollowedRow began(FollowedRow inside, double newtons) {
    return inside.newtons() == newtons
        ? inside
        : rows.first(row -> row.averaged().newtons() == newtons).orElse(inside);
  }

  private void load(
      FollowedRow began,
      FollowedRow inside,
      FirstCrack.Figure departure,
      Figure figure,
      Telling telling) {
    if (inside.newtons() == departure.newtons()) {
      telling.step("First crack: the load of the last row still on the line, not averaged:");
      telling.formula(
          Formula.of(
              "reading - zero",
              "{} - {}",
              n -> n[0] - n[1],
              Term.kilonewtons(evidence.base(evidence.row(inside.seq()))),
              Term.kilonewtons(zero(inside))),
          figure);
      return;
    }
    telling.step(
        "First crack: the last row on the line lies below a greater load before it, and a beam"
            + " cracks while it is loaded; so it is that greatest load up to then, averaged over"
            + " rows "
            + began.averaged().firstSeq()
            + " to "
            + began.seq()
            + ":");
    telling.formula(new RowStory(evidence, began).meanLoad(), figure);
  }

  private double zero(FollowedRow row) {
    return evidence.base("zero-" + evidence.row(row.seq()).channel()).orElse(0.0);
  }

  private void off(String which, FollowedRow row, LineSums line, Telling telling) {
    double off = row.averaged().opening() - line.at(row.averaged().newtons());
    telling.more(
        which
            + new RowStory(evidence, row).averaged()
            + "; off the line by "
            + Term.millimetres(off).both(evidence.first()));
  }
}
