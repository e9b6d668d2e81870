package io.github.platenwire.explain;

import io.github.platenwire.live.FollowedRow;
import io.github.platenwire.method.MethodResult.Figure;
import io.github.platenwire.quantity.Quantity;
import io.github.platenwire.quantity.Unit;
import io.github.platenwire.record.RawHeader.HeaderChannel;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/**
 * Tells of one row of load and crack gauges: the bytes of each, the gauges at the load's moment,
 * their mean opening, the averages, and the width. Immutable.
 */
final class RowStory {
  private final Evidence evidence;
  private final FollowedRow row;
  private final List<HeaderChannel> gauges;

  RowStory(Evidence evidence, FollowedRow row) {
    this.evidence = evidence;
    this.row = row;
    gauges =
        evidence.header().channels().stream()
            .filter(channel -> channel.facts().quantity() == Quantity.LENGTH)
            .toList();
  }

  /** From the bytes of the load and the gauges to the averages. */
  void tell(Telling telling) {
    new ReadingStory(evidence, row.seq()).tell(telling);
    load(telling);
    gauges(telling);
    averages(telling);
  }

  private void load(Telling telling) {
    telling.step("Load of the row: the reading less the zero of the load.");
    telling.formula(ownLoad(), Term.kilonewtons(row.newtons()));
  }

  private Formula ownLoad() {
    return Formula.of(
        "reading - zero",
        "{} - {}",
        n -> n[0] - n[1],
        Term.kilonewtons(evidence.base(evidence.row(row.seq()))),
        Term.kilonewtons(loadZero()));
  }

  private double loadZero() {
    return evidence.base("zero-" + evidence.row(row.seq()).channel()).orElse(0.0);
  }

  private void gauges(Telling telling) {
    telling.step("Gauges at the load's moment, each between its reading before and after it:");
    for (int i = 0; i < gauges.size(); i++) {
      if (row.counts(i) && row.highSeq(i) > 0) {
        gauge(i, telling);
      }
    }
    telling.more("Opening: the mean of the gauges, each less its zero.");
    telling.formula(opening(), Term.millimetres(row.opening()));
  }

  private void gauge(int gauge, Telling telling) {
    if (row.lowSeq(gauge) > 0 && row.lowSeq(gauge) != row.highSeq(gauge)) {
      telling.more("  " + evidence.inShort(row.lowSeq(gauge)));
    }
    telling.more("  " + evidence.inShort(row.highSeq(gauge)));
    telling.more(
        "    at the load's moment "
            + Term.millimetres(row.value(gauge)).both(evidence.first())
            + ", zero "
            + Term.millimetres(zero(gauge)).both(evidence.first()));
  }

  private double zero(int gauge) {
    return evidence
        .figure("zero-" + gauges.get(gauge).facts().name())
        .map(Figure::exact)
        .orElse(0.0);
  }

  private Formula opening() {
    List<Term> terms = new ArrayList<>();
    List<String> names = new ArrayList<>();
    for (int i = 0; i < gauges.size(); i++) {
      if (row.counts(i)) {
        terms.add(Term.millimetres(row.value(i)));
        terms.add(Term.millimetres(zero(i)));
        names.add(gauges.get(i).facts().name() + " - zero");
      }
    }
    int count = names.size();
    String places = names.stream().map(name -> "{} - {}").collect(Collectors.joining(" + "));
    boolean one = count == 1;
    return Formula.of(
        one ? names.get(0) : "mean of (" + String.join("), (", names) + ")",
        one ? places : "(" + places + ") / " + count,
        n -> differences(n) / count,
        terms.toArray(Term[]::new));
  }

  private static double differences(double[] numbers) {
    double sum = 0;
    for (int i = 0; i < numbers.length; i += 2) {
      sum += numbers[i] - numbers[i + 1];
    }
    return sum;
  }

  private void averages(Telling telling) {
    if (row.averaged().rows() > 1) {
      telling.step(
          "Averaged, so that noise counts less: load and opening alike over the "
              + row.averaged().rows()
              + " rows of the load from "
              + row.averaged().firstSeq()
              + " to "
              + row.seq()
              + " ("
              + FigureWords.number(evidence.number("alignment", "smooth-seconds"))
              + " s).");
    }
  }

  /** Load and opening of the row as averaged, in one line. */
  String averaged() {
    String rows =
        row.averaged().rows() > 1 ? "mean of rows " + row.averaged().firstSeq() + " to " : "row ";
    return rows
        + row.seq()
        + ": load "
        + Term.kilonewtons(row.averaged().newtons()).both(evidence.first())
        + ", opening "
        + Term.millimetres(row.averaged().opening()).both(evidence.first());
  }

  /** Its averaged load, from the loads of the rows that are averaged; its own if none are. */
  Formula meanLoad() {
    if (row.averaged().rows() == 1) {
      return ownLoad();
    }
    List<FollowedRow> rows =
        evidence.trail().rows().stream()
            .filter(one -> one.seq() >= row.averaged().firstSeq() && one.seq() <= row.seq())
            .toList();
    return Formula.of(
        "sum of loads / rows",
        "{} / {}",
        n -> n[0] / n[1],
        Term.kilonewtons(rows.stream().mapToDouble(FollowedRow::newtons).sum()),
        Term.plain(rows.size()));
  }

  /** Its width with a stretch a newton taken off. */
  Formula width(double stretch) {
    FollowedRow.Averaged averaged = row.averaged();
    if (stretch == 0) {
      return Formula.of("opening", "{}", n -> n[0], Term.millimetres(averaged.opening()));
    }
    return Formula.of(
        "opening - load / k",
        "{} - {} / {}",
        n -> n[0] - n[1] / n[2],
        Term.millimetres(averaged.opening()),
        Term.kilonewtons(averaged.newtons()),
        stiffness(stretch));
  }

  /** Stiffness before cracking. */
  static Term stiffness(double stretch) {
    return new Term(
        Unit.KILONEWTON_PER_MILLIMETRE.fromBase(1 / stretch),
        Unit.KILONEWTON_PER_MILLIMETRE,
        Unit.POUND_FORCE_PER_INCH);
  }
}
