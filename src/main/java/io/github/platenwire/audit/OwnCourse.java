package io.github.platenwire.audit;

/**
 * Whether a trace without visible noise has a course of its own. A load that rises perfectly evenly
 * gives the same readings in any two tests of one rate, if only the first reading comes at the same
 * moment of a step; such readings prove nothing. What proves something are small departures from
 * the even course: places where the load goes on a little faster or slower than before. Great ones
 * prove nothing either, for they are the program's: from fast to slow, from loading to holding.
 * Stateless.
 *
 * <p>The rise is cut into the longest stretches that one straight line explains, every reading of
 * them, to within rounding; departures are counted between stretches of nearly the same slope.
 */
final class OwnCourse {
  /** So many small departures are a course of its own. */
  static final int FEWEST_DEPARTURES = 2;

  /** Changes back and forth while the load rises: an even course has none, a program a few. */
  private static final int FEWEST_TURNS = 8;

  /** Changes of step below which a stretch tells no slope. */
  private static final int FEWEST_CHANGES = 3;

  /** Change of slope from which on a departure is the program's, as a share of the greater. */
  private static final double PROGRAM_SHARE = 0.25;

  private static final int FIRST_TRY = 4;
  private static final double ONE_STEP = 1.0001;
  private static final int HALVINGS = 48;

  private final long[] counts;
  private final int end;

  private OwnCourse(LoadTrace trace, Landmarks rise) {
    double step = trace.step();
    counts = new long[trace.length()];
    for (int i = 0; i < counts.length; i++) {
      counts[i] = step == 0 ? 0 : Math.round(trace.values()[i] / step);
    }
    end = (int) rise.to();
  }

  /** Whether a trace departs from an even course often enough to be known by it. */
  static boolean isIn(LoadTrace trace, Landmarks rise) {
    return departures(trace, rise) >= FEWEST_DEPARTURES || turns(trace, rise) >= FEWEST_TURNS;
  }

  /** Small departures from an even course between 20 % and 90 % of the peak. */
  static int departures(LoadTrace trace, Landmarks rise) {
    return new OwnCourse(trace, rise).count((int) rise.from());
  }

  private static int turns(LoadTrace trace, Landmarks rise) {
    int turns = 0;
    double last = 0;
    for (int i = (int) rise.from() + 1; i <= rise.to(); i++) {
      double change = trace.values()[i] - trace.values()[i - 1];
      turns += change * last < 0 ? 1 : 0;
      last = change == 0 ? last : change;
    }
    return turns;
  }

  private record Stretch(double slope, int changes) {}

  private int count(int begin) {
    int departures = 0;
    Stretch before = new Stretch(0, 0);
    for (int from = begin; from < end; ) {
      int length = straightLength(from);
      Stretch next = stretch(from, length);
      departures += isSmall(before, next) ? 1 : 0;
      before = next;
      from += length;
    }
    return departures;
  }

  private static boolean isSmall(Stretch a, Stretch b) {
    return a.changes >= FEWEST_CHANGES
        && b.changes >= FEWEST_CHANGES
        && Math.abs(a.slope - b.slope)
            < PROGRAM_SHARE * Math.max(Math.abs(a.slope), Math.abs(b.slope));
  }

  private Stretch stretch(int from, int length) {
    int changes = 0;
    for (int i = from + 1; i < from + length; i++) {
      changes += counts[i] == counts[i - 1] ? 0 : 1;
    }
    return new Stretch((double) (counts[from + length - 1] - counts[from]) / length, changes);
  }

  /** How many readings from one on lie on one line; doubled until too many, then halved in. */
  private int straightLength(int from) {
    int left = end - from + 1;
    int good = Math.min(2, left);
    int bad = FIRST_TRY;
    while (bad <= left && isStraight(from, bad)) {
      good = bad;
      bad *= 2;
    }
    bad = Math.min(bad, left + 1);
    while (bad - good > 1) {
      int middle = (good + bad) / 2;
      if (isStraight(from, middle)) {
        good = middle;
      } else {
        bad = middle;
      }
    }
    return good;
  }

  /**
   * Whether there is a line that all readings are no farther from than rounding leaves them: then
   * the band between the lowest and the highest is narrower than one step. Its width is convex over
   * the slope, and no slope farther from the chord's than this can be the best.
   */
  private boolean isStraight(int from, int length) {
    double chord = (double) (counts[from + length - 1] - counts[from]) / (length - 1);
    double wide = width(from, length, chord);
    double low = chord - wide / (length - 1);
    double high = chord + wide / (length - 1);
    for (int halving = 0; halving < HALVINGS && wide >= ONE_STEP; halving++) {
      double third = (high - low) / 3;
      double left = width(from, length, low + third);
      double right = width(from, length, high - third);
      wide = Math.min(left, right);
      if (left < right) {
        high -= third;
      } else {
        low += third;
      }
    }
    return wide < ONE_STEP;
  }

  private double width(int from, int length, double slope) {
    double lowest = Double.POSITIVE_INFINITY;
    double highest = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < length; i++) {
      double above = counts[from + i] - slope * i;
      lowest = Math.min(lowest, above);
      highest = Math.max(highest, above);
    }
    return highest - lowest;
  }
}
