package io.github.platenwire.study;

import io.github.platenwire.statistics.StudentT;
import io.github.platenwire.statistics.Values;
import java.util.Optional;

/**
 * Grubbs' test for one outlier (ASTM E178): names the value that stands farthest from the mean when
 * chance alone would hardly put it there. It drops nothing; a named value stays in every figure.
 * With six specimens or fewer it often misses an outlier and sometimes names a sound value, so what
 * it says is a reason to look at the specimen and no more. Stateless; safe for use by several
 * threads.
 */
public final class Grubbs {
  private Grubbs() {}

  /** Where an outlier is looked for. */
  public enum Side {
    /** Too high or too low: the usual question. */
    EITHER,
    /** Too high only. */
    HIGH,
    /** Too low only. */
    LOW
  }

  /**
   * The value farthest from the mean and what the test says of it.
   *
   * @param index place among the values given, from 0
   * @param value the value itself
   * @param statistic distance from the mean in standard deviations, G
   * @param critical the G that chance exceeds with that significance
   * @param significance share of sound series in which a value is named all the same
   * @param suspected whether G is above the critical value
   */
  public record Finding(
      int index,
      double value,
      double statistic,
      double critical,
      double significance,
      boolean suspected) {}

  /**
   * The critical value of G = |x − mean|/s.
   *
   * <p>(n − 1)/√n · √(t²/(n − 2 + t²)) with t the upper quantile of Student's t at significance/n
   * (one side) or significance/(2n) (either side) and n − 2 degrees of freedom: Grubbs 1969, as in
   * the public qgrubbs.R. Table 1 of ASTM E178 is one-sided; its 2.5 % column serves either side at
   * 5 %.
   *
   * @param n number of values, at least 3
   * @param significance share of sound series in which a value is named all the same, such as 0.05
   */
  public static double critical(int n, double significance, Side side) {
    if (n < Values.FEWEST_FOR_VERDICT) {
      throw new IllegalArgumentException("Grubbs' test needs at least three values, n=" + n);
    }
    Values.requireLevel(significance);
    double tail = significance / n / (side == Side.EITHER ? 2 : 1);
    double t = StudentT.quantile(1 - tail, n - 2.0);
    return (n - 1) / Math.sqrt(n) * Math.sqrt(t * t / (n - 2 + t * t));
  }

  /**
   * Tests the value farthest out at 5 %, to either side.
   *
   * @return empty with fewer than three values, or when all are equal
   */
  public static Optional<Finding> test(double... values) {
    return test(0.05, Side.EITHER, values);
  }

  /**
   * Tests the value farthest out on the side asked for.
   *
   * @return empty with fewer than three values, or when all are equal
   * @throws IllegalArgumentException if a value is not finite
   */
  public static Optional<Finding> test(double significance, Side side, double... values) {
    Values.requireFinite("value", values);
    if (values.length < Values.FEWEST_FOR_VERDICT) {
      return Optional.empty();
    }
    SeriesStatistics series = SeriesStatistics.of(values);
    if (series.sumOfSquares() == 0) {
      return Optional.empty();
    }
    int farthest = 0;
    for (int i = 1; i < values.length; i++) {
      if (distance(values[i], series, side) > distance(values[farthest], series, side)) {
        farthest = i;
      }
    }
    double statistic = distance(values[farthest], series, side) / Math.sqrt(series.variance());
    double critical = critical(values.length, significance, side);
    return Optional.of(
        new Finding(
            farthest, values[farthest], statistic, critical, significance, statistic > critical));
  }

  private static double distance(double value, SeriesStatistics series, Side side) {
    double above = value - series.mean();
    return switch (side) {
      case EITHER -> Math.abs(above);
      case HIGH -> above;
      case LOW -> -above;
    };
  }
}
