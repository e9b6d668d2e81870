package io.github.platenwire.live;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Width at the first up-crossing of each load, on a grid of loads from 0 in equal steps,
 * interpolated between the two rows about each. So there is one width a load, whatever cycles there
 * were. When a load lies beyond the last place, every second place is given up and the step
 * doubles: the room never grows. Constant work a row on average, no allocation. Not thread-safe.
 */
final class VirginCurve {
  private static final int REACH = 8;

  private final double[] widths;
  private final long[] micros;
  private final long[] firstSeqs;
  private final long[] lastSeqs;
  private final int[] masks;
  private final int[] rows;
  private final CrackRow previous = new CrackRow();
  private boolean hasPrevious;
  private double step;
  private double greatest = Double.NEGATIVE_INFINITY;
  private int size;

  VirginCurve(double step, int capacity) {
    this.step = step;
    widths = new double[capacity];
    micros = new long[capacity];
    firstSeqs = new long[capacity];
    lastSeqs = new long[capacity];
    masks = new int[capacity];
    rows = new int[capacity];
    Arrays.fill(widths, Double.NaN);
  }

  /** Takes a row with a width and a finite load; true if its load is the greatest so far. */
  boolean accept(CrackRow row) {
    boolean rises = row.load > greatest;
    if (rises) {
      place(row);
      greatest = row.load;
    }
    previous.copyFrom(row);
    hasPrevious = true;
    return rises;
  }

  private void place(CrackRow row) {
    while (row.load >= step * widths.length) {
      halve();
    }
    int last = (int) Math.floor(row.load / step);
    for (int i = size; i <= last; i++) {
      if (i * step == row.load || (hasPrevious && i * step >= previous.load)) {
        put(i, row);
      }
      size = i + 1;
    }
  }

  private void put(int at, CrackRow row) {
    boolean joined = hasPrevious && previous.mask == row.mask && row.load > previous.load;
    double share = joined ? (at * step - previous.load) / (row.load - previous.load) : 1;
    widths[at] = joined ? previous.width + (row.width - previous.width) * share : row.width;
    micros[at] = joined ? between(previous.micros, row.micros, share) : row.micros;
    firstSeqs[at] = joined ? previous.firstSeq : row.firstSeq;
    lastSeqs[at] = row.seq;
    masks[at] = row.mask;
    rows[at] = row.rows;
  }

  private static long between(long from, long to, double share) {
    return from + Math.round((to - from) * share);
  }

  /** Takes the difference between two elastic stretches off what is placed, mm/N. */
  void takeOff(double millimetresPerNewton) {
    for (int i = 0; i < size; i++) {
      widths[i] -= millimetresPerNewton * i * step;
    }
  }

  private void halve() {
    int half = (size + 1) / 2;
    for (int i = 0; i < half; i++) {
      widths[i] = widths[2 * i];
      micros[i] = micros[2 * i];
      firstSeqs[i] = firstSeqs[2 * i];
      lastSeqs[i] = lastSeqs[2 * i];
      masks[i] = masks[2 * i];
      rows[i] = rows[2 * i];
    }
    Arrays.fill(widths, half, widths.length, Double.NaN);
    size = half;
    step *= 2;
  }

  List<CrackResult.Point> points() {
    List<CrackResult.Point> list = new ArrayList<>();
    for (int i = 0; i < size; i++) {
      if (!Double.isNaN(widths[i])) {
        list.add(new CrackResult.Point(i * step, widths[i], micros[i], masks[i], lastSeqs[i]));
      }
    }
    return list;
  }

  double step() {
    return step;
  }

  long firstSeq(int at) {
    return firstSeqs[at];
  }

  long lastSeq(int at) {
    return lastSeqs[at];
  }

  int mask(int at) {
    return masks[at];
  }

  int rows(int at) {
    return rows[at];
  }

  /** Place at or below a load; -1 if the load or its neighbours were not reached with a width. */
  int placeOf(double load) {
    if (!(load >= 0) || load > (size - 1) * step) {
      return -1;
    }
    int at = Math.min((int) Math.floor(load / step), size - 1);
    boolean exact = at * step == load;
    boolean there = !Double.isNaN(widths[at]) && (exact || !Double.isNaN(widths[at + 1]));
    return there ? at : -1;
  }

  /** As {@link #placeOf}, but for the last bit above the last place that place. */
  int placeNear(double load) {
    boolean above = size > 0 && load > (size - 1) * step && load <= greatest;
    return above && !Double.isNaN(widths[size - 1]) ? size - 1 : placeOf(load);
  }

  /** Width at a load; NaN where there is none. */
  double widthAt(double load) {
    int at = placeOf(load);
    if (at < 0) {
      return Double.NaN;
    }
    double share = load / step - at;
    return share == 0 ? widths[at] : widths[at] + (widths[at + 1] - widths[at]) * share;
  }

  /** Slope of width on load about a place, mm/N, over some places either side where they are. */
  double slopeAt(int place) {
    int low = reach(place, -1);
    int high = reach(place, 1);
    return high == low ? 0 : (widths[high] - widths[low]) / ((high - low) * step);
  }

  /** Rate of loading about a place, N/s, the faster of before and after it. */
  double rateAt(int place) {
    return Math.max(rate(reach(place, -1), place), rate(place, reach(place, 1)));
  }

  private double rate(int low, int high) {
    long between = micros[high] - micros[low];
    return between <= 0 ? 0 : (high - low) * step / (between * 1e-6);
  }

  /**
   * By how much the width rises over some places either side of a place beyond what the curve does
   * further out on either side, mm: a jump that averaging has smeared. Not below 0.
   */
  double excessAt(int place, int places) {
    int low = reach(place, -1, places);
    int high = reach(place, 1, places);
    double before = chord(reach(low, -1, places), low) * (place - low);
    double after = chord(high, reach(high, 1, places)) * (high - place);
    return Math.max(0, widths[high] - widths[low] - before - after);
  }

  private double chord(int low, int high) {
    return high == low ? 0 : (widths[high] - widths[low]) / (high - low);
  }

  private int reach(int place, int direction) {
    return reach(place, direction, REACH);
  }

  private int reach(int place, int direction, int places) {
    int at = place;
    for (int i = 0; i < places; i++) {
      int next = at + direction;
      if (next < 0 || next >= size || Double.isNaN(widths[next])) {
        break;
      }
      at = next;
    }
    return at;
  }
}
