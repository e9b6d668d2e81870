package io.github.platenwire.live;

/**
 * Load and strains where a specimen is loaded least: the means over the rows whose load lies within
 * a band above the lowest. A row that is lower by more than the band starts them anew. Constant
 * work a row. Not thread-safe.
 */
final class LowestLoad {
  private final double band;
  private double lowest;
  private long count;
  private double load;
  private double strain;
  private double across;
  private long firstSeq;
  private long lastSeq;

  LowestLoad(double band) {
    this.band = band;
  }

  void restart() {
    count = 0;
  }

  void accept(CrackRow row, double acrossStrain) {
    if (count == 0 || row.load < lowest - band) {
      count = 0;
      load = 0;
      strain = 0;
      across = 0;
      lowest = row.load;
      firstSeq = row.firstSeq;
    }
    if (row.load <= lowest + band) {
      count++;
      lowest = Math.min(lowest, row.load);
      load += (row.load - load) / count;
      strain += (row.opening - strain) / count;
      across += (acrossStrain - across) / count;
      lastSeq = row.seq;
    }
  }

  boolean isKnown() {
    return count > 0;
  }

  double load() {
    return load;
  }

  double strain() {
    return strain;
  }

  /** NaN where no gauge reads across. */
  double across() {
    return across;
  }

  long firstSeq() {
    return firstSeq;
  }

  long lastSeq() {
    return lastSeq;
  }
}
