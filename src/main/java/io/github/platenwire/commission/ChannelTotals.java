package io.github.platenwire.commission;

import io.github.platenwire.device.DeviceDefinition.ValueField;
import io.github.platenwire.quantity.Unit;
import io.github.platenwire.reading.Quality;
import java.util.EnumMap;
import java.util.Map;

/** Counts what one channel says. Not thread-safe. */
final class ChannelTotals {
  private final ValueField field;
  private final Map<Quality, Long> qualities = new EnumMap<>(Quality.class);
  private long readings;
  private long inStatedUnit;
  private double least = Double.NaN;
  private double greatest = Double.NaN;

  ChannelTotals(ValueField field) {
    this.field = field;
  }

  void add(double value, Unit unit, Quality quality) {
    readings++;
    inStatedUnit += unit == field.unit() ? 1 : 0;
    qualities.merge(quality, 1L, Long::sum);
    if (!Double.isNaN(value)) {
      double own = unit.convert(value, field.unit());
      least = Double.isNaN(least) ? own : Math.min(least, own);
      greatest = Double.isNaN(greatest) ? own : Math.max(greatest, own);
    }
  }

  ChannelRange range() {
    return new ChannelRange(
        field.name(), field.unit(), readings, inStatedUnit, least, greatest, qualities);
  }
}
