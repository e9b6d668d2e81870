package io.github.platenwire.method;

import java.util.List;

/**
 * Width of a crack against load where each load was reached for the first time, as a small table.
 * Immutable.
 *
 * @param gauges names of the gauges, in the order of the bits of {@link Point#mask}
 * @param points by rising load
 */
public record VirginTable(List<String> gauges, List<Point> points) {
  /** Makes the lists immutable. */
  public VirginTable {
    gauges = List.copyOf(gauges);
    points = List.copyOf(points);
  }

  /**
   * One place of the curve.
   *
   * @param newtons load
   * @param millimetres width
   * @param mask the gauges on which it rests, bit 0 for the first
   * @param row number of the raw row at which the load was reached
   */
  public record Point(double newtons, double millimetres, int mask, long row) {}
}
