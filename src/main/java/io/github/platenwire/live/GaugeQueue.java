package io.github.platenwire.live;

/**
 * The latest readings of one gauge, kept until no load reading can need them any more. Not
 * thread-safe.
 */
final class GaugeQueue {
  private final long gapMicros;
  private final long lagMicros;
  private final long[] seqs;
  private final long[] times;
  private final double[] values;
  private int head;
  private int count;
  private boolean hasPrevious;
  private long previousSeq;
  private long previousMicros;
  private double previousValue;
  private long lastMicros = Long.MIN_VALUE;
  private long squeezed;

  /** Number of the first load reading that is not settled for this gauge. */
  long nextLoad;

  GaugeQueue(Alignment.GaugeLine line) {
    gapMicros = line.gapMicros();
    lagMicros = line.lagMicros();
    seqs = new long[line.capacity()];
    times = new long[line.capacity()];
    values = new double[line.capacity()];
  }

  void add(long seq, long micros, double value) {
    if (count == values.length) {
      squeezed++;
      popFirst();
    }
    lastMicros = Math.max(lastMicros, micros);
    int at = (head + count) % values.length;
    seqs[at] = seq;
    times[at] = lastMicros;
    values[at] = value;
    count++;
  }

  private void popFirst() {
    hasPrevious = true;
    previousSeq = seqs[head];
    previousMicros = times[head];
    previousValue = values[head];
    head = (head + 1) % values.length;
    count--;
  }

  void dropBefore(long micros) {
    while (count > 0 && times[head] < micros) {
      popFirst();
    }
  }

  /**
   * Puts this gauge's value into a row, if it is known or known to be missing.
   *
   * @return whether the row is settled for this gauge
   */
  boolean settle(AlignedRow row, int gauge, long nowMicros) {
    dropBefore(row.micros);
    if (count == 0) {
      return isHopeless(row.micros, nowMicros - lagMicros);
    }
    if (hasPrevious && previousMicros >= row.micros) {
      return true;
    }
    long after = times[head];
    if (after == row.micros) {
      put(row, gauge, values[head], seqs[head], seqs[head]);
    } else if (hasPrevious && after - previousMicros <= gapMicros) {
      double share = (double) (row.micros - previousMicros) / (after - previousMicros);
      double value = previousValue + (values[head] - previousValue) * share;
      put(row, gauge, value, previousSeq, seqs[head]);
      row.noiseShares[gauge] = share * share + (1 - share) * (1 - share);
    }
    return true;
  }

  /** No reading comes any more from before {@code earliest}: can one still serve this moment? */
  private boolean isHopeless(long micros, long earliest) {
    return earliest > micros && (!hasPrevious || earliest > previousMicros + gapMicros);
  }

  private static void put(AlignedRow row, int gauge, double value, long lowSeq, long highSeq) {
    row.values[gauge] = value;
    row.lowSeqs[gauge] = lowSeq;
    row.highSeqs[gauge] = highSeq;
  }

  long squeezed() {
    return squeezed;
  }
}
