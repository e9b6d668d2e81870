package io.github.platenwire.study;

import io.github.platenwire.statistics.Values;

/**
 * The range of companion specimens against the greatest range that the precision of the method lets
 * expect in 95 of 100 sets (ASTM C670). Immutable.
 *
 * @param n number of companions, at least 2
 * @param rangeOfMean greatest less smallest as a share of the mean (0.05 is 5 %)
 * @param greatestExpected the limit as a share of the mean
 */
public record CompanionRange(int n, double rangeOfMean, double greatestExpected) {

  /**
   * The range of companions, judged by C670's multiplier for their number.
   *
   * @param coefficientOfVariation the method's own, as a share (0.024 for 2.4 %), out of the
   *     method's precision statement
   * @param values at least two, above zero
   */
  public static CompanionRange of(double coefficientOfVariation, double... values) {
    Values.requirePositive("coefficient of variation", coefficientOfVariation);
    Values.requirePositive("value", values);
    SeriesStatistics series = SeriesStatistics.of(values);
    double low = values[0];
    double high = values[0];
    for (double value : values) {
      low = Math.min(low, value);
      high = Math.max(high, value);
    }
    double limit = multiplier(values.length) * coefficientOfVariation;
    return new CompanionRange(values.length, (high - low) / series.mean(), limit);
  }

  /** Whether the range is within the limit. */
  public boolean withinLimit() {
    return rangeOfMean <= greatestExpected;
  }

  /**
   * How many standard deviations n results may lie apart in 95 of 100 cases: the 95 % point of the
   * studentized range with the spread known. ASTM C670 prints it to one decimal (2.8, 3.3, 3.6 …;
   * from memory); here it is not rounded.
   *
   * @param n number of results, at least 2
   */
  public static double multiplier(int n) {
    return StudentizedRange.quantile(Values.LEVEL, n, Double.POSITIVE_INFINITY);
  }
}
