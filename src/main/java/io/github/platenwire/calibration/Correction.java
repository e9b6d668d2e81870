package io.github.platenwire.calibration;

import io.github.platenwire.quantity.Unit;

/**
 * From the value that a device shows to the value that is true. The same doubles each time. Every
 * implementation is immutable and safe for any thread.
 */
public sealed interface Correction permits ScaleCorrection, TableCorrection, PolynomialCorrection {

  /** Leaves each value as it is. */
  Correction NONE = new ScaleCorrection(1);

  /**
   * The corrected value.
   *
   * @param indicated what the device shows, in the unit of this correction; NaN gives NaN
   */
  double apply(double indicated);

  /**
   * Whether a value lies where this correction was calibrated. What lies outside is still
   * corrected, but must be marked.
   *
   * @param indicated what the device shows, in the unit of this correction
   */
  boolean covers(double indicated);

  /**
   * The same correction for values in another unit of the same quantity.
   *
   * @param from the unit of this correction
   * @param to the unit wanted
   * @throws IllegalArgumentException if the two units measure different quantities
   */
  Correction inUnit(Unit from, Unit to);

  /** What it does, for a person. */
  String words();
}
