package io.github.platenwire.live;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** First lasting crossings of a list of widths. Constant work a row. Not thread-safe. */
public final class Thresholds {
  private final List<CrackSettings.Threshold> thresholds;
  private final LastingCrossing[] crossings;
  private final boolean[] fresh;

  Thresholds(List<CrackSettings.Threshold> thresholds, CrackSettings.Lasting lasting) {
    this.thresholds = thresholds;
    crossings = new LastingCrossing[thresholds.size()];
    fresh = new boolean[thresholds.size()];
    for (int i = 0; i < crossings.length; i++) {
      crossings[i] = new LastingCrossing(thresholds.get(i).millimetres(), lasting);
    }
  }

  /** Takes a row; true when one or more crossings have become known. */
  boolean accept(CrackRow row) {
    boolean any = false;
    for (int i = 0; i < crossings.length; i++) {
      fresh[i] = crossings[i].accept(row, row.width);
      any |= fresh[i];
    }
    return any;
  }

  int size() {
    return crossings.length;
  }

  /** Whether the latest row made it known. */
  boolean isNew(int index) {
    return fresh[index];
  }

  double load(int index) {
    return crossings[index].load();
  }

  /** The lowest threshold that has not been crossed. */
  Optional<CrackSettings.Threshold> next() {
    for (int i = 0; i < crossings.length; i++) {
      if (!crossings[i].isConfirmed()) {
        return Optional.of(thresholds.get(i));
      }
    }
    return Optional.empty();
  }

  Crossing crossing(int index, double uncertainty) {
    LastingCrossing found = crossings[index];
    return new Crossing(
        thresholds.get(index),
        found.load(),
        uncertainty,
        found.isInterpolated(),
        found.beginMicros(),
        found.mask(),
        found.firstSeq(),
        found.lastSeq());
  }

  List<Integer> confirmed() {
    List<Integer> list = new ArrayList<>();
    for (int i = 0; i < crossings.length; i++) {
      if (crossings[i].isConfirmed()) {
        list.add(i);
      }
    }
    return list;
  }

  /**
   * A lasting crossing. Immutable.
   *
   * @param threshold what was crossed
   * @param newtons load at the crossing
   * @param uncertaintyNewtons its expanded uncertainty (k = 2) without calibration; NaN where the
   *     curve cannot tell
   * @param interpolated false where there was no row below it with the same gauges, as when a gauge
   *     was lost in between: then the load only bounds the crossing
   * @param micros when the first row at or beyond it was read
   * @param mask the gauges on which it rests
   * @param firstSeq number of the first load row on which it rests
   * @param lastSeq number of the last
   */
  public record Crossing(
      CrackSettings.Threshold threshold,
      double newtons,
      double uncertaintyNewtons,
      boolean interpolated,
      long micros,
      int mask,
      long firstSeq,
      long lastSeq) {}
}
