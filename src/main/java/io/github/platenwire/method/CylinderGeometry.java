package io.github.platenwire.method;

import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A cylinder's dimensions and what follows from them. Immutable.
 *
 * @param diameters as measured, millimetres
 * @param meanDiameter their mean, millimetres, not rounded
 * @param length length, millimetres
 */
record CylinderGeometry(List<Double> diameters, double meanDiameter, double length) {

  /** The geometry of a specimen that has diameters and a length. */
  static Optional<CylinderGeometry> of(Specimen specimen) {
    List<Double> diameters = specimen.diametersMillimetres();
    OptionalDouble mean = diameters.stream().mapToDouble(Double::doubleValue).average();
    if (mean.isEmpty() || specimen.lengthMillimetres().isEmpty() || !(mean.getAsDouble() > 0)) {
      return Optional.empty();
    }
    return Optional.of(
        new CylinderGeometry(
            diameters, mean.getAsDouble(), specimen.lengthMillimetres().getAsDouble()));
  }

  /** Greatest less least diameter, in percent of the least. */
  static double differencePercent(List<Double> diameters) {
    double least = Collections.min(diameters);
    return (Collections.max(diameters) - least) / least * 100;
  }

  /** Cross-section, square millimetres. */
  double area() {
    return Math.PI * meanDiameter * meanDiameter / 4;
  }

  /** Length over mean diameter. */
  double lengthRatio() {
    return length / meanDiameter;
  }

  /** Density, kilograms a cubic metre. */
  double density(double massKilograms) {
    return massKilograms / (area() * length) * 1e9;
  }

  /** Standard deviation of the diameters, millimetres; 0 for a single one. */
  double diameterDeviation() {
    if (diameters.size() < 2) {
      return 0;
    }
    double squares = 0;
    for (double diameter : diameters) {
      squares += (diameter - meanDiameter) * (diameter - meanDiameter);
    }
    return Math.sqrt(squares / (diameters.size() - 1));
  }
}
