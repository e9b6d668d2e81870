package io.github.platenwire.lab;

import io.github.platenwire.calibration.CalibrationRuns;
import io.github.platenwire.calibration.Correction;
import io.github.platenwire.calibration.CorrectionFit;
import io.github.platenwire.calibration.CorrectionKind;
import io.github.platenwire.calibration.LimitTable;
import io.github.platenwire.calibration.ScaleCorrection;
import io.github.platenwire.toml.TomlException;
import java.time.LocalDate;
import java.util.List;
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
 * @param classFrom the least applied value for which the class is stated, in the unit of the runs
 * @param standard the name of the standard whose limits hold, if stated
 * @param expandedUncertaintyPercent expanded uncertainty (k = 2) in percent of the reading, if
 *     stated
 * @param scale what the decoded value is multiplied by, if stated; not 0
 * @param correction the kind of correction wanted, if stated
 * @param degree the degree of a polynomial
 * @param runs what was applied and indicated, if given
 * @param text the file as it was read, to be kept in the raw file
 */
public record Calibration(
    String name,
    String certificate,
    String laboratory,
    LocalDate date,
    Optional<LocalDate> due,
    Optional<String> accuracyClass,
    OptionalDouble classFrom,
    Optional<String> standard,
    OptionalDouble expandedUncertaintyPercent,
    OptionalDouble scale,
    Optional<CorrectionKind> correction,
    int degree,
    Optional<CalibrationRuns> runs,
    String text) {
  /** Where nothing is said, a polynomial is a quadratic. */
  static final int USUAL_DEGREE = 2;

  private static final double COVERAGE = 2;

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
    return CalibrationReader.parse(text, source, fileName);
  }

  /**
   * The kind of correction that holds: what the rig file chooses, else what this file says, else a
   * scale if there is one, else none.
   *
   * @param chosen by the rig file, if it says anything
   */
  public CorrectionKind kind(Optional<CorrectionKind> chosen) {
    CorrectionKind unsaid = scale.isPresent() ? CorrectionKind.SCALE : CorrectionKind.NONE;
    return chosen.or(() -> correction).orElse(unsaid);
  }

  /**
   * The correction with what it leaves over, in the unit of the runs; a scale fits every unit.
   *
   * @param chosen the kind that the rig file chooses, if it says anything
   * @throws IllegalArgumentException if this calibration cannot give it; the message is fit for a
   *     person
   */
  public CorrectionFit fit(Optional<CorrectionKind> chosen) {
    CorrectionKind kind = kind(chosen);
    if (runs.isPresent()) {
      return CorrectionFit.of(kind, runs.get(), scale, degree);
    }
    if (kind == CorrectionKind.NONE) {
      return new CorrectionFit(Correction.NONE, List.of(), 0);
    }
    if (kind == CorrectionKind.SCALE && scale.isPresent()) {
      return new CorrectionFit(new ScaleCorrection(scale.getAsDouble()), List.of(), 0);
    }
    throw new IllegalArgumentException(
        "the correction '"
            + kind.word()
            + "' has to be computed from runs, but the calibration '"
            + name
            + "' holds none; add [[run]] tables to it");
  }

  /**
   * What a correction leaves over at the calibrated values from {@code classFrom} up, as an
   * expanded uncertainty (k = 2) in percent of the reading. Absent where the runs do not tell.
   *
   * @param fit the correction in use
   */
  public OptionalDouble residualPercent(CorrectionFit fit) {
    OptionalDouble left = fit.standardUncertaintyPercent(classFrom.orElse(0));
    return left.isEmpty()
        ? OptionalDouble.empty()
        : OptionalDouble.of(COVERAGE * left.getAsDouble());
  }

  /**
   * The limits that hold for the runs: those of the standard stated, else of the usual one for
   * their quantity.
   *
   * @throws IllegalStateException if there are no runs
   */
  public LimitTable limits() {
    CalibrationRuns known = runs.orElseThrow(() -> new IllegalStateException("no runs: " + name));
    return LimitTable.shipped(
        standard.orElseGet(() -> LimitTable.usualFor(known.unit().quantity())));
  }
}
