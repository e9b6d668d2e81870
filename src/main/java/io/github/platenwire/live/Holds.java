package io.github.platenwire.live;

import java.util.ArrayList;
import java.util.List;

/**
 * Stretches in which the load stays within a share of its middle for a set time, and the creep of
 * the crack in them. A stretch starts anew with the row that would leave it. So that creep is not
 * mixed with the last of the loading or the first of the unloading, it is measured from where the
 * load has come to rest (no longer changes by a tenth of the share within a tenth of the set time)
 * to where it last was at rest. The first {@value #KEPT} are kept, the others counted. Constant
 * work and no allocation a row. Not thread-safe.
 */
public final class Holds {
  static final int KEPT = 64;

  private final CrackSettings.HoldRule rule;
  private final CrackRow[] starts = new CrackRow[KEPT];
  private final CrackRow[] ends = new CrackRow[KEPT];
  private final double[] meanLoads = new double[KEPT];
  private final CrackRow start = new CrackRow();
  private final CrackRow end = new CrackRow();
  private double restLoad;
  private long restMicros;
  private long lastMicros;
  private double least;
  private double greatest;
  private double sum;
  private long rows;
  private long count;

  Holds(CrackSettings.HoldRule rule) {
    this.rule = rule;
    for (int i = 0; i < KEPT; i++) {
      starts[i] = new CrackRow();
      ends[i] = new CrackRow();
    }
  }

  /** Takes a row, with or without a width; true when a hold has ended. */
  boolean accept(CrackRow row) {
    double newLeast = Math.min(least, row.load);
    double newGreatest = Math.max(greatest, row.load);
    boolean stays =
        rows > 0
            && newLeast >= rule.leastNewtons()
            && row.mask == start.mask
            && newGreatest - newLeast <= rule.share() * (newGreatest + newLeast);
    if (!stays) {
      boolean ended = isHolding();
      keep(ended);
      start(row);
      return ended;
    }
    least = newLeast;
    greatest = newGreatest;
    sum += row.load;
    rows++;
    if (!start.hasWidth() && row.hasWidth()) {
      start.copyFrom(row);
    }
    watchRest(row);
    lastMicros = row.micros;
    return false;
  }

  private void watchRest(CrackRow row) {
    boolean settled = row.micros - restMicros >= rule.micros() / 10;
    if (Math.abs(row.load - restLoad) > rule.share() / 10 * Math.abs(restLoad)) {
      if (!settled && !isHolding()) {
        start.copyFrom(row);
        end.copyFrom(row);
        sum = row.load;
        rows = 1;
      }
      restLoad = row.load;
      restMicros = row.micros;
    } else if (settled && (row.hasWidth() || !end.hasWidth())) {
      end.copyFrom(row);
    }
  }

  private void start(CrackRow row) {
    start.copyFrom(row);
    end.copyFrom(row);
    least = row.load;
    greatest = row.load;
    sum = row.load;
    rows = 1;
    restLoad = row.load;
    restMicros = row.micros;
    lastMicros = row.micros;
  }

  private void keep(boolean ended) {
    if (!ended) {
      return;
    }
    if (count < KEPT) {
      starts[(int) count].copyFrom(start);
      ends[(int) count].copyFrom(end);
      meanLoads[(int) count] = sum / rows;
    }
    count++;
  }

  /** Whether the load has been held for the set time and still is. */
  boolean isHolding() {
    return rows > 0 && lastMicros - start.micros >= rule.micros();
  }

  /** Creep of the crack so far in the hold under way; NaN if there is none. */
  double creepNow() {
    return isHolding() ? end.width - start.width : Double.NaN;
  }

  long count() {
    return count + (isHolding() ? 1 : 0);
  }

  /** Those kept, and the one under way, if there is one. */
  List<Hold> kept(CrackUncertainty uncertainty) {
    List<Hold> list = new ArrayList<>();
    for (int i = 0; i < Math.min(count, KEPT); i++) {
      list.add(hold(starts[i], ends[i], meanLoads[i], uncertainty));
    }
    if (isHolding()) {
      list.add(hold(start, end, sum / rows, uncertainty));
    }
    return list;
  }

  private static Hold hold(CrackRow from, CrackRow to, double load, CrackUncertainty uncertainty) {
    double noise = uncertainty.ofDifference(from, to);
    return new Hold(
        load, from.micros, to.micros, from.width, to.width, noise, to.mask, from.firstSeq, to.seq);
  }

  /**
   * One hold. Immutable.
   *
   * @param newtons mean load
   * @param startMicros when it began
   * @param endMicros when it ended, or the last row so far
   * @param startMillimetres width when it began; NaN where unknown
   * @param endMillimetres width when it ended; NaN where unknown
   * @param noiseMillimetres standard uncertainty of the creep by noise at both ends and by what the
   *     load moved between them; NaN if unknown
   * @param mask the gauges on which it rests
   * @param firstSeq number of its first row
   * @param lastSeq number of its last
   */
  public record Hold(
      double newtons,
      long startMicros,
      long endMicros,
      double startMillimetres,
      double endMillimetres,
      double noiseMillimetres,
      int mask,
      long firstSeq,
      long lastSeq) {
    /** Creep of the crack in it, millimetres. */
    public double creepMillimetres() {
      return endMillimetres - startMillimetres;
    }
  }
}
