package io.github.platenwire.commission;

import io.github.platenwire.device.DeviceDefinition.ValueField;
import io.github.platenwire.quantity.Unit;
import io.github.platenwire.reading.Quality;
import java.math.BigDecimal;
import java.math.MathContext;

/** A reading in words. Stateless. */
public final class ReadingText {
  /** More than any indicator shows; the noise of 32-bit floats begins at the eighth. */
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
    BigDecimal rounded = new BigDecimal(value).round(new MathContext(DIGITS)).stripTrailingZeros();
    double size = Math.abs(value);
    boolean plain = size == 0 || (size >= 1e-6 && size < 1e12);
    return plain ? rounded.toPlainString() : rounded.toString();
  }
}
