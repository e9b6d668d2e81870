package io.github.platenwire.method;

import io.github.platenwire.quantity.Unit;
import java.math.BigDecimal;

/** The figures of a specimen, each in its units. Stateless. */
final class Properties {
  private static final double CUBIC_MILLIMETRES_PER_CUBIC_METRE = 1e9;

  private Properties() {}

  static Section.Property area(double squareMillimetres, Steps steps) {
    return new Section.Property(
        "area",
        "Cross-section",
        squareMillimetres,
        Unit.SQUARE_MILLIMETRE,
        Unit.SQUARE_INCH,
        steps);
  }

  static Section.Property size(String name, String title, double millimetres, Steps steps) {
    return new Section.Property(name, title, millimetres, Unit.MILLIMETRE, Unit.INCH, steps);
  }

  static Section.Property density(double kilograms, double cubicMillimetres, Steps steps) {
    return new Section.Property(
        "density",
        "Density",
        kilograms / cubicMillimetres * CUBIC_MILLIMETRES_PER_CUBIC_METRE,
        Unit.KILOGRAM_PER_CUBIC_METRE,
        Unit.POUND_PER_CUBIC_FOOT,
        steps);
  }

  static Section.Property plain(String name, String title, double value, BigDecimal step) {
    return new Section.Property(name, title, value, Unit.ONE, Unit.ONE, Steps.same(step));
  }
}
