package io.github.platenwire.calibration;

import io.github.platenwire.toml.TomlException;
import io.github.platenwire.toml.TomlSection;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The length over which an extensometer measures. Immutable.
 *
 * @param nominal above 0, in the unit of the runs
 * @param measured what it was found to be, in the same unit, if that was measured
 */
public record GaugeLength(double nominal, OptionalDouble measured) {
  /** By how much the measured length is beyond the nominal one, in percent, if it was measured. */
  public OptionalDouble errorPercent() {
    return measured.isPresent()
        ? OptionalDouble.of(100 * (measured.getAsDouble() - nominal) / nominal)
        : OptionalDouble.empty();
  }

  /** Reads {@code gauge-length} and {@code gauge-length-measured} of a calibration file. */
  static Optional<GaugeLength> parse(TomlSection file, boolean isLength) throws TomlException {
    OptionalDouble nominal = positive(file, "gauge-length");
    OptionalDouble measured = positive(file, "gauge-length-measured");
    if (nominal.isPresent() && !isLength) {
      throw file.error("gauge-length", "a load has no gauge length; leave it out");
    }
    if (nominal.isEmpty() && measured.isPresent()) {
      throw file.error(
          "gauge-length-measured", "there is nothing to hold it against; add 'gauge-length'");
    }
    return nominal.isPresent()
        ? Optional.of(new GaugeLength(nominal.getAsDouble(), measured))
        : Optional.empty();
  }

  private static OptionalDouble positive(TomlSection file, String key) throws TomlException {
    OptionalDouble length = file.optionalNumber(key);
    if (length.isPresent() && length.getAsDouble() <= 0) {
      throw file.error(key, "'" + key + "' must be greater than 0");
    }
    return length;
  }
}
