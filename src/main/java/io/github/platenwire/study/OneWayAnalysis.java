package io.github.platenwire.study;

import io.github.platenwire.statistics.Values;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.hipparchus.distribution.continuous.ChiSquaredDistribution;

/**
 * How far several series differ among themselves, against the scatter within them (one-way analysis
 * of variance). Immutable.
 *
 * @param betweenSquares sum of squares between the series' means
 * @param betweenDegrees its degrees of freedom, series less one
 * @param withinSquares sum of squares within the series
 * @param withinDegrees its degrees of freedom, specimens less series
 * @param equalSpreadProbability p of Bartlett's test that all series have one spread
 */
record OneWayAnalysis(
    double betweenSquares,
    int betweenDegrees,
    double withinSquares,
    int withinDegrees,
    double equalSpreadProbability) {

  /**
   * The analysis of at least two series.
   *
   * @throws IllegalArgumentException if a series has a single specimen
   */
  static OneWayAnalysis of(List<SeriesStatistics> series) {
    if (series.size() < 2 || series.stream().anyMatch(one -> one.n() < 2)) {
      throw new IllegalArgumentException("needs two series of two specimens at least");
    }
    int total = series.stream().mapToInt(SeriesStatistics::n).sum();
    double within = Values.sum(each(series, SeriesStatistics::sumOfSquares));
    double first = series.get(0).mean();
    // Means taken relative to the first: leading digits that all share cancel exactly.
    double grand = Values.sum(each(series, one -> one.n() * (one.mean() - first))) / total;
    double between = Values.sum(each(series, one -> one.n() * square(one.mean() - first - grand)));
    int degrees = total - series.size();
    return new OneWayAnalysis(
        between, series.size() - 1, within, degrees, bartlett(series, within / degrees, degrees));
  }

  /** The ratio F of the mean squares; infinite when there is no scatter within. */
  double f() {
    return betweenSquares / betweenDegrees / withinVariance();
  }

  /** Share of all squares that lies between the series. */
  double rSquared() {
    return betweenSquares / (betweenSquares + withinSquares);
  }

  /** The pooled variance within the series. */
  double withinVariance() {
    return withinSquares / withinDegrees;
  }

  /** Bartlett's test for equal spread (Bartlett 1937), by the chi-squared distribution. */
  private static double bartlett(List<SeriesStatistics> series, double pooled, int degrees) {
    if (pooled == 0) {
      return 1;
    }
    if (series.stream().anyMatch(one -> one.sumOfSquares() == 0)) {
      return 0;
    }
    double logs =
        degrees * Math.log(pooled)
            - Values.sum(each(series, one -> one.degreesOfFreedom() * Math.log(one.variance())));
    double inverses = Values.sum(each(series, one -> 1.0 / one.degreesOfFreedom()));
    int less = series.size() - 1;
    double statistic = logs / (1 + (inverses - 1.0 / degrees) / (3 * less));
    return 1 - new ChiSquaredDistribution(less).cumulativeProbability(Math.max(0, statistic));
  }

  private static double square(double value) {
    return value * value;
  }

  private static double[] each(
      List<SeriesStatistics> series, ToDoubleFunction<SeriesStatistics> figure) {
    return series.stream().mapToDouble(figure).toArray();
  }
}
