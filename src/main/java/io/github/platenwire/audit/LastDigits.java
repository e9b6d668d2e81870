package io.github.platenwire.audit;

/**
 * How often each last digit comes, in units of the indicator's step; a reading that repeats the one
 * before does not count. Immutable.
 *
 * @param number readings that were counted
 * @param share of those that end as {@link #words} says
 * @param words the digits that come too often
 */
record LastDigits(int number, double share, String words) {
  private static final int FEWEST = 100;

  /**
   * Greatest share of two digits of ten, or of one, that is honest. An even course would give 0.2
   * and 0.1; one that goes by nearly whole tens or fives of steps a reading gives more for a while.
   */
  private static final double MOST_SHARE = 0.5;

  static LastDigits of(LoadTrace trace) {
    long[] counts = trace.counts();
    long step = trace.digitStep();
    int[] times = new int[10];
    int number = 0;
    for (int i = 1; i < counts.length; i++) {
      if (counts[i] != counts[i - 1]) {
        times[(int) Math.floorMod(counts[i] / step, 10L)]++;
        number++;
      }
    }
    int liked = 0;
    for (int digit = 0; digit < 10; digit++) {
      liked = times[digit] > times[liked] ? digit : liked;
    }
    int both = times[0] + times[5];
    boolean one = times[liked] >= both;
    double share = number == 0 ? 0 : (double) (one ? times[liked] : both) / number;
    return new LastDigits(number, share, one ? String.valueOf(liked) : "0 or 5");
  }

  /** Whether they come so often that somebody must have liked them. */
  boolean areLiked() {
    return number >= FEWEST && share > MOST_SHARE;
  }
}
