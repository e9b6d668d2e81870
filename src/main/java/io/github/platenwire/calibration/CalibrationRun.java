package io.github.platenwire.calibration;

import java.util.List;
import java.util.OptionalDouble;

/**
 * One run of a calibration over its steps. Immutable.
 *
 * @param ascending whether the applied values rise; else they fall
 * @param points in the order in which they were applied
 * @param zeroAfter what the device showed after everything was taken off again, if noted
 */
public record CalibrationRun(
    boolean ascending, List<CalibrationPoint> points, OptionalDouble zeroAfter) {
  /** Makes the list immutable. */
  public CalibrationRun {
    points = List.copyOf(points);
  }
}
