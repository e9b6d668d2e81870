package io.github.platenwire.bench;

/**
 * How much is measured. Immutable.
 *
 * @param lines readings sent flat out in a round
 * @param rounds how often that is done, and the records audited
 * @param seconds how long the three devices send at their pace
 * @param hours how long the long test lasts on its emulated clock
 * @param starts how often the program is started
 */
public record BenchSize(int lines, int rounds, int seconds, double hours, int starts) {
  /** Some minutes in all. */
  public static final BenchSize FULL = new BenchSize(1_500_000, 5, 10, 24, 11);

  /** Some seconds; what runs for the first time is slower than it will be. */
  public static final BenchSize QUICK = new BenchSize(150_000, 1, 2, 1, 3);

  /**
   * Checks the sizes.
   *
   * @throws IllegalArgumentException if one is not positive
   */
  public BenchSize {
    if (lines < 1 || rounds < 1 || seconds < 1 || !(hours > 0) || starts < 1) {
      throw new IllegalArgumentException("every size must be positive");
    }
  }
}
