package io.github.platenwire.device;

import io.github.platenwire.quantity.Unit;
import io.github.platenwire.reading.Quality;
import java.util.Arrays;
import java.util.List;

/** What was found in one line; used again for the next. Not thread-safe. */
final class LineValues {
  private final Unit[] statedUnits;
  private final double[] values;
  private final Unit[] units;
  private final Quality[] qualities;
  private final DecimalScanner scanner = new DecimalScanner();

  LineValues(List<DeviceDefinition.ValueField> fields) {
    this.statedUnits = fields.stream().map(DeviceDefinition.ValueField::unit).toArray(Unit[]::new);
    this.values = new double[statedUnits.length];
    this.units = statedUnits.clone();
    this.qualities = new Quality[statedUnits.length];
    reset();
  }

  /** Forgets the last line. */
  void reset() {
    Arrays.fill(values, Double.NaN);
    Arrays.fill(qualities, Quality.OK);
    System.arraycopy(statedUnits, 0, units, 0, units.length);
  }

  DecimalScanner scanner() {
    return scanner;
  }

  void setValue(int index, double value) {
    values[index] = value;
  }

  void setUnit(int index, Unit unit) {
    units[index] = unit;
  }

  /** Takes a quality if it is worse than what was said before: over, then unstable, then ok. */
  void worsen(int index, Quality quality) {
    boolean worse = quality == Quality.UNSTABLE && qualities[index] == Quality.OK;
    if (worse || quality == Quality.OVER) {
      qualities[index] = quality;
    }
  }

  int count() {
    return values.length;
  }

  double value(int index) {
    return values[index];
  }

  Unit unit(int index) {
    return units[index];
  }

  Quality quality(int index) {
    return qualities[index];
  }
}
