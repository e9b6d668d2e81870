package io.github.platenwire.record;

import static io.github.platenwire.toml.TomlText.number;
import static io.github.platenwire.toml.TomlText.quote;

import io.github.platenwire.calibration.CalibrationPoint;
import io.github.platenwire.calibration.Correction;
import io.github.platenwire.calibration.CorrectionKind;
import io.github.platenwire.calibration.PolynomialCorrection;
import io.github.platenwire.calibration.ScaleCorrection;
import io.github.platenwire.calibration.TableCorrection;
import io.github.platenwire.toml.TomlException;
import io.github.platenwire.toml.TomlSection;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * A channel's correction in a raw file's head: the very numbers that were used, so that no later
 * way of fitting can change a value. Stateless.
 */
final class HeaderCorrection {
  private static final String KIND = "correction";
  private static final String POINTS = "correction-points";
  private static final String COEFFICIENTS = "correction-coefficients";
  private static final String RANGE = "correction-range";

  private HeaderCorrection() {}

  /** The keys with their TOML text, in order. */
  static Map<String, String> write(Correction correction) {
    Map<String, String> keys = new LinkedHashMap<>();
    if (correction instanceof ScaleCorrection scale) {
      keys.put("scale", number(scale.factor()));
    } else if (correction instanceof TableCorrection table) {
      keys.put(KIND, quote(CorrectionKind.TABLE.word()));
      keys.put(
          POINTS,
          list(
              table.points().stream()
                  .map(point -> pair(point.indicated(), point.applied()))
                  .toList()));
    } else if (correction instanceof PolynomialCorrection polynomial) {
      keys.put(KIND, quote(CorrectionKind.POLYNOMIAL.word()));
      keys.put(COEFFICIENTS, list(polynomial.coefficients().stream().map(c -> number(c)).toList()));
      keys.put(RANGE, pair(polynomial.low(), polynomial.high()));
    }
    return keys;
  }

  private static String pair(double first, double second) {
    return list(List.of(number(first), number(second)));
  }

  private static String list(List<String> items) {
    return "[" + String.join(", ", items) + "]";
  }

  /** The correction that the keys of a channel tell. */
  static Correction parse(TomlSection section) throws TomlException {
    if (!section.has(KIND)) {
      return checked(section, "scale", section.number("scale"), HeaderCorrection::scale);
    }
    String table = CorrectionKind.TABLE.word();
    String polynomial = CorrectionKind.POLYNOMIAL.word();
    return section.choice(KIND, table, polynomial).equals(table)
        ? checked(section, POINTS, section.numberRows(POINTS), HeaderCorrection::table)
        : checked(section, COEFFICIENTS, section, HeaderCorrection::polynomial);
  }

  private static Correction scale(double factor) {
    return new ScaleCorrection(factor);
  }

  private static Correction table(List<List<Double>> rows) {
    List<CalibrationPoint> points = new ArrayList<>();
    for (List<Double> row : rows) {
      if (row.size() != 2) {
        throw new IllegalArgumentException("a point of a table is [indicated, applied]");
      }
      points.add(new CalibrationPoint(row.get(1), row.get(0)));
    }
    return new TableCorrection(points);
  }

  private static Correction polynomial(TomlSection section) throws TomlException {
    List<Double> range = section.numbers(RANGE);
    if (range.size() != 2) {
      throw section.error(RANGE, "'" + RANGE + "' must be two numbers, [low, high]");
    }
    return new PolynomialCorrection(section.numbers(COEFFICIENTS), range.get(0), range.get(1));
  }

  @FunctionalInterface
  private interface Making<T> {
    Correction of(T from) throws TomlException;
  }

  private static <T> Correction checked(TomlSection section, String key, T from, Making<T> making)
      throws TomlException {
    try {
      return making.of(from);
    } catch (IllegalArgumentException e) {
      throw section.error(key, String.valueOf(e.getMessage()));
    }
  }
}
