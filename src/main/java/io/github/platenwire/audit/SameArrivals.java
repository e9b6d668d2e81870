package io.github.platenwire.audit;

import java.util.HashSet;
import java.util.Set;

/**
 * Whether the readings of two traces arrived at the same uneven intervals. The clock of a computer
 * stamps each reading a little early or late, and never twice in the same way; stamps that agree to
 * the microsecond, or do so once they are stretched, were copied. Intervals that are all alike, as
 * adapters that hand over in bursts make them, tell nothing. Stateless.
 */
final class SameArrivals {
  /** Rounding of two stamps after stretching, microseconds. */
  private static final double ROUNDING_MICROS = 2;

  /** Intervals closer than this, in microseconds, are one kind of interval. */
  private static final double KIND_MICROS = 20;

  private static final int FEWEST_KINDS = 12;
  private static final double SHARE = 0.97;
  private static final int MOST_SHIFT = 4;

  private SameArrivals() {}

  /** Whether they arrived alike between 20 % and 90 % of the peak. */
  static boolean isIn(LoadTrace a, Landmarks aMarks, LoadTrace b, Landmarks bMarks) {
    int readings = (int) Math.min(aMarks.span(), bMarks.span()) - MOST_SHIFT;
    for (int shift = -MOST_SHIFT; shift <= MOST_SHIFT; shift++) {
      int first = (int) aMarks.from() + Math.max(0, shift);
      int second = (int) bMarks.from() + Math.max(0, -shift);
      if (isAlike(a.micros(), first, b.micros(), second, readings)) {
        return true;
      }
    }
    return false;
  }

  private static boolean isAlike(long[] a, int first, long[] b, int second, int readings) {
    double duration = a[first + readings] - a[first];
    double stretching = duration == 0 ? 1 : (b[second + readings] - b[second]) / duration;
    Set<Long> kinds = new HashSet<>();
    int same = 0;
    for (int i = 0; i < readings; i++) {
      long own = a[first + i + 1] - a[first + i];
      long other = b[second + i + 1] - b[second + i];
      same += Math.abs(other - stretching * own) <= ROUNDING_MICROS ? 1 : 0;
      kinds.add(Math.round(own / KIND_MICROS));
    }
    return same >= SHARE * readings && kinds.size() >= FEWEST_KINDS;
  }
}
