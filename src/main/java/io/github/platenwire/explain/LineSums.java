package io.github.platenwire.explain;

import java.util.List;

/**
 * A straight line by least squares, worked out anew from its points: the sums that decide it.
 * Immutable.
 *
 * @param count number of points
 * @param meanX centre
 * @param meanY centre
 * @param xx sum of (x - mean x)²
 * @param xy sum of (x - mean x)(y - mean y)
 * @param yy sum of (y - mean y)²
 */
record LineSums(int count, double meanX, double meanY, double xx, double xy, double yy) {
  /** One point. */
  record Point(double x, double y) {}

  static LineSums of(List<Point> points) {
    int n = points.size();
    double meanX = points.stream().mapToDouble(Point::x).sum() / n;
    double meanY = points.stream().mapToDouble(Point::y).sum() / n;
    double xx = 0;
    double xy = 0;
    double yy = 0;
    for (Point point : points) {
      xx += (point.x - meanX) * (point.x - meanX);
      xy += (point.x - meanX) * (point.y - meanY);
      yy += (point.y - meanY) * (point.y - meanY);
    }
    return new LineSums(n, meanX, meanY, xx, xy, yy);
  }

  double slope() {
    return xy / xx;
  }

  double at(double x) {
    return meanY + slope() * (x - meanX);
  }

  /** Sum of the squares that the line leaves over. */
  double residualSquares() {
    return Math.max(0, yy - xy * xy / xx);
  }
}
