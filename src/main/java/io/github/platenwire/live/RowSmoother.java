package io.github.platenwire.live;

/**
 * Mean of time, load and opening over the rows of a sliding time window. All three are averaged
 * alike, so that the curve of width against load is not shifted, only its noise made smaller.
 * Starts anew where a width is missing or the gauges that count change. With a window of 0 every
 * row stands for itself. Constant work and no allocation a row. Not thread-safe.
 */
final class RowSmoother {
  private final long windowMicros;
  private final long[] seqs;
  private final long[] micros;
  private final double[] loads;
  private final double[] openings;
  private int head;
  private int count;
  private double sumLoad;
  private double sumOpening;
  private double sumMicros;
  private int mask;

  RowSmoother(long windowMicros, int capacity) {
    this.windowMicros = windowMicros;
    seqs = new long[capacity];
    micros = new long[capacity];
    loads = new double[capacity];
    openings = new double[capacity];
  }

  void accept(long seq, long time, double load, double opening, int newMask, CrackRow out) {
    out.newestLoad = load;
    if (Double.isNaN(opening) || newMask != mask || (count > 0 && isApart(time))) {
      restart(newMask);
    }
    if (Double.isNaN(opening)) {
      put(out, seq, seq, time, load, opening);
      out.rows = 1;
      return;
    }
    while (count > 0 && (count == seqs.length || time - micros[head] >= windowMicros)) {
      dropFirst();
    }
    add(seq, time, load, opening);
    put(
        out,
        seqs[head],
        seq,
        micros[head] + Math.round(sumMicros / count - (double) micros[head]),
        sumLoad / count,
        sumOpening / count);
    out.rows = count;
  }

  private boolean isApart(long time) {
    return time - micros[(head + count - 1) % seqs.length] > Math.max(windowMicros, 1);
  }

  private void restart(int newMask) {
    head = 0;
    count = 0;
    sumLoad = 0;
    sumOpening = 0;
    sumMicros = 0;
    mask = newMask;
  }

  private void dropFirst() {
    sumLoad -= loads[head];
    sumOpening -= openings[head];
    sumMicros -= micros[head];
    head = (head + 1) % seqs.length;
    count--;
    if (count == 0) {
      restart(mask);
    }
  }

  private void add(long seq, long time, double load, double opening) {
    int at = (head + count) % seqs.length;
    seqs[at] = seq;
    micros[at] = time;
    loads[at] = load;
    openings[at] = opening;
    sumLoad += load;
    sumOpening += opening;
    sumMicros += time;
    count++;
  }

  private void put(CrackRow out, long firstSeq, long seq, long time, double load, double opening) {
    out.firstSeq = firstSeq;
    out.seq = seq;
    out.micros = time;
    out.load = load;
    out.opening = opening;
    out.mask = mask;
  }
}
