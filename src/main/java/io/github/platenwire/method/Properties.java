package io.github.platenwire.method;

import io.github.platenwire.live.ZeroFinder;
import io.github.platenwire.quantity.Unit;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;

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

  /** The age, where it is known. */
  static Optional<Section.Property> age(SpecimenAge age, BigDecimal step) {
    return age.days().isEmpty()
        ? Optional.empty()
        : Optional.of(
            new Section.Property(
                "age",
                "Age at test",
                age.days().getAsDouble(),
                Unit.DAY,
                Unit.DAY,
                Steps.same(step)));
  }

  /** The zero of the load, where one was found. */
  static Optional<MethodResult.Figure> zero(ZeroFinder zero, Steps steps) {
    if (zero.readings() == 0) {
      return Optional.empty();
    }
    double kilonewtons = Unit.KILONEWTON.fromBase(zero.zero());
    return Optional.of(
        new MethodResult.Figure(
            "zero",
            "Load at zero, taken off",
            kilonewtons,
            Unit.KILONEWTON,
            BothUnits.rounded(kilonewtons, steps.si()),
            Unit.POUND_FORCE,
            BothUnits.rounded(Unit.POUND_FORCE.fromBase(zero.zero()), steps.inchPound()),
            Optional.empty(),
            Optional.empty(),
            rows(zero)));
  }

  /** The first and the last row that a zero rests on; empty where there is none. */
  static List<Long> rows(ZeroFinder zero) {
    return zero.readings() == 0 ? List.of() : List.of(zero.firstSeq(), zero.lastSeq());
  }
}
