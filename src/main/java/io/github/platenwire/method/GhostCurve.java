package io.github.platenwire.method;

import java.util.List;

/**
 * An earlier specimen's width against load, to hold a running test beside. Immutable.
 *
 * @param specimen whose it is
 * @param points by rising load
 */
public record GhostCurve(String specimen, List<VirginTable.Point> points) {
  /** Makes the list immutable. */
  public GhostCurve {
    points = List.copyOf(points);
  }

  /** Its width at a load, millimetres, linear in between; NaN beyond its ends. */
  public double widthAt(double newtons) {
    int low = 0;
    int high = points.size() - 1;
    if (high < 1 || !(newtons >= points.get(0).newtons()) || newtons > points.get(high).newtons()) {
      return Double.NaN;
    }
    while (high - low > 1) {
      int middle = (low + high) >>> 1;
      if (points.get(middle).newtons() <= newtons) {
        low = middle;
      } else {
        high = middle;
      }
    }
    VirginTable.Point from = points.get(low);
    VirginTable.Point to = points.get(high);
    double share = (newtons - from.newtons()) / (to.newtons() - from.newtons());
    return from.millimetres() + (to.millimetres() - from.millimetres()) * share;
  }
}
