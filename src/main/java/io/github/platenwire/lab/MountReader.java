package io.github.platenwire.lab;

import io.github.platenwire.method.GaugeMount;
import io.github.platenwire.quantity.Quantity;
import io.github.platenwire.quantity.Unit;
import io.github.platenwire.toml.TomlException;
import io.github.platenwire.toml.TomlSection;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Reads from a channel of a rig file how its gauge sits on the specimen. Stateless. */
final class MountReader {
  private static final String DIRECTION = "direction";
  private static final String UNDER_LOAD = "under-load";
  private static final String MILLIMETRES = "gauge-length-mm";
  private static final String INCHES = "gauge-length-in";
  private static final String LEVER = "lever";
  private static final List<String> LENGTHS = List.of(MILLIMETRES, INCHES, LEVER);
  private static final double GREATEST_LEVER = 100;

  private MountReader() {}

  /** Empty where the channel says nothing of it. */
  static Optional<GaugeMount> mount(TomlSection section, Quantity quantity) throws TomlException {
    if (quantity == Quantity.FORCE) {
      refuse(section, List.of(DIRECTION, UNDER_LOAD), "belongs to a gauge, not to a load");
      refuse(section, LENGTHS, "belongs to a gauge that reads a length, not to a load");
      return Optional.empty();
    }
    if (quantity == Quantity.STRAIN) {
      refuse(section, LENGTHS, "has no place here: a reading in strain has it in itself");
    }
    GaugeMount mount =
        new GaugeMount(
            section.choiceOr(DIRECTION, "axial", "axial", "transverse").equals("transverse"),
            section.choiceOr(UNDER_LOAD, "rises", "rises", "falls").equals("rises"),
            gaugeLength(section),
            lever(section));
    return mount.equals(GaugeMount.PLAIN) ? Optional.empty() : Optional.of(mount);
  }

  private static void refuse(TomlSection section, List<String> keys, String why)
      throws TomlException {
    for (String key : keys) {
      if (section.has(key)) {
        throw section.error(key, "'" + key + "' " + why + "; take the line away");
      }
    }
  }

  private static OptionalDouble gaugeLength(TomlSection section) throws TomlException {
    if (section.has(MILLIMETRES) && section.has(INCHES)) {
      throw section.error(INCHES, "give the gauge length in mm or in inches, not in both");
    }
    Unit unit = section.has(INCHES) ? Unit.INCH : Unit.MILLIMETRE;
    String key = section.has(INCHES) ? INCHES : MILLIMETRES;
    OptionalDouble written = section.optionalNumber(key);
    if (written.isEmpty()) {
      return written;
    }
    double millimetres = unit.toBase(written.getAsDouble());
    if (!Measure.GAUGE_LENGTH.isLikely(millimetres)) {
      throw section.error(
          key,
          "a gauge length is "
              + Measure.GAUGE_LENGTH.limits(unit)
              + ", but it is "
              + Names.plain(written.getAsDouble()));
    }
    return OptionalDouble.of(millimetres);
  }

  private static double lever(TomlSection section) throws TomlException {
    double lever = section.optionalNumber(LEVER).orElse(1);
    if (!(lever > 0) || lever > GREATEST_LEVER) {
      throw section.error(
          LEVER,
          "'lever' must be above 0 and at most 100 (2 where the gauge sits as far from the pivot"
              + " as the specimen's axis doubled), but it is "
              + Names.plain(lever));
    }
    return lever;
  }
}
