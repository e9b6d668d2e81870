package io.github.platenwire.lab;

import io.github.platenwire.calibration.CalibrationRuns;
import io.github.platenwire.calibration.CorrectionKind;
import io.github.platenwire.calibration.LimitTable;
import io.github.platenwire.calibration.PolynomialFit;
import io.github.platenwire.toml.TomlException;
import io.github.platenwire.toml.TomlSection;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;

/** Reads calibration files strictly. Stateless. */
final class CalibrationReader {
  private static final List<String> KEYS =
      List.of(
          "format",
          "name",
          "certificate",
          "laboratory",
          "date",
          "due",
          "class",
          "class-from",
          "standard",
          "expanded-uncertainty-percent",
          "scale",
          "correction",
          "degree");

  private CalibrationReader() {}

  static Calibration parse(String text, String source, String fileName) throws TomlException {
    TomlSection file = TomlSection.parse(text, source);
    List<String> keys = new ArrayList<>(KEYS);
    keys.addAll(CalibrationRuns.keys());
    file.allow(keys.toArray(String[]::new));
    LabFormat.check(file, "platenwire-calibration");
    LabFormat.checkName(file, fileName);
    LocalDate date = date(file);
    Optional<CalibrationRuns> runs = runs(file);
    Calibration calibration =
        new Calibration(
            fileName,
            LabFormat.words(file, "certificate"),
            LabFormat.words(file, "laboratory"),
            date,
            due(file, date),
            file.optionalString("class"),
            classFrom(file, runs),
            standard(file, runs),
            uncertainty(file),
            scale(file),
            correction(file),
            degree(file),
            runs,
            text);
    checkCorrection(file, calibration);
    return calibration;
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

  private static OptionalDouble scale(TomlSection file) throws TomlException {
    OptionalDouble scale = file.optionalNumber("scale");
    if (scale.isPresent() && scale.getAsDouble() == 0) {
      throw file.error("scale", "'scale' must not be 0; 1 leaves the value as it is");
    }
    return scale;
  }

  private static Optional<CalibrationRuns> runs(TomlSection file) throws TomlException {
    if (file.has("run")) {
      return Optional.of(CalibrationRuns.parse(file));
    }
    for (String key : List.of("unit", "resolution", "class-from", "standard", "degree")) {
      if (file.has(key)) {
        throw file.error(
            key, "'" + key + "' says something of runs, but there is no [[run]] in this file");
      }
    }
    return Optional.empty();
  }

  private static OptionalDouble classFrom(TomlSection file, Optional<CalibrationRuns> runs)
      throws TomlException {
    OptionalDouble from = file.optionalNumber("class-from");
    if (from.isEmpty() || runs.isEmpty()) {
      return from;
    }
    if (!file.has("class")) {
      throw file.error("class-from", "'class-from' needs 'class'");
    }
    CalibrationRuns known = runs.get();
    double top = known.mean(known.steps() - 1).applied();
    if (from.getAsDouble() <= 0 || from.getAsDouble() > top) {
      throw file.error(
          "class-from",
          "'class-from' must be more than 0 and at most the greatest applied value, "
              + Names.plain(top)
              + ", but it is "
              + Names.plain(from.getAsDouble()));
    }
    return from;
  }

  private static Optional<String> standard(TomlSection file, Optional<CalibrationRuns> runs)
      throws TomlException {
    if (!file.has("standard") || runs.isEmpty()) {
      return Optional.empty();
    }
    String name = file.choice("standard", LimitTable.shippedNames().toArray(String[]::new));
    LimitTable limits = LimitTable.shipped(name);
    if (limits.quantity() != runs.get().unit().quantity()) {
      throw file.error(
          "standard",
          limits.title()
              + " is for a "
              + limits.quantity().word()
              + ", but the runs are in "
              + runs.get().unit().symbol());
    }
    return Optional.of(name);
  }

  private static Optional<CorrectionKind> correction(TomlSection file) throws TomlException {
    return file.has("correction")
        ? CorrectionKind.ofWord(file.choice("correction", CorrectionKind.words()))
        : Optional.empty();
  }

  private static int degree(TomlSection file) throws TomlException {
    OptionalLong degree = file.optionalWhole("degree");
    if (degree.isEmpty()) {
      return Calibration.USUAL_DEGREE;
    }
    if (degree.getAsLong() < 1 || degree.getAsLong() > PolynomialFit.GREATEST_DEGREE) {
      throw file.error(
          "degree",
          "'degree' must be 1 to "
              + PolynomialFit.GREATEST_DEGREE
              + ", but it is "
              + degree.getAsLong());
    }
    return (int) degree.getAsLong();
  }

  private static void checkCorrection(TomlSection file, Calibration calibration)
      throws TomlException {
    boolean scales = calibration.kind(Optional.empty()) == CorrectionKind.SCALE;
    if (file.has("scale") && !scales) {
      throw file.error(
          "scale", "'scale' is of no use where 'correction' is anything but \"scale\"");
    }
    try {
      calibration.fit(Optional.empty());
    } catch (IllegalArgumentException e) {
      throw file.error("correction", String.valueOf(e.getMessage()));
    }
  }
}
