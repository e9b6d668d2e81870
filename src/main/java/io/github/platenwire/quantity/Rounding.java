package io.github.platenwire.quantity;

import java.math.BigDecimal;
import java.math.RoundingMode;

/**
 * Rounding to a step, ties to the even multiple, in decimal and in one go (ISO 80000-1 Annex B rule
 * A; ASTM E29 rounding method: both from memory). Doubles are taken at their shortest decimal text,
 * so that a recorded 27.45 is the tie it looks like and not the binary number just below it.
 * Stateless.
 */
public final class Rounding {
  private Rounding() {}

  /**
   * The multiple of a step nearest to a decimal value; of two equally near, the even one.
   *
   * @param value what is rounded
   * @param step the step, such as 0.1 or 10; must be positive
   * @return with exactly the decimals of the step, never in scientific notation when printed plain
   */
  public static BigDecimal halfEven(BigDecimal value, BigDecimal step) {
    if (step.signum() <= 0) {
      throw new IllegalArgumentException("step must be positive, step=" + step);
    }
    BigDecimal whole = value.divide(step, 0, RoundingMode.HALF_EVEN);
    return whole.multiply(step).setScale(Math.max(0, step.scale()), RoundingMode.UNNECESSARY);
  }

  /**
   * As {@link #halfEven(BigDecimal, BigDecimal)}, on the shortest decimal text of a finite double.
   */
  public static BigDecimal halfEven(double value, BigDecimal step) {
    return halfEven(BigDecimal.valueOf(value), step);
  }
}
