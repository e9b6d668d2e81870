package io.github.platenwire.lab;

import io.github.platenwire.toml.TomlException;
import io.github.platenwire.toml.TomlSection;
import java.time.LocalDate;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What a calibration certificate says of a channel, as {@code calibrations/NAME.toml} tells it.
 * Immutable.
 *
 * @param name the file's name
 * @param certificate the certificate's number
 * @param laboratory who calibrated
 * @param date when
 * @param due until when it holds, if the certificate or the lab says so
 * @param accuracyClass the class it was found to have, as written, if stated
 * @param expandedUncertaintyPercent expanded uncertainty (k = 2) in percent of the reading, if
 *     stated
 * @param scale what the decoded value is multiplied by; 1 where nothing has to be corrected
 * @param text the file as it was read, to be kept in the raw file
 */
public record Calibration(
    String name,
    String certificate,
    String laboratory,
    LocalDate date,
    Optional<LocalDate> due,
    Optional<String> accuracyClass,
    OptionalDouble expandedUncertaintyPercent,
    double scale,
    String text) {

  /**
   * Reads a calibration file.
   *
   * @param text the TOML document
   * @param source its name for error messages
   * @param fileName the file's name without {@code .toml}, which the name inside must equal
   * @throws TomlException if a key or value is wrong, with line and column
   */
  public static Calibration parse(String text, String source, String fileName)
      throws TomlException {
    TomlSection file = TomlSection.parse(text, source);
    file.allow(
        "format",
        "name",
        "certificate",
        "laboratory",
        "date",
        "due",
        "class",
        "expanded-uncertainty-percent",
        "scale");
    LabFormat.check(file, "platenwire-calibration");
    LabFormat.checkName(file, fileName);
    LocalDate date = date(file);
    return new Calibration(
        fileName,
        LabFormat.words(file, "certificate"),
        LabFormat.words(file, "laboratory"),
        date,
        due(file, date),
        file.optionalString("class"),
        uncertainty(file),
        scale(file),
        text);
  }

  private static LocalDate date(TomlSection file) throws TomlException {
    Optional<LocalDate> date = file.optionalDate("date");
    if (date.isEmpty()) {
      throw file.error("'date' is missing; it must be a date, such as date = 2026-03-02");
    }
    return date.get();
  }

  private static Optional<LocalDate> due(TomlSection file, LocalDate date) throws TomlException {
    Optional<LocalDate> due = file.optionalDate("due");
    if (due.isPresent() && !due.get().isAfter(date)) {
      throw file.error("due", "'due' must be after 'date', " + date + ", but it is " + due.get());
    }
    return due;
  }

  private static OptionalDouble uncertainty(TomlSection file) throws TomlException {
    String key = "expanded-uncertainty-percent";
    OptionalDouble percent = file.optionalNumber(key);
    if (percent.isPresent() && (percent.getAsDouble() <= 0 || percent.getAsDouble() > 100)) {
      throw file.error(
          key,
          "'"
              + key
              + "' must be more than 0 and at most 100, but it is "
              + Names.plain(percent.getAsDouble()));
    }
    return percent;
  }

  private static double scale(TomlSection file) throws TomlException {
    double scale = file.optionalNumber("scale").orElse(1);
    if (scale == 0) {
      throw file.error("scale", "'scale' must not be 0; 1 leaves the value as it is");
    }
    return scale;
  }
}
