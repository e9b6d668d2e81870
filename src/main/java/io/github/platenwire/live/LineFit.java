package io.github.platenwire.live;

/**
 * A straight line through points by ordinary least squares, from running means and sums of squares
 * about them. Not thread-safe.
 */
final class LineFit {
  private long count;
  private double meanX;
  private double meanY;
  private double sumXx;
  private double sumXy;
  private double sumYy;

  void add(double x, double y) {
    count++;
    double fromX = x - meanX;
    double fromY = y - meanY;
    meanX += fromX / count;
    meanY += fromY / count;
    sumXx += fromX * (x - meanX);
    sumXy += fromX * (y - meanY);
    sumYy += fromY * (y - meanY);
  }

  /** Takes all points of another fit, which starts anew. */
  void absorb(LineFit other) {
    if (other.count == 0) {
      return;
    }
    long all = count + other.count;
    double fromX = other.meanX - meanX;
    double fromY = other.meanY - meanY;
    double weight = (double) count * other.count / all;
    sumXx += other.sumXx + fromX * fromX * weight;
    sumXy += other.sumXy + fromX * fromY * weight;
    sumYy += other.sumYy + fromY * fromY * weight;
    meanX += fromX * other.count / all;
    meanY += fromY * other.count / all;
    count = all;
    other.clear();
  }

  private void clear() {
    count = 0;
    meanX = 0;
    meanY = 0;
    sumXx = 0;
    sumXy = 0;
    sumYy = 0;
  }

  long count() {
    return count;
  }

  double slope() {
    return sumXx > 0 ? sumXy / sumXx : Double.NaN;
  }

  double at(double x) {
    return meanY + slope() * (x - meanX);
  }

  /** Standard deviation of the points about the line; NaN with fewer than 3. */
  double residual() {
    if (count < 3 || !(sumXx > 0)) {
      return Double.NaN;
    }
    return Math.sqrt(Math.max(0, sumYy - sumXy * sumXy / sumXx) / (count - 2));
  }

  /** Variance of the slope for points of which only {@code share} are independent. */
  double slopeVariance(double noise, double share) {
    return noise * noise / (sumXx * share);
  }

  /** Variance of the line at x for points of which only {@code share} are independent. */
  double variance(double x, double noise, double share) {
    double from = x - meanX;
    return noise * noise / share * (1.0 / count + from * from / sumXx);
  }
}
