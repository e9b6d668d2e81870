package io.github.platenwire.calibration;

import io.github.platenwire.quantity.Unit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;

/** Calibrations made of errors in percent. */
final class Runs {
  /** Five steps of a frame of 1000 kN, applied exactly. */
  static final double[] STEPS = {200, 400, 600, 800, 1000};

  private Runs() {}

  /** One run with the same error in percent at each step. */
  static CalibrationRun run(boolean ascending, double percent, double zeroAfter) {
    List<CalibrationPoint> points = new ArrayList<>();
    for (int i = 0; i < STEPS.length; i++) {
      double applied = STEPS[ascending ? i : STEPS.length - 1 - i];
      points.add(new CalibrationPoint(applied, applied + applied * percent / 100));
    }
    return new CalibrationRun(ascending, points, OptionalDouble.of(zeroAfter));
  }

  static CalibrationRuns kilonewtons(double resolution, CalibrationRun... runs) {
    return new CalibrationRuns(Unit.KILONEWTON, OptionalDouble.of(resolution), Arrays.asList(runs));
  }

  /** A single rising run of a gauge. */
  static CalibrationRuns gauge(Unit unit, double resolution, double[] applied, double[] indicated) {
    List<CalibrationPoint> points = new ArrayList<>();
    for (int i = 0; i < applied.length; i++) {
      points.add(new CalibrationPoint(applied[i], indicated[i]));
    }
    return new CalibrationRuns(
        unit,
        OptionalDouble.of(resolution),
        List.of(new CalibrationRun(true, points, OptionalDouble.empty())));
  }
}
