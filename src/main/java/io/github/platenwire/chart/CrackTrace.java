package io.github.platenwire.chart;

import io.github.platenwire.method.CrackPart;
import java.util.Arrays;

/**
 * The crack of one test row by row: when, at what load, how wide. The elastic stretch is taken off
 * the rows from before it was known, too, which a live view cannot do. Filled by {@link LoadTrace};
 * only read afterwards. Not thread-safe while it is filled.
 */
public final class CrackTrace {
  private double[] seconds = new double[4096];
  private double[] newtons = new double[4096];
  private double[] millimetres = new double[4096];
  private boolean corrected;
  private long[] seqs = new long[4096];
  private int count;
  private long lastMicros = Long.MIN_VALUE;

  CrackTrace() {}

  /** Takes what a view shows, once each moment; a part without a load is passed over. */
  void add(double load, CrackPart part, long seq) {
    if (part.micros() == lastMicros || Double.isNaN(load)) {
      return;
    }
    lastMicros = part.micros();
    if (count == seconds.length) {
      seconds = Arrays.copyOf(seconds, 2 * count);
      newtons = Arrays.copyOf(newtons, 2 * count);
      millimetres = Arrays.copyOf(millimetres, 2 * count);
      seqs = Arrays.copyOf(seqs, 2 * count);
    }
    correct(load, part.openingMillimetres() - part.widthMillimetres());
    seconds[count] = part.micros() * 1e-6;
    newtons[count] = load;
    millimetres[count] = part.widthMillimetres();
    seqs[count] = seq;
    count++;
  }

  /** Takes the stretch off what came before the first row that has it taken off. */
  private void correct(double load, double stretch) {
    if (corrected || !(Math.abs(stretch) > 0) || load == 0) {
      return;
    }
    for (int i = 0; i < count; i++) {
      millimetres[i] -= stretch / load * newtons[i];
    }
    corrected = true;
  }

  /** When each row was, in seconds since the origin. */
  double[] seconds() {
    return Arrays.copyOf(seconds, count);
  }

  /** The load at each, in newtons, zero taken off. */
  double[] newtons() {
    return Arrays.copyOf(newtons, count);
  }

  /** The width at each, in millimetres; NaN where there was none. */
  double[] millimetres() {
    return Arrays.copyOf(millimetres, count);
  }

  /** Index of the row in which a reading first had its part; the last one if it came later. */
  int indexOf(long seq) {
    int at = Arrays.binarySearch(seqs, 0, count, seq);
    return Math.max(0, Math.min(count - 1, at < 0 ? -at - 1 : at));
  }
}
