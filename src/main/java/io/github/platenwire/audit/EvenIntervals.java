package io.github.platenwire.audit;

/** Intervals that are too even for any clock but a computed one. Stateless. */
final class EvenIntervals {
  private EvenIntervals() {}

  /** The longest run of intervals that differ by no more than a microsecond from the first. */
  static int longestRun(long[] micros) {
    int longest = 0;
    int from = 1;
    for (int i = 2; i < micros.length; i++) {
      long first = micros[from] - micros[from - 1];
      if (Math.abs(micros[i] - micros[i - 1] - first) > 1) {
        from = i;
      }
      longest = Math.max(longest, i - from + 1);
    }
    return longest;
  }
}
