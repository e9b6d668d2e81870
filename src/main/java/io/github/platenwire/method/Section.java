package io.github.platenwire.method;

import io.github.platenwire.quantity.Unit;
import java.util.List;
import java.util.Optional;

/**
 * What a load does to one specimen: the stress of its test is the load divided by a figure that
 * follows from its sizes. Immutable.
 *
 * @param newtonsPerMegapascal load at which the stress is 1 MPa; in compression the cross-section
 *     in square millimetres
 * @param sizes the sizes on which that rests
 * @param properties what is told of the specimen, in the order of the summary
 * @param correction by what the stress is multiplied to become the strength, if by anything
 * @param check whether the sizes are as the method asks, if it asks anything
 */
record Section(
    double newtonsPerMegapascal,
    List<Size> sizes,
    List<Property> properties,
    Optional<Factor> correction,
    Optional<MethodResult.Check> check) {
  Section {
    sizes = List.copyOf(sizes);
    properties = List.copyOf(properties);
  }

  double factor() {
    return correction.map(Factor::value).orElse(1.0);
  }

  /**
   * One size as measured.
   *
   * @param name for the budget, such as {@code diameter}
   * @param readings as measured, millimetres
   * @param exponent with which it enters the stress
   * @param stepMillimetres to what it is read
   */
  record Size(String name, List<Double> readings, double exponent, double stepMillimetres) {

    double mean() {
      return readings.stream().mapToDouble(Double::doubleValue).average().orElseThrow();
    }

    /** Standard deviation of the readings, millimetres; 0 for a single one. */
    double deviation() {
      if (readings.size() < 2) {
        return 0;
      }
      double mean = mean();
      double squares = 0;
      for (double reading : readings) {
        squares += (reading - mean) * (reading - mean);
      }
      return Math.sqrt(squares / (readings.size() - 1));
    }
  }

  /** A figure of the specimen in its SI unit, with the unit that is shown beside it. */
  record Property(
      String name, String title, double value, Unit unit, Unit inchPoundUnit, Steps steps) {

    MethodResult.Figure figure() {
      return new MethodResult.Figure(
          name,
          title,
          value,
          unit,
          BothUnits.rounded(value, steps.si()),
          inchPoundUnit,
          BothUnits.rounded(unit.convert(value, inchPoundUnit), steps.inchPound()),
          Optional.empty(),
          Optional.empty(),
          List.of());
    }
  }

  /** A factor and half the last digit to which it is printed. */
  record Factor(double value, double halfWidth) {}
}
