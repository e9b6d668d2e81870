package io.github.platenwire.cli;

import io.github.platenwire.calibration.CalibrationCheck;
import io.github.platenwire.calibration.ClassLimits;
import io.github.platenwire.lab.Calibration;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;

/**
 * What a calibration comes to. Immutable.
 *
 * @param stated the class that its file states, if it does
 * @param judged the class against whose limits its figures are told: the stated one, else the one
 *     that reaches lowest, else the laxest
 * @param met whether the stated class is met, or any class where none is stated
 * @param failures each figure beyond the stated limits
 * @param words the whole in a sentence
 */
record CalibrationVerdict(
    Optional<ClassLimits> stated,
    ClassLimits judged,
    boolean met,
    List<String> failures,
    String words) {
  /** Makes the list immutable. */
  CalibrationVerdict {
    failures = List.copyOf(failures);
  }

  static CalibrationVerdict of(
      Calibration calibration, CalibrationCheck check, Optional<ClassLimits> stated) {
    if (stated.isEmpty()) {
      List<CalibrationCheck.Range> ranges = check.ranges();
      List<ClassLimits> classes = check.limits().classes();
      String lowest =
          ranges.isEmpty()
              ? classes.get(classes.size() - 1).name()
              : ranges.get(ranges.size() - 1).className();
      return new CalibrationVerdict(
          stated,
          check.limits().ofClass(lowest).orElseThrow(),
          !ranges.isEmpty(),
          List.of(),
          ranges.isEmpty()
              ? "No class is stated, and none is met."
              : "No class is stated; the ranges above are what the runs show.");
    }
    ClassLimits of = stated.get();
    double from = calibration.classFrom().orElse(0);
    List<String> failures = check.failures(of, from);
    String what =
        "stated class "
            + of.name()
            + (from > 0
                ? " from "
                    + BigDecimal.valueOf(from).stripTrailingZeros().toPlainString()
                    + " "
                    + check.runs().unit().symbol()
                    + " up"
                : "");
    return new CalibrationVerdict(
        stated,
        of,
        failures.isEmpty(),
        failures,
        failures.isEmpty()
            ? "The " + what + " is met."
            : "The " + what + " is not met: " + String.join(". ", failures) + ".");
  }
}
