package io.github.platenwire.audit;

import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;

/** A stretch of noise that comes twice within one trace, as if it had been pasted. Stateless. */
final class RepeatedNoise {
  /** Differences in a stretch. */
  static final int LENGTH = 32;

  /** A stretch with fewer different differences is rounding, not noise. */
  private static final int FEWEST_DIFFERENT = 6;

  private RepeatedNoise() {}

  /**
   * A stretch that comes twice.
   *
   * @param first index of the reading where it begins
   * @param second index of the reading where it begins again
   */
  record Found(int first, int second) {}

  /** The first stretch of differences that comes again, reading for reading. */
  static Optional<Found> find(long[] counts) {
    Map<Integer, Integer> firstOf = new HashMap<>();
    long[] differences = new long[Math.max(0, counts.length - 1)];
    for (int i = 0; i < differences.length; i++) {
      differences[i] = counts[i + 1] - counts[i];
    }
    for (int from = 0; from + LENGTH <= differences.length; from++) {
      long[] stretch = Arrays.copyOfRange(differences, from, from + LENGTH);
      if (isNoise(stretch)) {
        Integer before = firstOf.putIfAbsent(Arrays.hashCode(stretch), from);
        if (before != null
            && before + LENGTH <= from
            && Arrays.equals(
                differences, before, before + LENGTH, differences, from, from + LENGTH)) {
          return Optional.of(new Found(before, from));
        }
      }
    }
    return Optional.empty();
  }

  private static boolean isNoise(long[] differences) {
    long[] sorted = differences.clone();
    Arrays.sort(sorted);
    int different = 1;
    for (int i = 1; i < sorted.length; i++) {
      different += sorted[i] == sorted[i - 1] ? 0 : 1;
    }
    return different >= FEWEST_DIFFERENT && sorted[0] < 0 && sorted[sorted.length - 1] > 0;
  }
}
