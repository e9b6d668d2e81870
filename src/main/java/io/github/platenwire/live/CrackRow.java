package io.github.platenwire.live;

/**
 * One smoothed row on its way through the tracker, used over and over. {@code opening} is the mean
 * of the fit gauges less their zero, {@code width} the opening less the elastic stretch; both NaN
 * where a gauge that counts has no value. Not thread-safe.
 */
final class CrackRow {
  long firstSeq;
  long seq;
  long micros;
  int rows;
  double load;
  double newestLoad;
  double opening = Double.NaN;
  double width = Double.NaN;
  int mask;

  boolean hasWidth() {
    return !Double.isNaN(width);
  }

  void copyFrom(CrackRow other) {
    firstSeq = other.firstSeq;
    seq = other.seq;
    micros = other.micros;
    rows = other.rows;
    load = other.load;
    newestLoad = other.newestLoad;
    opening = other.opening;
    width = other.width;
    mask = other.mask;
  }
}
