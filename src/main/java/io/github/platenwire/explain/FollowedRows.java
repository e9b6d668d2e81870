package io.github.platenwire.explain;

import io.github.platenwire.live.FollowedRow;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;

/** The rows of load and gauges as a method followed them, in order. Immutable. */
final class FollowedRows {
  private final List<FollowedRow> rows;

  FollowedRows(List<FollowedRow> rows) {
    this.rows = rows;
  }

  List<FollowedRow> all() {
    return rows;
  }

  /** The row of a load reading. */
  Optional<FollowedRow> of(long seq) {
    return first(row -> row.seq() == seq);
  }

  /** The first row that is as asked. */
  Optional<FollowedRow> first(Predicate<FollowedRow> asked) {
    return rows.stream().filter(asked).findFirst();
  }

  /** The last row with an opening before another row. */
  Optional<FollowedRow> before(FollowedRow row) {
    for (int i = rows.indexOf(row) - 1; i >= 0; i--) {
      if (!Double.isNaN(rows.get(i).averaged().opening())) {
        return Optional.of(rows.get(i));
      }
    }
    return Optional.empty();
  }
}
