package io.github.platenwire.study;

import io.github.platenwire.statistics.Interval;
import io.github.platenwire.statistics.StudentT;
import io.github.platenwire.statistics.Values;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The figures of one series at one age: how many specimens, their mean and their spread. Computed
 * in two passes about the mean, so that many equal leading digits cost nothing that a double still
 * has. Immutable.
 *
 * @param n number of specimens, at least 1
 * @param mean in the unit of the values
 * @param sumOfSquares of the deviations from the mean, in the squared unit of the values
 */
public record SeriesStatistics(int n, double mean, double sumOfSquares) {
  /** Refuses a series without specimens and figures that are no numbers. */
  public SeriesStatistics {
    if (n < 1) {
      throw new IllegalArgumentException("a series needs at least one specimen");
    }
    Values.requireFinite("mean", mean);
    Values.requireNotNegative("sum of squares", sumOfSquares);
  }

  /**
   * The figures of some values.
   *
   * @throws IllegalArgumentException if there is no value, or one is not finite
   */
  public static SeriesStatistics of(double... values) {
    if (values.length == 0) {
      throw new IllegalArgumentException("a series needs at least one specimen");
    }
    Values.requireFinite("value", values);
    double mean = Values.mean(values);
    double[] squares = new double[values.length];
    for (int i = 0; i < values.length; i++) {
      squares[i] = (values[i] - mean) * (values[i] - mean);
    }
    return new SeriesStatistics(values.length, mean, Values.sum(squares));
  }

  /** Standard deviation with n − 1, in the unit of the values; empty for a single specimen. */
  public OptionalDouble standardDeviation() {
    return n < 2 ? OptionalDouble.empty() : OptionalDouble.of(Math.sqrt(variance()));
  }

  /**
   * Standard deviation as a share of the mean (0.05 is 5 %); empty for a single specimen or a mean
   * that is not above zero.
   */
  public OptionalDouble coefficientOfVariation() {
    return n < 2 || mean <= 0
        ? OptionalDouble.empty()
        : OptionalDouble.of(Math.sqrt(variance()) / mean);
  }

  /** The 95 % interval of the mean by Student's t; empty with fewer than three specimens. */
  public Optional<Interval> meanInterval() {
    return meanInterval(Values.LEVEL);
  }

  /**
   * The interval of the mean by Student's t; empty with fewer than three specimens.
   *
   * @param level confidence level between 0 and 1
   */
  public Optional<Interval> meanInterval(double level) {
    Values.requireLevel(level);
    if (!allowsVerdict()) {
      return Optional.empty();
    }
    double half = StudentT.twoSided(level, degreesOfFreedom()) * Math.sqrt(meanVariance());
    return Optional.of(Interval.around(mean, half));
  }

  /** Whether there are enough specimens, three, for an interval and a verdict. */
  public boolean allowsVerdict() {
    return n >= Values.FEWEST_FOR_VERDICT;
  }

  int degreesOfFreedom() {
    return n - 1;
  }

  double variance() {
    if (n < 2) {
      throw new IllegalStateException("a single specimen has no spread");
    }
    return sumOfSquares / (n - 1);
  }

  /** The squared standard error of the mean. */
  double meanVariance() {
    return variance() / n;
  }
}
