package io.github.platenwire.commission;

import io.github.platenwire.device.DeviceDefinition.ValueField;
import io.github.platenwire.quantity.Unit;
import io.github.platenwire.reading.Quality;
import java.math.BigDecimal;
import java.math.MathContext;

/** A reading in words. Stateless. */
public final class ReadingText {
  /** More than any indicator shows. */
  private static final int DIGITS = 9;

  private ReadingText() {}

  /**
   * Such as {@code load = 123.4 kN unstable}; the quality only where it is not {@code ok}.
   *
   * @param value in {@code unit}; NaN if there is none
   */
  public static String words(ValueField field, double value, Unit unit, Quality quality) {
    String number = Double.isNaN(value) ? "none" : number(value) + " " + unit.symbol();
    String mark = quality == Quality.OK ? "" : "  " + quality.word();
    return field.name() + " = " + number + mark;
  }

  /** A finite number to nine significant digits, without exponent where that is not long. */
  public static String number(double value) {
    // a number that came as a 32-bit float is told by as many digits as that has
    BigDecimal shortest =
        (float) value == value
            ? new BigDecimal(Float.toString((float) value))
            : new BigDecimal(value);
    BigDecimal rounded = shortest.round(new MathContext(DIGITS)).stripTrailingZeros();
    double size = Math.abs(value);
    boolean plain = size == 0 || (size >= 1e-6 && size < 1e12);
    return plain ? rounded.toPlainString() : rounded.toString();
  }
}
