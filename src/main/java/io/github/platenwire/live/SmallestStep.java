package io.github.platenwire.live;

/**
 * The smallest change between two readings in a row that differ: an estimate of the resolution of
 * the device, from above. Not thread-safe.
 */
public final class SmallestStep {
  private double last = Double.NaN;
  private double smallest = Double.NaN;

  /** Takes the next finite value. */
  public void accept(double value) {
    double step = Math.abs(value - last);
    if (step > 0 && !(step >= smallest)) {
      smallest = step;
    }
    last = value;
  }

  /** The smallest step so far, in the values' unit; NaN while no two readings in a row differed. */
  public double value() {
    return smallest;
  }

  void restart() {
    last = Double.NaN;
    smallest = Double.NaN;
  }

  void copyFrom(SmallestStep other) {
    last = other.last;
    smallest = other.smallest;
  }
}
