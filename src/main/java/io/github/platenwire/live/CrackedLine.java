package io.github.platenwire.live;

/** Line of load on opening over the rows of the virgin curve after cracking. Not thread-safe. */
final class CrackedLine {
  private static final int LEAST_ROWS = 10;

  private final double from;
  private final double to;
  private final LineFit fit = new LineFit();
  private long firstSeq;
  private long lastSeq;

  CrackedLine(double fromMillimetres, double toMillimetres) {
    from = fromMillimetres;
    to = toMillimetres;
  }

  void accept(CrackRow row) {
    if (row.opening >= from && row.opening <= to) {
      fit.add(row.opening, row.load);
      firstSeq = firstSeq == 0 ? row.firstSeq : firstSeq;
      lastSeq = row.seq;
    }
  }

  double slope() {
    return fit.count() >= LEAST_ROWS ? fit.slope() : Double.NaN;
  }

  double standardUncertainty(double share) {
    return fit.count() >= LEAST_ROWS
        ? Math.sqrt(fit.slopeVariance(fit.residual(), share))
        : Double.NaN;
  }

  long firstSeq() {
    return firstSeq;
  }

  long lastSeq() {
    return lastSeq;
  }
}
