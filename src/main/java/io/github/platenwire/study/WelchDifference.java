package io.github.platenwire.study;

import io.github.platenwire.statistics.Interval;
import io.github.platenwire.statistics.StudentT;
import io.github.platenwire.statistics.Values;
import java.util.Optional;

/**
 * The difference of two means, first minus second, without supposing equal spread (Welch 1947).
 * Immutable.
 *
 * @param difference in the unit of the values
 * @param nFirst specimens in the first series
 * @param nSecond specimens in the second series
 * @param inference how sure it is; empty when either series has fewer than three specimens
 */
public record WelchDifference(
    double difference, int nFirst, int nSecond, Optional<Inference> inference) {

  /**
   * How sure a difference is. Series without any spread (equal values after rounding) give an
   * interval of no width: the rounding then hides the scatter.
   *
   * @param standardError of the difference, in the unit of the values
   * @param degreesOfFreedom by Welch–Satterthwaite, rarely a whole number
   * @param interval at the level asked for
   * @param probability that chance alone gives a difference at least so large (two-sided p)
   */
  public record Inference(
      double standardError, double degreesOfFreedom, Interval interval, double probability) {}

  /** The difference with its 95 % interval. */
  public static WelchDifference between(SeriesStatistics first, SeriesStatistics second) {
    return between(first, second, Values.LEVEL);
  }

  /**
   * The difference with its interval.
   *
   * @param level confidence level between 0 and 1
   */
  public static WelchDifference between(
      SeriesStatistics first, SeriesStatistics second, double level) {
    Values.requireLevel(level);
    double difference = first.mean() - second.mean();
    Optional<Inference> inference =
        first.allowsVerdict() && second.allowsVerdict()
            ? Optional.of(infer(first, second, level))
            : Optional.empty();
    return new WelchDifference(difference, first.n(), second.n(), inference);
  }

  private static Inference infer(SeriesStatistics first, SeriesStatistics second, double level) {
    double difference = first.mean() - second.mean();
    double error = Math.sqrt(first.meanVariance() + second.meanVariance());
    double degrees =
        StudentT.welchDegreesOfFreedom(
            first.meanVariance(),
            first.degreesOfFreedom(),
            second.meanVariance(),
            second.degreesOfFreedom());
    Interval interval = Interval.around(difference, StudentT.twoSided(level, degrees) * error);
    return new Inference(error, degrees, interval, probability(difference, error, degrees));
  }

  private static double probability(double difference, double error, double degrees) {
    if (error == 0) {
      return difference == 0 ? 1 : 0;
    }
    return StudentT.twoSidedProbability(difference / error, degrees);
  }
}
