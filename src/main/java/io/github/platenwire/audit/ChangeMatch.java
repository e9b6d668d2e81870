package io.github.platenwire.audit;

/**
 * Compares where two traces change from one step of their indicator to the next: for indicators so
 * coarse that noise does not show, this is all that their readings tell. Readings between changes
 * are not counted, for there may be hundreds, and they agree in any two tests of one rate.
 * Stateless.
 */
final class ChangeMatch {
  private static final int MOST_SHIFT = 4;
  private static final int FEWEST_READINGS = 60;
  private static final int FEWEST_CHANGES = 12;

  private ChangeMatch() {}

  /**
   * The share of changes that come at the same reading, between the same values, of all that either
   * trace has from 20 % of the peak to the end of the shorter trace, laid over each other as well
   * as can be.
   *
   * @return 0 to 1; NaN if there are fewer than 60 readings or 12 changes
   */
  static double of(LoadTrace a, Landmarks aMarks, LoadTrace b, Landmarks bMarks) {
    double half = Math.max(a.step(), b.step()) / 2;
    double best = Double.NaN;
    for (int shift = -MOST_SHIFT; shift <= MOST_SHIFT; shift++) {
      int first = (int) aMarks.from() + Math.max(0, shift);
      int second = (int) bMarks.from() + Math.max(0, -shift);
      double share = share(a.values(), first, b.values(), second, half);
      best = Double.isNaN(best) ? share : Math.max(best, Double.isNaN(share) ? 0 : share);
    }
    return best;
  }

  private static double share(double[] a, int first, double[] b, int second, double half) {
    int readings = Math.min(a.length - first, b.length - second);
    int same = 0;
    int all = 0;
    for (int i = 1; i < readings; i++) {
      double before = a[first + i - 1];
      double after = a[first + i];
      boolean changes = Math.abs(after - before) > half;
      if (changes || Math.abs(b[second + i] - b[second + i - 1]) > half) {
        all++;
        boolean agree =
            Math.abs(before - b[second + i - 1]) < half && Math.abs(after - b[second + i]) < half;
        same += agree ? 1 : 0;
      }
    }
    return readings < FEWEST_READINGS || all < FEWEST_CHANGES ? Double.NaN : (double) same / all;
  }
}
