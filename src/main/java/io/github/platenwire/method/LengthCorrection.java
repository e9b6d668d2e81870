package io.github.platenwire.method;

import io.github.platenwire.toml.TomlException;
import io.github.platenwire.toml.TomlSection;
import java.util.List;
import java.util.Optional;

/**
 * Correction of the strength of short cylinders: points of length over diameter and factor in
 * rising order, linear in between. Immutable.
 */
record LengthCorrection(double atOrBelow, List<List<Double>> table, double halfWidth) {

  static LengthCorrection parse(TomlSection section, double leastRatio) throws TomlException {
    section.allow("at-or-below", "table", "half-width");
    List<List<Double>> points = section.numberRows("table");
    if (points.size() < 2) {
      throw section.error("table", "'table' must have at least two points [ratio, factor]");
    }
    for (int i = 0; i < points.size(); i++) {
      checkPoint(section, points, i);
    }
    if (points.get(0).get(0) > leastRatio) {
      throw section.error(
          "table", "the first point must reach down to length-ratio-least, " + leastRatio);
    }
    Numbers numbers = new Numbers(section);
    double atOrBelow = numbers.positive("at-or-below");
    if (atOrBelow > points.get(points.size() - 1).get(0)) {
      throw section.error(
          "at-or-below", "'at-or-below' must not lie beyond the table's last point");
    }
    return new LengthCorrection(atOrBelow, points, numbers.notNegative("half-width"));
  }

  private static void checkPoint(TomlSection section, List<List<Double>> points, int i)
      throws TomlException {
    List<Double> point = points.get(i);
    if (point.size() != 2 || point.get(1) <= 0) {
      throw section.error("table", "each point must be [ratio, factor], but there is " + point);
    }
    if (i > 0 && point.get(0) <= points.get(i - 1).get(0)) {
      throw section.error("table", "the ratios must rise, but " + point + " does not");
    }
  }

  /** The factor, or empty where no correction is called for. */
  Optional<Section.Factor> factor(double lengthRatio) {
    return lengthRatio > atOrBelow
        ? Optional.empty()
        : Optional.of(new Section.Factor(at(lengthRatio), halfWidth));
  }

  private double at(double lengthRatio) {
    for (int i = 1; i < table.size(); i++) {
      if (lengthRatio <= table.get(i).get(0)) {
        return between(table.get(i - 1), table.get(i), lengthRatio);
      }
    }
    return table.get(table.size() - 1).get(1);
  }

  private static double between(List<Double> left, List<Double> right, double at) {
    double part = (at - left.get(0)) / (right.get(0) - left.get(0));
    return part == 1 ? right.get(1) : left.get(1) + part * (right.get(1) - left.get(1));
  }
}
