package io.github.platenwire.calibration;

import io.github.platenwire.toml.TomlException;
import io.github.platenwire.toml.TomlSection;
import java.util.ArrayList;
import java.util.List;

/** Reads the runs of a calibration file strictly. Stateless. */
final class RunParser {
  /**
   * Where the indication is brought to the same value in each run, the applied values of a step
   * differ a little; further apart than 5 % they are different steps.
   */
  static final double SAME_STEP = 0.05;

  private RunParser() {}

  static List<CalibrationRun> parse(TomlSection file) throws TomlException {
    List<CalibrationRun> runs = new ArrayList<>();
    List<CalibrationPoint> steps = List.of();
    for (TomlSection section : file.sections("run")) {
      CalibrationRun run = run(section);
      if (run.ascending()) {
        steps = steps.isEmpty() ? run.points() : steps;
        sameSteps(section, run, steps);
      } else {
        knownSteps(section, run, steps);
      }
      runs.add(run);
    }
    if (steps.isEmpty()) {
      throw file.error("a calibration with runs needs at least one with direction = \"ascending\"");
    }
    return runs;
  }

  private static CalibrationRun run(TomlSection section) throws TomlException {
    section.allow("direction", "rows", "zero-after");
    boolean ascending = section.choice("direction", "ascending", "descending").equals("ascending");
    List<List<Double>> rows = section.numberRows("rows");
    if (rows.isEmpty()) {
      throw section.error(
          "rows",
          (section.has("rows") ? "'rows' is empty" : "'rows' is missing")
              + "; it must be rows of what was applied and what was indicated, such as"
              + " rows = [[100, 100.2], [200, 200.3]]");
    }
    List<CalibrationPoint> points = new ArrayList<>();
    for (List<Double> row : rows) {
      points.add(point(section, row, points, ascending));
    }
    return new CalibrationRun(ascending, points, section.optionalNumber("zero-after"));
  }

  private static CalibrationPoint point(
      TomlSection section, List<Double> row, List<CalibrationPoint> earlier, boolean ascending)
      throws TomlException {
    String where = "row " + (earlier.size() + 1) + " of 'rows' ";
    if (row.size() != 2) {
      throw section.error("rows", where + "must be two numbers, [applied, indicated]");
    }
    CalibrationPoint point = new CalibrationPoint(row.get(0), row.get(1));
    if (point.applied() <= 0) {
      throw section.error(
          "rows",
          where
              + "applies "
              + Plain.number(point.applied())
              + "; it must be more than 0 (what is shown with nothing applied goes into"
              + " 'zero-after')");
    }
    if (!earlier.isEmpty()) {
      double before = earlier.get(earlier.size() - 1).applied();
      boolean right = ascending ? point.applied() > before : point.applied() < before;
      if (!right) {
        throw section.error(
            "rows",
            where
                + "applies "
                + Plain.number(point.applied())
                + " after "
                + Plain.number(before)
                + (ascending ? ", but this run ascends" : ", but this run descends"));
      }
    }
    return point;
  }

  private static void sameSteps(
      TomlSection section, CalibrationRun run, List<CalibrationPoint> steps) throws TomlException {
    if (run.points().size() != steps.size()) {
      throw section.error(
          "rows",
          "each ascending run must have the same steps; the first has "
              + steps.size()
              + " rows, this one "
              + run.points().size());
    }
    for (int i = 0; i < steps.size(); i++) {
      if (!same(run.points().get(i), steps.get(i))) {
        throw section.error(
            "rows",
            "row "
                + (i + 1)
                + " applies "
                + Plain.number(run.points().get(i).applied())
                + ", but in the first ascending run it applies "
                + Plain.number(steps.get(i).applied())
                + "; the same step may differ by 5 %");
      }
    }
  }

  private static void knownSteps(
      TomlSection section, CalibrationRun run, List<CalibrationPoint> steps) throws TomlException {
    for (CalibrationPoint point : run.points()) {
      if (steps.stream().noneMatch(step -> same(point, step))) {
        throw section.error(
            "rows",
            "a descending run may have only steps of an ascending run that stands before it; "
                + Plain.number(point.applied())
                + " is none");
      }
    }
  }

  static boolean same(CalibrationPoint point, CalibrationPoint step) {
    return Math.abs(point.applied() - step.applied()) <= SAME_STEP * step.applied();
  }
}
