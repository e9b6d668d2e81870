package io.github.platenwire.audit;

/**
 * Compares two traces reading for reading: for indicators so coarse that noise does not show, this
 * is all there is. Stateless.
 */
final class ReadingMatch {
  private static final int MOST_SHIFT = 4;
  private static final int FEWEST_READINGS = 60;

  private ReadingMatch() {}

  /**
   * The share of readings that are the same from 20 % of the peak to the end of the shorter trace,
   * laid over each other as well as can be.
   *
   * @return 0 to 1; NaN if there are fewer than 60 readings
   */
  static double of(LoadTrace a, Landmarks aMarks, LoadTrace b, Landmarks bMarks) {
    double half = Math.max(a.step(), b.step()) / 2;
    double best = Double.NaN;
    for (int shift = -MOST_SHIFT; shift <= MOST_SHIFT; shift++) {
      int first = (int) aMarks.from() + Math.max(0, shift);
      int second = (int) bMarks.from() + Math.max(0, -shift);
      int readings = Math.min(a.length() - first, b.length() - second);
      if (readings >= FEWEST_READINGS) {
        int same = 0;
        for (int i = 0; i < readings; i++) {
          same += Math.abs(a.values()[first + i] - b.values()[second + i]) < half ? 1 : 0;
        }
        double share = (double) same / readings;
        best = Double.isNaN(best) ? share : Math.max(best, share);
      }
    }
    return best;
  }
}
