package io.github.platenwire.live;

/**
 * Work done on opening the crack: the sum of load times change of opening by the trapezoid rule,
 * the opening as measured (elastic stretch not taken off, since unloading gives that back). Where
 * the gauges that count change, the step of the mean is no movement and is left out; over rows
 * without an opening the two about them are joined. Not thread-safe.
 */
final class Work {
  private double newtonMillimetres;
  private double lastLoad;
  private double lastOpening = Double.NaN;
  private int lastMask;
  private long firstSeq;
  private long lastSeq;

  void accept(long seq, double load, double opening, int mask) {
    if (Double.isNaN(opening)) {
      return;
    }
    if (mask == lastMask && !Double.isNaN(lastOpening)) {
      newtonMillimetres += (load + lastLoad) / 2 * (opening - lastOpening);
    }
    firstSeq = firstSeq == 0 ? seq : firstSeq;
    lastSeq = seq;
    lastLoad = load;
    lastOpening = opening;
    lastMask = mask;
  }

  /** In N mm, which are mJ. */
  double newtonMillimetres() {
    return newtonMillimetres;
  }

  long firstSeq() {
    return firstSeq;
  }

  long lastSeq() {
    return lastSeq;
  }
}
