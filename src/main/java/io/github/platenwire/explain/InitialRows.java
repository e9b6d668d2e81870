package io.github.platenwire.explain;

import io.github.platenwire.live.CrackResult;
import io.github.platenwire.live.FirstCrack;
import io.github.platenwire.live.FollowedRow;
import java.util.List;
import java.util.Optional;

/**
 * The rows on which the line before cracking rests, found anew: those from the lower load of the
 * method's window up to four fifths of the greatest load before the crack was seen, or to the
 * window's upper load, whichever is more. Immutable.
 */
final class InitialRows {
  /** As the following of the crack has it: 16 steps of load to the window, at most 256 waiting. */
  private static final int STEPS_IN_WINDOW = 16;

  private static final int MOST_WAITING = 256;
  private static final double SHARE_OF_GREATEST = 0.8;

  private final Evidence evidence;
  private final List<FollowedRow> all;

  InitialRows(Evidence evidence) {
    this.evidence = evidence;
    all = evidence.trail().rows();
  }

  List<FollowedRow> rows() {
    double from = 1000 * evidence.number("initial-line", "from-kn");
    double to = 1000 * evidence.number("initial-line", "to-kn");
    double step = (to - from) / STEPS_IN_WINDOW;
    List<FollowedRow> before =
        all.subList(0, end()).stream()
            .filter(row -> !Double.isNaN(row.opening()) && row.newtons() >= from)
            .toList();
    double greatest = before.stream().mapToDouble(FollowedRow::newtons).max().orElse(0);
    double taken =
        Math.max(
            Math.max(Math.floor(to / step), Math.floor(greatest * SHARE_OF_GREATEST / step)),
            Math.floor(greatest / step) - MOST_WAITING + 1);
    return before.stream().filter(row -> Math.floor(row.newtons() / step) < taken).toList();
  }

  /** The line: opening in mm on load in N. */
  LineSums line() {
    return LineSums.of(
        rows().stream().map(row -> new LineSums.Point(row.newtons(), row.opening())).toList());
  }

  /** One behind the row in which the departure had lasted long enough to be known. */
  private int end() {
    Optional<FirstCrack.Figure> departure =
        evidence.trail().crack().map(CrackResult::firstCrack).flatMap(FirstCrack::byDeparture);
    if (departure.isEmpty()) {
      return all.size();
    }
    double micros = evidence.number("lasting", "seconds") * 1e6;
    double least = evidence.number("lasting", "rows");
    int count = 0;
    long begun = 0;
    for (int i = 0; i < all.size(); i++) {
      FollowedRow row = all.get(i);
      if (Double.isNaN(row.averaged().opening()) || row.seq() < departure.get().lastSeq()) {
        continue;
      }
      begun = count == 0 ? row.averaged().micros() : begun;
      count++;
      if (count >= least && row.averaged().micros() - begun >= micros) {
        return i + 1;
      }
    }
    return all.size();
  }
}
