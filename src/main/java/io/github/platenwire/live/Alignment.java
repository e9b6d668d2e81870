package io.github.platenwire.live;

import java.util.List;

/**
 * Puts several gauges onto the moments of the load readings. For a load reading at time t, a
 * gauge's value is its first reading at or after t if that stands at t itself; else it is
 * interpolated linearly between that reading and the one before it, if the two are no further apart
 * than the allowed gap; else it is missing. Nothing is ever extrapolated.
 *
 * <p>Readings are given in the order in which they arrived, at the moments to which they belong, so
 * a channel with a delay lies behind the others. A load reading is held back until each gauge's
 * value is known, or known to be missing because the gauge can no longer come in time. Rows come
 * out in the order of the load readings. When more load readings wait than fit, the oldest goes out
 * with the values that it has, and is counted.
 *
 * <p>Within one channel time never falls; a reading whose time does is taken at the time of the one
 * before it. NaN and infinite values are no readings. Constant work a reading on average, no
 * allocation. Not thread-safe.
 */
public final class Alignment {
  private final GaugeQueue[] gauges;
  private final long loadLagMicros;
  private final AlignedRow[] pending;
  private final Sink sink;
  private long loadsIn;
  private long loadsOut;
  private long lastLoadMicros = Long.MIN_VALUE;
  private long nowMicros = Long.MIN_VALUE / 2;
  private long overflows;

  /** Takes aligned rows. */
  @FunctionalInterface
  public interface Sink {
    /** One row; it must not be kept, since it is used again. */
    void row(AlignedRow row);
  }

  /**
   * How one gauge's line behaves.
   *
   * @param gapMicros two readings further apart than this are not joined
   * @param lagMicros most that a reading's moment can lie before the clock when it is given: delay,
   *     burst and disorder between ports
   * @param capacity most readings kept: at least rate times the load's lag, and 2
   */
  public record GaugeLine(long gapMicros, long lagMicros, int capacity) {
    /**
     * Checks the ranges.
     *
     * @throws IllegalArgumentException if a number is out of range
     */
    public GaugeLine {
      if (gapMicros <= 0 || lagMicros < 0 || capacity < 2) {
        throw new IllegalArgumentException(
            "gap must be above 0, lag not below 0 and capacity at least 2, gapMicros="
                + gapMicros
                + " lagMicros="
                + lagMicros
                + " capacity="
                + capacity);
      }
    }
  }

  /**
   * Starts with nothing read.
   *
   * @param lines the gauges, 1 to 8
   * @param loadLagMicros as {@link GaugeLine#lagMicros}, for the load
   * @param capacity most load readings that may wait, at least 1: load rate times the greatest gap
   *     and lag
   * @param sink told of each row
   * @throws IllegalArgumentException if a number is out of range
   */
  public Alignment(List<GaugeLine> lines, long loadLagMicros, int capacity, Sink sink) {
    if (lines.isEmpty() || lines.size() > 8 || loadLagMicros < 0 || capacity < 1) {
      throw new IllegalArgumentException(
          "there must be 1 to 8 gauges, a lag not below 0 and a capacity of at least 1, gauges="
              + lines.size()
              + " loadLagMicros="
              + loadLagMicros
              + " capacity="
              + capacity);
    }
    this.loadLagMicros = loadLagMicros;
    this.sink = sink;
    gauges = new GaugeQueue[lines.size()];
    for (int i = 0; i < gauges.length; i++) {
      gauges[i] = new GaugeQueue(lines.get(i));
    }
    pending = new AlignedRow[capacity];
    for (int i = 0; i < capacity; i++) {
      pending[i] = new AlignedRow(gauges.length);
    }
  }

  /** Takes a load reading; a value that is not finite is passed over. */
  public void load(long seq, long micros, double newtons) {
    if (!Double.isFinite(newtons)) {
      return;
    }
    if (loadsIn - loadsOut == pending.length) {
      overflows++;
      emitOldest();
    }
    lastLoadMicros = Math.max(lastLoadMicros, micros);
    row(loadsIn).start(seq, lastLoadMicros, newtons);
    loadsIn++;
    settleAll();
  }

  /** Takes a reading of a gauge, counted from 0; a value that is not finite is passed over. */
  public void gauge(int gauge, long seq, long micros, double millimetres) {
    if (!Double.isFinite(millimetres)) {
      return;
    }
    gauges[gauge].add(seq, micros, millimetres);
    settle(gauge);
    emitSettled();
  }

  /** Time has come this far: the newest stamp of any channel, microseconds. */
  public void clock(long stampMicros) {
    if (stampMicros > nowMicros) {
      nowMicros = stampMicros;
      settleAll();
    }
  }

  /** Nothing more will come: lets out every load reading with the values that it has. */
  public void flush() {
    while (loadsOut < loadsIn) {
      emitOldest();
    }
  }

  private void settleAll() {
    for (int gauge = 0; gauge < gauges.length; gauge++) {
      settle(gauge);
    }
    emitSettled();
  }

  private void settle(int gauge) {
    GaugeQueue queue = gauges[gauge];
    while (queue.nextLoad < loadsIn && queue.settle(row(queue.nextLoad), gauge, nowMicros)) {
      queue.nextLoad++;
    }
    if (queue.nextLoad == loadsIn) {
      queue.dropBefore(Math.max(lastLoadMicros, nowMicros - loadLagMicros));
    }
  }

  private void emitSettled() {
    long settled = loadsIn;
    for (GaugeQueue queue : gauges) {
      settled = Math.min(settled, queue.nextLoad);
    }
    while (loadsOut < settled) {
      emitOldest();
    }
  }

  private void emitOldest() {
    AlignedRow row = row(loadsOut);
    loadsOut++;
    for (GaugeQueue queue : gauges) {
      queue.nextLoad = Math.max(queue.nextLoad, loadsOut);
    }
    sink.row(row);
  }

  private AlignedRow row(long load) {
    return pending[(int) (load % pending.length)];
  }

  /** How many load readings went out early because too many waited. */
  public long overflows() {
    return overflows;
  }

  /** How many gauge readings had to go before the load had passed them. */
  public long squeezed() {
    long sum = 0;
    for (GaugeQueue queue : gauges) {
      sum += queue.squeezed();
    }
    return sum;
  }
}
