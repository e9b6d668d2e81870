package io.github.platenwire.live;

/**
 * What one gauge can show and do. Immutable. Millimetres.
 *
 * @param face 0 or 1 for the face of the specimen on which it sits; its difference is the rotation
 * @param rangeLow least value that it can show
 * @param rangeHigh greatest value that it can show
 * @param resolution its smallest step; 0 if unknown
 * @param greatestSlope greatest rate at which it can move by itself, millimetres a second; what is
 *     faster is a jump
 * @param quietSpread greatest less least reading while it is quiet, at most
 */
public record GaugeLimits(
    int face,
    double rangeLow,
    double rangeHigh,
    double resolution,
    double greatestSlope,
    double quietSpread) {
  /**
   * Checks the ranges.
   *
   * @throws IllegalArgumentException if a number is out of range
   */
  public GaugeLimits {
    if (face != 0 && face != 1) {
      throw new IllegalArgumentException("face must be 0 or 1, face=" + face);
    }
    if (!(rangeLow < rangeHigh)
        || !(resolution >= 0)
        || !(greatestSlope > 0)
        || !(quietSpread > 0)) {
      throw new IllegalArgumentException(
          "range must rise, resolution not be below 0, slope and quiet spread above 0, rangeLow="
              + rangeLow
              + " rangeHigh="
              + rangeHigh
              + " resolution="
              + resolution
              + " greatestSlope="
              + greatestSlope
              + " quietSpread="
              + quietSpread);
    }
  }
}
