package io.github.platenwire.calibration;

import java.util.OptionalDouble;

/**
 * What one step of a calibration shows. Immutable. Relative figures are in percent of the applied
 * value.
 *
 * @param applied mean applied value of the rising runs, in the unit of the runs
 * @param indicated mean indicated value of the rising runs, corrected, in the same unit
 * @param errorPercent relative error of indication q: of the mean, or the greatest of a single run,
 *     as the standard wants
 * @param error the same in the unit of the runs
 * @param repeatabilityPercent b, the range of the runs' relative errors; absent with a single run
 * @param reversibilityPercent v, rising less falling at the same applied value; the greatest of
 *     either sign where there are several falling runs; absent without
 * @param resolutionPercent a, the resolution; absent where it is not known
 */
public record StepErrors(
    double applied,
    double indicated,
    double errorPercent,
    double error,
    OptionalDouble repeatabilityPercent,
    OptionalDouble reversibilityPercent,
    OptionalDouble resolutionPercent) {

  /**
   * The figures of a step.
   *
   * @param runs the calibration
   * @param correction applied to every indication, in the unit of the runs
   * @param step its index
   * @param ofMean whether the error is that of the mean
   */
  static StepErrors of(CalibrationRuns runs, Correction correction, int step, boolean ofMean) {
    double applied = 0;
    double indicated = 0;
    double least = Double.POSITIVE_INFINITY;
    double greatest = Double.NEGATIVE_INFINITY;
    CalibrationPoint worst = new CalibrationPoint(1, 1);
    int count = runs.ascending().size();
    for (CalibrationRun run : runs.ascending()) {
      CalibrationPoint raw = run.points().get(step);
      CalibrationPoint point = corrected(raw, correction);
      applied += point.applied();
      indicated += point.indicated();
      least = Math.min(least, percent(point));
      greatest = Math.max(greatest, percent(point));
      worst = Math.abs(percent(point)) >= Math.abs(percent(worst)) ? point : worst;
    }
    applied /= count;
    indicated /= count;
    CalibrationPoint judged = ofMean ? new CalibrationPoint(applied, indicated) : worst;
    return new StepErrors(
        applied,
        indicated,
        percent(judged),
        judged.indicated() - judged.applied(),
        count < 2 ? OptionalDouble.empty() : OptionalDouble.of(greatest - least),
        reversibility(runs, correction, new CalibrationPoint(applied, indicated)),
        runs.resolution().isPresent()
            ? OptionalDouble.of(100 * runs.resolution().getAsDouble() / applied)
            : OptionalDouble.empty());
  }

  /*
   * The standard compares the applied values F and F' at the same indication, v = 100 (F' - F) / F.
   * Here both errors are known, so the step need not be met exactly: v = 100 (e - e') / F with e the
   * indicated less the applied value, which is the same where the indications are equal.
   */
  private static OptionalDouble reversibility(
      CalibrationRuns runs, Correction correction, CalibrationPoint up) {
    OptionalDouble worst = OptionalDouble.empty();
    for (CalibrationRun run : runs.descending()) {
      for (CalibrationPoint raw : run.points()) {
        if (!RunParser.same(raw, up)) {
          continue;
        }
        CalibrationPoint down = corrected(raw, correction);
        double rising = up.indicated() - up.applied();
        double falling = down.indicated() - down.applied();
        double percent = 100 * (rising - falling) / up.applied();
        if (worst.isEmpty() || Math.abs(percent) > Math.abs(worst.getAsDouble())) {
          worst = OptionalDouble.of(percent);
        }
      }
    }
    return worst;
  }

  private static CalibrationPoint corrected(CalibrationPoint raw, Correction correction) {
    return new CalibrationPoint(raw.applied(), correction.apply(raw.indicated()));
  }

  private static double percent(CalibrationPoint point) {
    return 100 * (point.indicated() - point.applied()) / point.applied();
  }
}
