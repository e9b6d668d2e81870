package io.github.platenwire.study;

/**
 * How many times one mean is another, first over second, with Fieller's interval. Immutable.
 *
 * @param ratio first mean over second mean
 * @param nFirst specimens in the first series
 * @param nSecond specimens in the second series
 * @param degreesOfFreedom those of the t quantile; 0 when no set is given
 * @param set the ratios that the data leave standing: with two ends, with fewer, or the reason why
 *     none is given
 */
public record FiellerRatio(
    double ratio, int nFirst, int nSecond, double degreesOfFreedom, ConfidenceSet set) {

  /** The ratio with its 95 % interval, the spreads not supposed equal. */
  public static FiellerRatio unequalVariances(SeriesStatistics first, SeriesStatistics second) {
    return unequalVariances(first, second, Values.LEVEL);
  }

  /**
   * The ratio with its interval, each series keeping its own spread. The degrees of freedom are
   * those of Welch–Satterthwaite for first − ρ·second at the ratio ρ found: (v₁ + ρ²v₂)² / (v₁²/ν₁
   * + ρ⁴v₂²/ν₂), with v the squared standard errors.
   *
   * @param level confidence level between 0 and 1; for k series against one reference, 1 − 0.05/k
   *     holds for all of them at once (Bonferroni)
   * @throws IllegalArgumentException if the second mean is zero
   */
  public static FiellerRatio unequalVariances(
      SeriesStatistics first, SeriesStatistics second, double level) {
    double ratio = ratio(first, second, level);
    if (tooFew(first, second)) {
      return withoutSet(ratio, first, second);
    }
    double degrees =
        StudentT.welchDegreesOfFreedom(
            first.meanVariance(),
            first.degreesOfFreedom(),
            ratio * ratio * second.meanVariance(),
            second.degreesOfFreedom());
    return solve(ratio, first, first.meanVariance(), second, second.meanVariance(), degrees, level);
  }

  /**
   * The ratio with its interval, one spread supposed for both series and estimated from both.
   *
   * @param level confidence level between 0 and 1
   * @throws IllegalArgumentException if the second mean is zero
   */
  public static FiellerRatio pooled(SeriesStatistics first, SeriesStatistics second, double level) {
    double ratio = ratio(first, second, level);
    if (tooFew(first, second)) {
      return withoutSet(ratio, first, second);
    }
    int degrees = first.degreesOfFreedom() + second.degreesOfFreedom();
    double variance = (first.sumOfSquares() + second.sumOfSquares()) / degrees;
    return solve(ratio, first, variance / first.n(), second, variance / second.n(), degrees, level);
  }

  /**
   * The ratio with its set for a spread and a quantile from elsewhere, such as those of several
   * series at once. Both series must have three specimens.
   */
  static FiellerRatio withSpread(
      SeriesStatistics first, SeriesStatistics second, double variance, double degrees, double t) {
    ConfidenceSet set =
        Fieller.solve(first.mean(), variance / first.n(), second.mean(), variance / second.n(), t);
    return new FiellerRatio(first.mean() / second.mean(), first.n(), second.n(), degrees, set);
  }

  private static double ratio(SeriesStatistics first, SeriesStatistics second, double level) {
    Values.requireLevel(level);
    if (second.mean() == 0) {
      throw new IllegalArgumentException("no ratio to a mean of zero");
    }
    return first.mean() / second.mean();
  }

  private static boolean tooFew(SeriesStatistics first, SeriesStatistics second) {
    return !first.allowsVerdict() || !second.allowsVerdict();
  }

  private static FiellerRatio withoutSet(
      double ratio, SeriesStatistics first, SeriesStatistics second) {
    ConfidenceSet none = new ConfidenceSet.NotGiven("fewer than three specimens in a series");
    return new FiellerRatio(ratio, first.n(), second.n(), 0, none);
  }

  private static FiellerRatio solve(
      double ratio,
      SeriesStatistics first,
      double firstVariance,
      SeriesStatistics second,
      double secondVariance,
      double degrees,
      double level) {
    double t = StudentT.twoSided(level, degrees);
    ConfidenceSet set =
        Fieller.solve(first.mean(), firstVariance, second.mean(), secondVariance, t);
    return new FiellerRatio(ratio, first.n(), second.n(), degrees, set);
  }
}
