package io.github.platenwire.live;

import java.util.ArrayList;
import java.util.List;

/**
 * Unloading and reloading. A cycle begins at a greatest load from which the load falls by the
 * larger of two limits, and ends when the load rises from its least by as much. Its residual width
 * is the width at the least load. The first {@value #KEPT} are kept, the others counted. Constant
 * work and no allocation a row. Not thread-safe.
 */
public final class Cycles {
  static final int KEPT = 64;

  private final CrackSettings.CycleRule rule;
  private final CrackRow[] tops = new CrackRow[KEPT];
  private final CrackRow[] bottoms = new CrackRow[KEPT];
  private final CrackRow top = new CrackRow();
  private final CrackRow bottom = new CrackRow();
  private double greatest = Double.NEGATIVE_INFINITY;
  private boolean hasRow;
  private boolean falling;
  private long count;

  Cycles(CrackSettings.CycleRule rule) {
    this.rule = rule;
    for (int i = 0; i < KEPT; i++) {
      tops[i] = new CrackRow();
      bottoms[i] = new CrackRow();
    }
  }

  /** Takes a row, with or without a width; true when a cycle has ended. */
  boolean accept(CrackRow row) {
    if (!hasRow) {
      hasRow = true;
      top.copyFrom(row);
    }
    greatest = Math.max(greatest, row.load);
    return falling ? whileFalling(row) : whileRising(row);
  }

  private double least() {
    return Math.max(rule.newtons(), rule.share() * greatest);
  }

  private boolean whileRising(CrackRow row) {
    if (row.load >= top.load) {
      top.copyFrom(row);
    } else if (row.load < top.load - least()) {
      falling = true;
      bottom.copyFrom(row);
    }
    return false;
  }

  private boolean whileFalling(CrackRow row) {
    if (row.load < bottom.load) {
      bottom.copyFrom(row);
    } else if (row.load > bottom.load + least()) {
      falling = false;
      if (count < KEPT) {
        tops[(int) count].copyFrom(top);
        bottoms[(int) count].copyFrom(bottom);
      }
      count++;
      top.copyFrom(row);
      return true;
    }
    return false;
  }

  long count() {
    return count;
  }

  boolean isFalling() {
    return falling;
  }

  /** Those kept, and the unloading still under way at the end, if there is one. */
  List<Cycle> kept(CrackUncertainty uncertainty) {
    List<Cycle> list = new ArrayList<>();
    for (int i = 0; i < Math.min(count, KEPT); i++) {
      list.add(cycle(tops[i], bottoms[i], true, uncertainty));
    }
    if (falling) {
      list.add(cycle(top, bottom, false, uncertainty));
    }
    return list;
  }

  private static Cycle cycle(
      CrackRow from, CrackRow to, boolean reloaded, CrackUncertainty uncertainty) {
    return new Cycle(
        from.load,
        from.width,
        to.load,
        to.width,
        uncertainty.atRest(to),
        reloaded,
        to.mask,
        from.seq,
        to.firstSeq,
        to.seq);
  }

  /**
   * One unloading. Immutable.
   *
   * @param topNewtons load from which it fell
   * @param topMillimetres width there; NaN where unknown
   * @param bottomNewtons least load
   * @param residualMillimetres width there; NaN where unknown
   * @param parts what makes the width there uncertain, without the calibrations
   * @param reloaded false for an unloading that had not ended when asked
   * @param mask the gauges at the least load
   * @param topSeq number of the row at the top
   * @param bottomFirstSeq number of the first row on which the residual rests
   * @param bottomLastSeq number of the last
   */
  public record Cycle(
      double topNewtons,
      double topMillimetres,
      double bottomNewtons,
      double residualMillimetres,
      WidthAtLoad.Parts parts,
      boolean reloaded,
      int mask,
      long topSeq,
      long bottomFirstSeq,
      long bottomLastSeq) {}
}
