package io.github.platenwire.calibration;

import io.github.platenwire.quantity.Unit;

/**
 * Multiplies by a factor. Immutable; safe for any thread.
 *
 * @param factor finite, not 0; 1 leaves each value as it is
 */
public record ScaleCorrection(double factor) implements Correction {
  /**
   * Checks the factor.
   *
   * @throws IllegalArgumentException if it is 0 or not finite
   */
  public ScaleCorrection {
    if (factor == 0 || !Double.isFinite(factor)) {
      throw new IllegalArgumentException("a scale must be finite and not 0, factor=" + factor);
    }
  }

  @Override
  public double apply(double indicated) {
    return factor == 1 ? indicated : indicated * factor;
  }

  @Override
  public boolean covers(double indicated) {
    return true;
  }

  @Override
  public Correction inUnit(Unit from, Unit to) {
    from.convert(factor, to);
    return this;
  }

  @Override
  public String words() {
    return factor == 1 ? "none" : "scale, times " + Plain.digits(factor, 7);
  }
}
