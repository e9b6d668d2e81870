package io.github.platenwire.calibration;

/**
 * One reading of a calibration: what was applied and what the device showed. Immutable.
 *
 * @param applied the true value, by the reference standard
 * @param indicated what the device showed, in the same unit
 */
public record CalibrationPoint(double applied, double indicated) {}
