package io.github.platenwire.method;

import java.util.OptionalDouble;

/** The face of a specimen that stands in the water. Stateless. */
final class ExposedFace {
  private ExposedFace() {}

  /** Its area: of the mean diameter, else width times depth; empty where neither is given. */
  static OptionalDouble squareMillimetres(Specimen specimen) {
    OptionalDouble diameter =
        specimen.diametersMillimetres().stream().mapToDouble(Double::doubleValue).average();
    if (diameter.isPresent()) {
      double mean = diameter.getAsDouble();
      return OptionalDouble.of(Math.PI * mean * mean / 4);
    }
    OptionalDouble width = specimen.dimension(Dimension.WIDTH);
    OptionalDouble depth = specimen.dimension(Dimension.DEPTH);
    return width.isPresent() && depth.isPresent()
        ? OptionalDouble.of(width.getAsDouble() * depth.getAsDouble())
        : OptionalDouble.empty();
  }
}
