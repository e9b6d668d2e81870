package io.github.platenwire.explain;

import io.github.platenwire.live.ChordCycle;
import io.github.platenwire.live.FollowedRow;
import io.github.platenwire.method.MethodResult.Figure;
import io.github.platenwire.quantity.Unit;
import java.util.Optional;

/** Tells of the two ends of one cycle's chord. Immutable. */
final class ChordMarks {
  private final Evidence evidence;
  private final ChordCycle cycle;
  private final FollowedRows rows;

  ChordMarks(Evidence evidence, ChordCycle cycle) {
    this.evidence = evidence;
    this.cycle = cycle;
    rows = new FollowedRows(evidence.trail().rows());
  }

  void zero(Telling telling) {
    telling.step(
        "Cycle "
            + cycle.number()
            + ", zero of its strain: where the load was lowest, rows "
            + cycle.lowest().firstSeq()
            + " to "
            + cycle.lowest().lastSeq()
            + ", mean load "
            + Term.kilonewtons(cycle.lowest().newtons()).both(evidence.first())
            + ", mean strain as read "
            + words(cycle.lowest().strain())
            + ".");
  }

  /** The mark at the small strain, and the stress there. */
  void first(Telling telling) {
    ChordCycle.Mark mark = cycle.first();
    double level = evidence.number("chord", "first-microstrain");
    telling.step(
        "First mark: the strain, averages less that zero, passed "
            + FigureWords.number(level)
            + " µm/m between rows "
            + mark.firstSeq()
            + " and "
            + mark.lastSeq()
            + ".");
    between(mark)
        .ifPresent(
            two -> {
              two.tell(telling);
              telling.more("On the straight line between the two the load there was:");
              telling.formula(
                  BetweenRows.line(
                      "F1",
                      two.load(two.low()),
                      two.load(two.high()),
                      two.strain(two.low()),
                      two.strain(two.high()),
                      Term.same(level, Unit.MICROSTRAIN)),
                  Term.kilonewtons(mark.newtons()));
            });
    stress("S1", "stress-low", mark, telling);
  }

  /** The mark at the share of the strength, the strain and the stress there. */
  void second(Telling telling) {
    ChordCycle.Mark mark = cycle.second();
    double percent = evidence.number("chord", "second-percent-of-strength");
    double strength = evidence.figure("companion-strength").orElseThrow().exact();
    double area = evidence.figure("area").orElseThrow().exact();
    Formula level =
        Formula.of(
            "F2",
            FigureWords.number(percent) + " / 100 x {} x {}",
            n -> percent / 100 * n[0] * n[1],
            new Term(strength, Unit.MEGAPASCAL, Unit.PSI),
            new Term(area, Unit.SQUARE_MILLIMETRE, Unit.SQUARE_INCH));
    telling.step(
        "Second mark: "
            + (cycle.complete()
                ? "the load passed "
                    + FigureWords.number(percent)
                    + " % of the companions' strength"
                : "the greatest load of the cycle, which ended just short of "
                    + FigureWords.number(percent)
                    + " % of the companions' strength")
            + " between rows "
            + mark.firstSeq()
            + " and "
            + mark.lastSeq()
            + ".");
    telling.formula(level, Unit.NEWTON, Unit.POUND_FORCE);
    Optional<Between> two = between(mark).filter(one -> cycle.complete());
    Figure strain = evidence.figure("strain-high-cycle-" + cycle.number()).orElseThrow();
    if (two.isPresent()) {
      two.get().tell(telling);
      telling.more("On the straight line between the two the strain there was:");
      telling.formula(two.get().strainAt(mark.newtons()), strain);
    } else {
      telling.more("The strain there, less the zero: " + evidence.both(strain) + ".");
    }
    stress("S2", "stress-high", mark, telling);
  }

  private void stress(String name, String figure, ChordCycle.Mark mark, Telling telling) {
    double area = evidence.figure("area").orElseThrow().exact();
    telling.more("Stress there:");
    telling.formula(
        Formula.of(
            name,
            "{} / {}",
            n -> n[0] / n[1],
            Term.newtons(mark.newtons()),
            new Term(area, Unit.SQUARE_MILLIMETRE, Unit.SQUARE_INCH)),
        evidence.figure(figure + "-cycle-" + cycle.number()).orElseThrow());
  }

  private Optional<Between> between(ChordCycle.Mark mark) {
    return rows.of(mark.lastSeq())
        .flatMap(high -> rows.before(high).map(low -> new Between(low, high)));
  }

  /** Two averaged rows of load and strain, the mark between them. */
  private final class Between {
    private final FollowedRow low;
    private final FollowedRow high;

    Between(FollowedRow low, FollowedRow high) {
      this.low = low;
      this.high = high;
    }

    FollowedRow low() {
      return low;
    }

    FollowedRow high() {
      return high;
    }

    Term load(FollowedRow row) {
      return Term.kilonewtons(row.averaged().newtons());
    }

    /** From the zero of the cycle. */
    Term strain(FollowedRow row) {
      return Term.same(
          Unit.MICROSTRAIN.fromBase(row.averaged().opening() - cycle.lowest().strain()),
          Unit.MICROSTRAIN);
    }

    Formula strainAt(double newtons) {
      return BetweenRows.line(
          "e2", strain(low), strain(high), load(low), load(high), Term.kilonewtons(newtons));
    }

    void tell(Telling telling) {
      telling.more(words(low));
      telling.more(words(high));
    }

    private String words(FollowedRow row) {
      return "  averages up to row "
          + row.seq()
          + ": load "
          + load(row).both(evidence.first())
          + ", strain "
          + strain(row).both(evidence.first());
    }
  }

  private static String words(double strain) {
    return FigureWords.number(Unit.MICROSTRAIN.fromBase(strain)) + " µm/m";
  }
}
