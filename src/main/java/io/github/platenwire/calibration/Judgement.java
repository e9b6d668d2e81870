package io.github.platenwire.calibration;

import io.github.platenwire.quantity.Unit;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/**
 * One figure of a calibration against its limit. Immutable.
 *
 * @param what the figure's name, for a person
 * @param value of either sign
 * @param limit the greatest that the class allows
 * @param unit percent, or the unit of length in which an absolute limit holds
 */
public record Judgement(String what, double value, double limit, Unit unit) {
  /** Figures come out of a few roundings; what is equal to the limit in decimal is within it. */
  private static final double ROUNDINGS = 1e-9;

  /** Whether the value is within the limit, the limit itself included. */
  public boolean met() {
    return Math.abs(value) <= limit * (1 + ROUNDINGS);
  }

  /** A sentence such as {@code error 1.02 % is beyond 1 %}. */
  public String words() {
    return what
        + " "
        + Plain.digits(value, 3)
        + " "
        + unit.symbol()
        + (met() ? " is within " : " is beyond ")
        + Plain.digits(limit, 4)
        + " "
        + unit.symbol();
  }

  /** Every figure of a step that the class limits. */
  static List<Judgement> of(StepErrors step, CalibrationRuns runs, ClassLimits limits) {
    Unit unit = runs.unit();
    List<Judgement> judgements = new ArrayList<>();
    limit(
        judgements,
        "error",
        OptionalDouble.of(step.errorPercent()),
        limits.errorPercent(),
        errorMicrometres(runs, limits),
        step.applied(),
        unit);
    percent(
        judgements, "repeatability", step.repeatabilityPercent(), limits.repeatabilityPercent());
    percent(
        judgements, "reversibility", step.reversibilityPercent(), limits.reversibilityPercent());
    limit(
        judgements,
        "resolution",
        step.resolutionPercent(),
        resolutionLimit(limits),
        limits.resolutionMicrometres(),
        step.applied(),
        unit);
    return judgements;
  }

  /** The error that is allowed in any case: of the value, or of the strain over a gauge length. */
  private static OptionalDouble errorMicrometres(CalibrationRuns runs, ClassLimits limits) {
    if (limits.errorStrain().isEmpty() || runs.gaugeLength().isEmpty()) {
      return limits.errorMicrometres();
    }
    double nominal = runs.unit().convert(runs.gaugeLength().get().nominal(), Unit.MICROMETRE);
    return OptionalDouble.of(limits.errorStrain().getAsDouble() * nominal);
  }

  static void percent(
      List<Judgement> judgements, String what, OptionalDouble value, OptionalDouble limit) {
    if (value.isPresent() && limit.isPresent()) {
      judgements.add(new Judgement(what, value.getAsDouble(), limit.getAsDouble(), Unit.PERCENT));
    }
  }

  /** Of a relative and an absolute limit the larger one holds. */
  private static void limit(
      List<Judgement> judgements,
      String what,
      OptionalDouble percent,
      OptionalDouble relative,
      OptionalDouble micrometres,
      double applied,
      Unit unit) {
    if (percent.isPresent() && micrometres.isPresent()) {
      double perPercent = unit.convert(applied, Unit.MICROMETRE) / 100;
      double value = percent.getAsDouble() * perPercent;
      double allowed = micrometres.getAsDouble();
      if (relative.isEmpty() || allowed > relative.getAsDouble() * perPercent) {
        judgements.add(new Judgement(what, value, allowed, Unit.MICROMETRE));
        return;
      }
    }
    percent(judgements, what, percent, relative);
  }

  /** The coarsest resolution in percent, by the limit itself and by the lower limit of a range. */
  private static OptionalDouble resolutionLimit(ClassLimits limits) {
    if (limits.resolutionMultiple().isEmpty()) {
      return limits.resolutionPercent();
    }
    double byMultiple = 100 / limits.resolutionMultiple().getAsDouble();
    return OptionalDouble.of(Math.min(byMultiple, limits.resolutionPercent().orElse(byMultiple)));
  }
}
