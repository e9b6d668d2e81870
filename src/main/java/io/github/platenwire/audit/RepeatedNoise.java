package io.github.platenwire.audit;

import java.util.Arrays;
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
    long[] differences = new long[Math.max(0, counts.length - 1)];
    for (int i = 0; i < differences.length; i++) {
      differences[i] = counts[i + 1] - counts[i];
    }
    return differences.length < LENGTH
        ? Optional.empty()
        : new Stretches(differences).firstRepeated();
  }

  /**
   * The stretches seen so far, by a hash that is carried on from one to the next: constant work a
   * reading, and a stretch is looked at closely only where it seems to come again.
   */
  private static final class Stretches {
    private static final long FACTOR = 0x9E3779B97F4A7C15L;

    private final long[] differences;

    /** Where a stretch begins, plus one; 0 for free. */
    private final int[] begins;

    private int falls;
    private int rises;

    Stretches(long[] differences) {
      this.differences = differences;
      this.begins = new int[Integer.highestOneBit(differences.length) * 4];
    }

    Optional<Found> firstRepeated() {
      long leaving = 1;
      long hash = 0;
      for (int i = 0; i < LENGTH; i++) {
        leaving *= FACTOR;
        hash = hash * FACTOR + differences[i];
        count(differences[i], 1);
      }
      for (int from = 0; ; from++) {
        int before = falls > 0 && rises > 0 ? put(hash, from) : -1;
        if (before >= 0 && before + LENGTH <= from && isNoise(stretch(from))) {
          return Optional.of(new Found(before, from));
        }
        int next = from + LENGTH;
        if (next == differences.length) {
          return Optional.empty();
        }
        hash = hash * FACTOR + differences[next] - leaving * differences[from];
        count(differences[next], 1);
        count(differences[from], -1);
      }
    }

    private void count(long difference, int by) {
      falls += difference < 0 ? by : 0;
      rises += difference > 0 ? by : 0;
    }

    private long[] stretch(int from) {
      return Arrays.copyOfRange(differences, from, from + LENGTH);
    }

    /** Where the same stretch began first; -1 if it is new, and is remembered now. */
    private int put(long hash, int from) {
      int mask = begins.length - 1;
      int place = (int) ((hash * FACTOR) >>> 33) & mask;
      while (begins[place] != 0) {
        int begin = begins[place] - 1;
        if (Arrays.equals(differences, begin, begin + LENGTH, differences, from, from + LENGTH)) {
          return begin;
        }
        place = (place + 1) & mask;
      }
      begins[place] = from + 1;
      return -1;
    }
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
