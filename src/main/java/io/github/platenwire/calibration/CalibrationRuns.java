package io.github.platenwire.calibration;

import io.github.platenwire.quantity.Quantity;
import io.github.platenwire.quantity.Unit;
import io.github.platenwire.toml.TomlException;
import io.github.platenwire.toml.TomlSection;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * All runs of one calibration. Immutable.
 *
 * @param unit of every value
 * @param resolution the smallest step that the device shows, if known
 * @param gaugeLength of an extensometer, if it is known
 * @param runs at least one ascending; all ascending ones have the same steps
 */
public record CalibrationRuns(
    Unit unit,
    OptionalDouble resolution,
    Optional<GaugeLength> gaugeLength,
    List<CalibrationRun> runs) {
  /** Makes the list immutable. */
  public CalibrationRuns {
    runs = List.copyOf(runs);
  }

  /** The runs of a device without a gauge length. */
  public CalibrationRuns(Unit unit, OptionalDouble resolution, List<CalibrationRun> runs) {
    this(unit, resolution, Optional.empty(), runs);
  }

  /** The keys of a calibration file that {@link #parse} reads. */
  public static List<String> keys() {
    return List.of("unit", "resolution", "gauge-length", "gauge-length-measured", "run");
  }

  /** The runs whose applied values rise. */
  public List<CalibrationRun> ascending() {
    return runs.stream().filter(CalibrationRun::ascending).toList();
  }

  /** The runs whose applied values fall. */
  public List<CalibrationRun> descending() {
    return runs.stream().filter(run -> !run.ascending()).toList();
  }

  /** How many steps each ascending run has. */
  public int steps() {
    return ascending().get(0).points().size();
  }

  /** The mean of all ascending runs at a step. */
  public CalibrationPoint mean(int step) {
    double applied = 0;
    double indicated = 0;
    List<CalibrationRun> up = ascending();
    for (CalibrationRun run : up) {
      applied += run.points().get(step).applied();
      indicated += run.points().get(step).indicated();
    }
    return new CalibrationPoint(applied / up.size(), indicated / up.size());
  }

  /** Every reading of the ascending runs. */
  public List<CalibrationPoint> readings() {
    List<CalibrationPoint> readings = new ArrayList<>();
    ascending().forEach(run -> readings.addAll(run.points()));
    return readings;
  }

  /**
   * Reads {@code unit}, {@code resolution}, the gauge length and every {@code [[run]]} of a
   * calibration file.
   *
   * @throws TomlException if a key or value is wrong, with line and column
   */
  public static CalibrationRuns parse(TomlSection file) throws TomlException {
    Unit unit = unit(file);
    OptionalDouble resolution = file.optionalNumber("resolution");
    if (resolution.isPresent() && resolution.getAsDouble() <= 0) {
      throw file.error("resolution", "'resolution' must be greater than 0");
    }
    Optional<GaugeLength> gaugeLength = GaugeLength.parse(file, unit.quantity() == Quantity.LENGTH);
    return new CalibrationRuns(unit, resolution, gaugeLength, RunParser.parse(file));
  }

  private static Unit unit(TomlSection file) throws TomlException {
    String symbol = file.string("unit");
    for (Quantity quantity : List.of(Quantity.FORCE, Quantity.LENGTH)) {
      try {
        return Unit.parse(symbol, quantity);
      } catch (IllegalArgumentException e) {
        if (symbol.equals(Unit.POUND.symbol())) {
          throw file.error("unit", String.valueOf(e.getMessage()));
        }
      }
    }
    throw file.error(
        "unit",
        "'"
            + symbol
            + "' is no unit of force or length; possible: N, kN, MN, lbf, kip, kgf, tf, mm, µm, cm,"
            + " m, in, mil");
  }
}
