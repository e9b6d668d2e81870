package io.github.platenwire.statistics;

/**
 * A straight line y = a + b·x by least squares, with what follows from its residuals. Computed
 * about the centre of the points. Immutable.
 *
 * @param n number of points, at least 3, with at least two different x
 * @param meanX centre of the points
 * @param meanY centre of the points
 * @param slope b, in units of y per unit of x
 * @param sumOfSquaresX Σ(x − mean x)²
 * @param residualSquares Σ(y − a − b·x)²
 * @param sumOfSquaresY Σ(y − mean y)²
 */
public record LineFit(
    int n,
    double meanX,
    double meanY,
    double slope,
    double sumOfSquaresX,
    double residualSquares,
    double sumOfSquaresY) {

  /**
   * The line through some points.
   *
   * @throws IllegalArgumentException if there are fewer than three points, all x are the same, or a
   *     value is not finite
   */
  public static LineFit of(double[] x, double[] y) {
    Values.requireSameLength("x", x.length, "y", y.length);
    Values.requireFinite("x", x);
    Values.requireFinite("y", y);
    if (x.length < 3) {
      throw new IllegalArgumentException("a line needs at least three points, n=" + x.length);
    }
    double meanX = Values.mean(x);
    double meanY = Values.mean(y);
    double squaresX = productSum(x, meanX, x, meanX);
    if (squaresX == 0) {
      throw new IllegalArgumentException("a line needs two different x, all are " + x[0]);
    }
    double slope = productSum(x, meanX, y, meanY) / squaresX;
    double[] squares = new double[x.length];
    for (int i = 0; i < x.length; i++) {
      double residual = (y[i] - meanY) - slope * (x[i] - meanX);
      squares[i] = residual * residual;
    }
    double squaresY = productSum(y, meanY, y, meanY);
    return new LineFit(x.length, meanX, meanY, slope, squaresX, Values.sum(squares), squaresY);
  }

  private static double productSum(double[] x, double meanX, double[] y, double meanY) {
    double[] products = new double[x.length];
    for (int i = 0; i < x.length; i++) {
      products[i] = (x[i] - meanX) * (y[i] - meanY);
    }
    return Values.sum(products);
  }

  /** The value of the line at x. */
  public double at(double x) {
    return meanY + slope * (x - meanX);
  }

  /** The value a of the line at x = 0. */
  public double intercept() {
    return at(0);
  }

  /** Points less two. */
  public int degreesOfFreedom() {
    return n - 2;
  }

  /** Standard deviation of the residuals, in the unit of y. */
  public double residualDeviation() {
    return Math.sqrt(residualVariance());
  }

  /** Standard error of the slope. */
  public double slopeStandardError() {
    return Math.sqrt(slopeVariance());
  }

  /** Standard error of the line at x; at 0 that of the intercept. */
  public double standardErrorAt(double x) {
    double away = x - meanX;
    return Math.sqrt(residualVariance() * (1.0 / n + away * away / sumOfSquaresX));
  }

  /**
   * The interval of the slope.
   *
   * @param level confidence level between 0 and 1
   */
  public Interval slopeInterval(double level) {
    return Interval.around(slope, t(level) * slopeStandardError());
  }

  /**
   * The interval of the line at x, not of a single further reading.
   *
   * @param level confidence level between 0 and 1
   */
  public Interval intervalAt(double x, double level) {
    return Interval.around(at(x), t(level) * standardErrorAt(x));
  }

  /** Share of the squares of y that the line explains; 1 when all y are the same. */
  public double rSquared() {
    return sumOfSquaresY == 0 ? 1 : 1 - residualSquares / sumOfSquaresY;
  }

  /** Correlation of x and y; 0 when all y are the same. */
  public double correlation() {
    return sumOfSquaresY == 0 ? 0 : slope * Math.sqrt(sumOfSquaresX / sumOfSquaresY);
  }

  /**
   * Where the line itself reaches y: the x that the data leave standing (inverse prediction by
   * Fieller's theorem about the centre of the points, where height and slope are independent).
   *
   * @param level confidence level between 0 and 1
   */
  public ConfidenceSet whereReached(double y, double level) {
    ConfidenceSet fromCentre =
        Fieller.solve(y - meanY, residualVariance() / n, slope, slopeVariance(), t(level));
    if (fromCentre instanceof ConfidenceSet.Bounded bounded) {
      Interval interval = bounded.interval();
      return new ConfidenceSet.Bounded(
          new Interval(meanX + interval.low(), meanX + interval.high()));
    }
    if (fromCentre instanceof ConfidenceSet.Unbounded open) {
      return new ConfidenceSet.Unbounded(meanX + open.upTo(), meanX + open.from());
    }
    return fromCentre;
  }

  private double residualVariance() {
    return residualSquares / degreesOfFreedom();
  }

  private double slopeVariance() {
    return residualVariance() / sumOfSquaresX;
  }

  private double t(double level) {
    return StudentT.twoSided(Values.requireLevel(level), degreesOfFreedom());
  }
}
