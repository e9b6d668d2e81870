package io.github.platenwire.explain;

import io.github.platenwire.method.MethodResult.Figure;
import io.github.platenwire.quantity.Quantity;
import io.github.platenwire.quantity.Unit;
import io.github.platenwire.record.RawRow;
import java.util.List;

/** Tells of the zero of a channel: the mean of its quiet readings before loading. Immutable. */
final class ZeroStory implements Story {
  private static final String OF_CHANNEL = "zero-";

  private final Evidence evidence;

  ZeroStory(Evidence evidence) {
    this.evidence = evidence;
  }

  @Override
  public boolean tells(Figure figure) {
    return figure.name().equals("zero") || figure.name().startsWith(OF_CHANNEL);
  }

  @Override
  public void tell(Figure zero, Telling telling) {
    new ReadingStory(evidence, zero.rows().get(0)).tell(telling);
    List<RawRow> rows = rows(zero);
    telling.step(
        "Quiet: that is the first of "
            + rows.size()
            + " readings of the channel, rows "
            + zero.rows().get(0)
            + " to "
            + last(zero)
            + ", in which nothing was loaded: from "
            + words(rows.stream().mapToDouble(evidence::base).min().orElseThrow(), zero)
            + " to "
            + words(rows.stream().mapToDouble(evidence::base).max().orElseThrow(), zero)
            + ". The last of them: "
            + evidence.inShort(last(zero))
            + ".");
    telling.step("Zero: their mean, which is taken off every later reading of the channel.");
    telling.formula(mean(zero, rows), zero);
  }

  /** The zero in the way of another figure. */
  void onTheWay(Figure zero, Telling telling) {
    telling.step(
        "Zero: before loading, rows "
            + zero.rows().get(0)
            + " to "
            + last(zero)
            + " gave "
            + evidence.both(zero)
            + "; that is taken off.");
  }

  private static long last(Figure zero) {
    return zero.rows().get(zero.rows().size() - 1);
  }

  private List<RawRow> rows(Figure zero) {
    String channel = evidence.row(zero.rows().get(0)).channel();
    return evidence.good(channel, zero.rows().get(0), last(zero)).stream()
        .filter(row -> !evidence.isSetAside(row.seq()))
        .toList();
  }

  private Formula mean(Figure zero, List<RawRow> rows) {
    double sum = rows.stream().mapToDouble(evidence::base).sum();
    return Formula.of(
        "sum of the readings / their number",
        "{} / {}",
        n -> n[0] / n[1],
        new Term(zero.unit().fromBase(sum), zero.unit(), zero.inchPoundUnit()),
        Term.plain(rows.size()));
  }

  private String words(double base, Figure zero) {
    Unit unit = zero.unit().quantity() == Quantity.FORCE ? Unit.KILONEWTON : Unit.MILLIMETRE;
    return FigureWords.both(unit.fromBase(base), unit, zero.inchPoundUnit(), evidence.first());
  }
}
