/**
 * What a calibration says of a channel: relative errors, repeatability and the like out of applied
 * and indicated runs, the class that follows from limits kept as data in {@code
 * config/calibration}, and corrections with their residuals. Pure computation on plain values; it
 * knows nothing of labs, records or devices.
 */
@NullMarked
package io.github.platenwire.calibration;

import org.jspecify.annotations.NullMarked;
