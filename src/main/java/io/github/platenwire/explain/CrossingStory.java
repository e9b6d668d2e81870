package io.github.platenwire.explain;

import io.github.platenwire.live.CrackResult;
import io.github.platenwire.live.FirstCrack;
import io.github.platenwire.live.FollowedRow;
import io.github.platenwire.live.Thresholds;
import io.github.platenwire.method.MethodResult.Figure;
import io.github.platenwire.quantity.Unit;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Tells of loads at which a crack passed a width: the thresholds, the greatest load up to a small
 * opening, and the strengths and deflections of a notched beam that follow from them (EN 14651).
 * Immutable.
 */
final class CrossingStory implements Story {
  private static final Pattern NUMBERED = Pattern.compile("(?:f|deflection)-r([0-9]+)");

  private final Evidence evidence;
  private final FollowedRows rows;

  CrossingStory(Evidence evidence) {
    this.evidence = evidence;
    rows = new FollowedRows(evidence.trail().rows());
  }

  @Override
  public boolean tells(Figure figure) {
    return crossing(figure).isPresent() || firstCrack(figure).isPresent();
  }

  @Override
  public void tell(Figure figure, Telling telling) {
    double newtons =
        crossing(figure).isPresent()
            ? crossed(crossing(figure).get(), figure, telling)
            : greatest(firstCrack(figure).orElseThrow(), figure, telling);
    if (figure.name().startsWith("f-")) {
      telling.step(
          "Stress in the section above the notch"
              + evidence.clause(FigureWords.Topic.STRESS)
              + ", h_sp the depth less the notch:");
      telling.formula(NotchLaw.strength(evidence.specimen(), newtons), figure);
    } else if (figure.name().startsWith("deflection-")) {
      deflection(crossing(figure).orElseThrow(), figure, telling);
    }
  }

  private Optional<Thresholds.Crossing> crossing(Figure figure) {
    Optional<CrackResult> crack = evidence.trail().crack();
    Matcher numbered = NUMBERED.matcher(figure.name());
    if (crack.isEmpty()) {
      return Optional.empty();
    }
    if (numbered.matches()) {
      return Optional.of(crack.get().crossings().get(Integer.parseInt(numbered.group(1)) - 1));
    }
    return crack.get().crossings().stream()
        .filter(
            one ->
                figure
                    .name()
                    .equals(
                        String.format(
                            Locale.ROOT, "load-at-%.2f-mm", one.threshold().millimetres())))
        .findFirst();
  }

  private Optional<FirstCrack.Figure> firstCrack(Figure figure) {
    boolean named = figure.name().equals("first-crack-width") || figure.name().equals("f-lop");
    return named
        ? evidence.trail().crack().flatMap(crack -> crack.firstCrack().bySmallWidth())
        : Optional.empty();
  }

  /** The load that is to come out: the figure itself, or one on the way to it. */
  private static Term load(double newtons, Figure figure) {
    return figure.unit() == Unit.KILONEWTON
        ? new Term(figure.exact(), figure.unit(), figure.inchPoundUnit())
        : Term.kilonewtons(newtons);
  }

  private double crossed(Thresholds.Crossing crossing, Figure figure, Telling telling) {
    FollowedRow high = rows.of(crossing.lastSeq()).orElseThrow();
    double level = crossing.threshold().millimetres();
    Term load = load(crossing.newtons(), figure);
    String lasting =
        "The "
            + (evidence.kind().equals("notched-beam") ? "opening" : "width")
            + " passed "
            + Term.millimetres(level).both(evidence.first())
            + " here and stayed beyond it";
    Optional<FollowedRow> low = rows.before(high).filter(one -> crossing.interpolated());
    if (low.isEmpty()) {
      new RowStory(evidence, high).tell(telling);
      telling.step(
          lasting
              + ". Just before it the gauges that count changed, so nothing is drawn between two"
              + " rows; the load of this row is an upper bound:");
      telling.formula(new RowStory(evidence, high).meanLoad(), load);
      return crossing.newtons();
    }
    BetweenRows between = new BetweenRows(evidence, low.get(), high, high.averaged().stretch());
    between.tell(telling);
    telling.step(lasting + ". On the straight line between the two rows the load there was:");
    telling.formula(between.loadAt(level), load);
    return crossing.newtons();
  }

  private double greatest(FirstCrack.Figure first, Figure figure, Telling telling) {
    double level = evidence.number("first-crack", "small-width-mm");
    FollowedRow row = rows.of(first.lastSeq()).orElseThrow();
    Term load = load(first.newtons(), figure);
    String words =
        "Greatest load up to an opening of "
            + Term.millimetres(level).both(evidence.first())
            + ", the opening as the gauges have it, no stretch taken off";
    if (row.averaged().opening() <= level) {
      new RowStory(evidence, row).tell(telling);
      telling.step(
          words
              + ": it was reached before the opening was, in the "
              + new RowStory(evidence, row).averaged()
              + ".");
      telling.formula(new RowStory(evidence, row).meanLoad(), load);
      return first.newtons();
    }
    BetweenRows between = new BetweenRows(evidence, rows.before(row).orElseThrow(), row, 0);
    between.tell(telling);
    telling.step(
        words
            + ". The load still rose when the opening passed it; on the straight line between the"
            + " two rows it was:");
    telling.formula(between.loadAt(level), load);
    return first.newtons();
  }

  private void deflection(Thresholds.Crossing crossing, Figure figure, Telling telling) {
    telling.step(
        "Deflection from the opening, by the line in the method's file"
            + evidence.clause(FigureWords.Topic.STRESS)
            + ":");
    telling.formula(
        Formula.of(
            "factor x opening + offset",
            "{} x {} + {}",
            n -> n[0] * n[1] + n[2],
            Term.plain(evidence.number("deflection", "per-opening")),
            Term.millimetres(crossing.threshold().millimetres()),
            Term.millimetres(evidence.number("deflection", "offset-mm"))),
        figure);
  }
}
