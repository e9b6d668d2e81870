package io.github.platenwire.statistics;

/**
 * All values from one end to the other, both ends included. Either end may be infinite. Immutable.
 *
 * @param low lower end, in the unit of the figure it belongs to
 * @param high upper end, not below the lower one
 */
public record Interval(double low, double high) {
  /** Refuses ends that are no numbers or stand in the wrong order. */
  public Interval {
    if (!(low <= high)) {
      throw new IllegalArgumentException(
          "an interval runs from low to high, low=" + low + " high=" + high);
    }
  }

  /** The interval reaching equally far to both sides of a value. */
  public static Interval around(double centre, double halfWidth) {
    return new Interval(centre - halfWidth, centre + halfWidth);
  }

  /** Whether a value lies inside or on an end. */
  public boolean contains(double value) {
    return low <= value && value <= high;
  }

  /** Half of the distance between the ends. */
  public double halfWidth() {
    return (high - low) / 2;
  }
}
