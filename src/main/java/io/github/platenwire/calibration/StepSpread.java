package io.github.platenwire.calibration;

import io.github.platenwire.toml.TomlException;
import io.github.platenwire.toml.TomlSection;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * How a standard wants the steps of a calibration spread over the range. What is absent is not
 * wanted. Immutable.
 *
 * @param fromPercent share of the greatest value from which {@code least} steps are wanted
 * @param least how many steps from there up
 * @param greatestGapPercent greatest distance of two neighbours there, in percent of the greatest
 *     value
 * @param leastRatio below it, least ratio of a step to the one above
 * @param perDecade how many steps in each decade below the greatest value, down to the least step
 */
record StepSpread(
    OptionalDouble fromPercent,
    OptionalDouble least,
    OptionalDouble greatestGapPercent,
    OptionalDouble leastRatio,
    OptionalDouble perDecade) {
  private static final double ROUNDINGS = 1e-9;

  /** Reads the table {@code [steps]}; without it nothing is wanted. */
  static StepSpread parse(TomlSection file) throws TomlException {
    Optional<TomlSection> found = file.optionalSection("steps");
    if (found.isEmpty()) {
      OptionalDouble none = OptionalDouble.empty();
      return new StepSpread(none, none, none, none, none);
    }
    TomlSection steps = found.get();
    steps.allow("from-percent", "least", "greatest-gap-percent", "least-ratio", "per-decade");
    return new StepSpread(
        within(steps, "from-percent", 99),
        within(steps, "least", 100),
        within(steps, "greatest-gap-percent", 100),
        within(steps, "least-ratio", 1),
        within(steps, "per-decade", 100));
  }

  private static OptionalDouble within(TomlSection steps, String key, double most)
      throws TomlException {
    OptionalDouble value = steps.optionalNumber(key);
    if (value.isPresent() && !(value.getAsDouble() > 0 && value.getAsDouble() <= most)) {
      throw steps.error(
          key, "'" + key + "' must be greater than 0, and " + Plain.number(most) + " at most");
    }
    return value;
  }

  /**
   * What the steps of a calibration lack, in whole sentences.
   *
   * @param title the standard's, for a person
   * @param steps applied values, rising
   * @param unit of them, for a person
   */
  List<String> remarks(String title, List<Double> steps, String unit) {
    List<String> remarks = new ArrayList<>();
    double greatest = steps.get(steps.size() - 1);
    double from = fromPercent.orElse(0) / 100 * greatest;
    List<Double> upper = steps.stream().filter(step -> step >= from * (1 - ROUNDINGS)).toList();
    if (least.isPresent() && upper.size() < least.getAsDouble()) {
      remarks.add(
          title
              + " wants at least "
              + Plain.number(least.getAsDouble())
              + " steps from "
              + Plain.number(fromPercent.orElse(0))
              + " % of the greatest value up; there "
              + (upper.size() == 1 ? "is 1." : "are " + upper.size() + "."));
    }
    gaps(remarks, title, upper, greatest, unit);
    ratios(remarks, title, steps, from, unit);
    decades(remarks, title, steps, greatest, unit);
    return remarks;
  }

  private void gaps(
      List<String> remarks, String title, List<Double> upper, double greatest, String unit) {
    double allowed = greatestGapPercent.orElse(Double.POSITIVE_INFINITY);
    for (int i = 1; i < upper.size(); i++) {
      double percent = 100 * (upper.get(i) - upper.get(i - 1)) / greatest;
      if (percent > allowed * (1 + ROUNDINGS)) {
        remarks.add(
            title
                + " wants its steps there about evenly spread; between "
                + between(upper.get(i - 1), upper.get(i), unit)
                + " lie "
                + Plain.digits(percent, 3)
                + " % of the greatest value.");
      }
    }
  }

  private void ratios(
      List<String> remarks, String title, List<Double> steps, double from, String unit) {
    for (int i = 1; i < steps.size() && leastRatio.isPresent(); i++) {
      double ratio = steps.get(i - 1) / steps.get(i);
      boolean lower = steps.get(i - 1) < from * (1 - ROUNDINGS);
      if (lower && ratio < leastRatio.getAsDouble() * (1 - ROUNDINGS)) {
        remarks.add(
            title
                + " wants the lower steps to follow each other closer; there is none between "
                + between(steps.get(i - 1), steps.get(i), unit)
                + ".");
      }
    }
  }

  private void decades(
      List<String> remarks, String title, List<Double> steps, double greatest, String unit) {
    double top = greatest;
    while (perDecade.isPresent() && top > steps.get(0) * (1 + ROUNDINGS)) {
      double bottom = Math.max(top / 10, steps.get(0));
      double high = top * (1 + ROUNDINGS);
      double low = bottom * (1 - ROUNDINGS);
      long count = steps.stream().filter(step -> step >= low && step <= high).count();
      boolean whole = bottom > steps.get(0) || bottom * 10 <= high;
      if (whole && count < perDecade.getAsDouble()) {
        remarks.add(
            title
                + " wants at least "
                + Plain.number(perDecade.getAsDouble())
                + " steps in each decade; between "
                + between(bottom, top, unit)
                + " there "
                + (count == 1 ? "is 1." : "are " + count + "."));
      }
      top = bottom;
    }
  }

  private static String between(double low, double high, String unit) {
    return Plain.digits(low, 5) + " and " + Plain.digits(high, 5) + " " + unit;
  }
}
