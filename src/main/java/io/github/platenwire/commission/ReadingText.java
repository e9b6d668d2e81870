package io.github.platenwire.commission;

import io.github.platenwire.device.DeviceDefinition.ValueField;
import io.github.platenwire.quantity.Unit;
import io.github.platenwire.reading.Quality;
import java.math.BigDecimal;

/** A reading in words. Stateless. */
public final class ReadingText {
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

  /** A finite number without exponent where that is not longer than fifteen digits. */
  public static String number(double value) {
    double size = Math.abs(value);
    boolean plain = size == 0 || (size >= 1e-6 && size < 1e12);
    return plain ? new BigDecimal(Double.toString(value)).toPlainString() : Double.toString(value);
  }
}
