package io.github.platenwire.lab;

import io.github.platenwire.quantity.UnitSystem;
import io.github.platenwire.toml.Suggestions;
import io.github.platenwire.toml.TomlException;
import io.github.platenwire.toml.TomlSection;
import java.time.DateTimeException;
import java.time.ZoneId;
import java.util.Optional;

/**
 * What {@code lab.toml} says. Immutable.
 *
 * @param labName the lab's name, as printed on reports
 * @param unitsFirst which system of units is shown first; both are always shown
 * @param zone the time zone in which times are shown and in which cast times are written
 * @param sharedRegister the folder that takes a second copy of each rig's register, if the lab has
 *     one
 */
public record LabSettings(
    String labName, UnitSystem unitsFirst, ZoneId zone, Optional<String> sharedRegister) {

  /** Settings of a lab without a shared register. */
  public LabSettings(String labName, UnitSystem unitsFirst, ZoneId zone) {
    this(labName, unitsFirst, zone, Optional.empty());
  }

  static LabSettings parse(String text, String source) throws TomlException {
    TomlSection file = TomlSection.parse(text, source);
    file.allow("format", "name", "units-first", "zone", "shared-register");
    LabFormat.check(file, "platenwire-lab");
    String system = file.choice("units-first", UnitSystem.SI.word(), UnitSystem.INCH_POUND.word());
    return new LabSettings(
        LabFormat.words(file, "name"),
        UnitSystem.ofWord(system).orElseThrow(),
        zone(file),
        sharedRegister(file));
  }

  private static Optional<String> sharedRegister(TomlSection file) throws TomlException {
    return file.has("shared-register")
        ? Optional.of(LabFormat.words(file, "shared-register"))
        : Optional.empty();
  }

  private static ZoneId zone(TomlSection file) throws TomlException {
    String written = file.string("zone");
    try {
      return ZoneId.of(written);
    } catch (DateTimeException e) {
      throw file.error(
          "zone",
          "'"
              + written
              + "' is no time zone"
              + Suggestions.nearest(written, ZoneId.getAvailableZoneIds())
                  .map(nearest -> ", did you mean '" + nearest + "'?")
                  .orElse("; write \"UTC\" or a name of the form \"Area/City\""));
    }
  }
}
