package io.github.platenwire.calibration;

import io.github.platenwire.quantity.Unit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A calibration held against the limits of a standard. Pure. Immutable.
 *
 * @param runs the calibration
 * @param correction applied to each indication before it was judged, in the unit of the runs
 * @param limits the standard
 * @param steps one for each step, rising
 * @param zeroPercent greatest zero after a run, in percent of the greatest applied value; absent
 *     where none was noted
 */
public record CalibrationCheck(
    CalibrationRuns runs,
    Correction correction,
    LimitTable limits,
    List<StepErrors> steps,
    OptionalDouble zeroPercent) {
  /** Makes the list immutable. */
  public CalibrationCheck {
    steps = List.copyOf(steps);
  }

  /**
   * A range within one class.
   *
   * @param className which
   * @param from its least applied value, in the unit of the runs
   * @param to its greatest applied value
   * @param lowerLimit the least value that the resolution allows for the class, if that is known
   */
  public record Range(String className, double from, double to, OptionalDouble lowerLimit) {}

  /**
   * Holds a calibration against a standard.
   *
   * @throws IllegalArgumentException if the standard is for another quantity, or limits strains and
   *     no gauge length is given; the message is fit for a person
   */
  public static CalibrationCheck of(
      CalibrationRuns runs, Correction correction, LimitTable limits) {
    if (runs.unit().quantity() != limits.quantity()) {
      throw new IllegalArgumentException(
          limits.title()
              + " is for a "
              + limits.quantity().word()
              + ", but the runs are in "
              + runs.unit().symbol());
    }
    if (limits.limitsStrain() && runs.gaugeLength().isEmpty()) {
      throw new IllegalArgumentException(
          limits.title()
              + " limits errors of strain, so the gauge length must be known; add 'gauge-length' to"
              + " the calibration");
    }
    List<StepErrors> steps = new ArrayList<>();
    for (int step = 0; step < runs.steps(); step++) {
      steps.add(StepErrors.of(runs, correction, step, limits.errorOfMean()));
    }
    return new CalibrationCheck(runs, correction, limits, steps, zero(runs, steps));
  }

  private static OptionalDouble zero(CalibrationRuns runs, List<StepErrors> steps) {
    double greatest = steps.get(steps.size() - 1).applied();
    OptionalDouble worst = OptionalDouble.empty();
    for (CalibrationRun run : runs.runs()) {
      if (run.zeroAfter().isPresent()) {
        double percent = 100 * run.zeroAfter().getAsDouble() / greatest;
        if (worst.isEmpty() || Math.abs(percent) > Math.abs(worst.getAsDouble())) {
          worst = OptionalDouble.of(percent);
        }
      }
    }
    return worst;
  }

  /** Every figure of a step that a class limits. */
  public List<Judgement> judgements(StepErrors step, ClassLimits of) {
    return Judgement.of(step, runs, of);
  }

  /** The zero against the limit of a class, if there are both. */
  public Optional<Judgement> zeroJudgement(ClassLimits of) {
    List<Judgement> judgements = new ArrayList<>();
    Judgement.percent(judgements, "zero", zeroPercent, of.zeroPercent());
    return judgements.stream().findFirst();
  }

  /** The gauge length against the limit of a class, if there are both. */
  public Optional<Judgement> gaugeLengthJudgement(ClassLimits of) {
    List<Judgement> judgements = new ArrayList<>();
    OptionalDouble error =
        runs.gaugeLength().map(GaugeLength::errorPercent).orElse(OptionalDouble.empty());
    Judgement.percent(judgements, "gauge length", error, of.gaugeLengthPercent());
    return judgements.stream().findFirst();
  }

  private boolean meets(StepErrors step, ClassLimits of) {
    return judgements(step, of).stream().allMatch(Judgement::met);
  }

  /** Whether what holds for all steps is within the class. */
  private boolean wholeMeets(ClassLimits of) {
    return zeroJudgement(of).map(Judgement::met).orElse(true)
        && gaugeLengthJudgement(of).map(Judgement::met).orElse(true);
  }

  /** The strictest class that a step meets, zero and gauge length included. */
  public Optional<ClassLimits> classOf(StepErrors step) {
    return limits.classes().stream().filter(of -> meets(step, of) && wholeMeets(of)).findFirst();
  }

  /**
   * The range within a class: from some step without a gap up to the greatest; none if not that.
   */
  public Optional<Range> rangeOf(ClassLimits of) {
    int from = steps.size();
    while (from > 0 && meets(steps.get(from - 1), of)) {
      from--;
    }
    if (from == steps.size() || !wholeMeets(of)) {
      return Optional.empty();
    }
    return Optional.of(
        new Range(
            of.name(),
            steps.get(from).applied(),
            steps.get(steps.size() - 1).applied(),
            lowerLimit(of)));
  }

  /** The least value that the resolution allows for a class, in the unit of the runs. */
  public OptionalDouble lowerLimit(ClassLimits of) {
    if (runs.resolution().isEmpty()) {
      return OptionalDouble.empty();
    }
    double resolution = runs.resolution().getAsDouble();
    if (of.resolutionMultiple().isPresent()) {
      return OptionalDouble.of(of.resolutionMultiple().getAsDouble() * resolution);
    }
    boolean always =
        of.resolutionMicrometres().isPresent()
            && runs.unit().convert(resolution, Unit.MICROMETRE)
                <= of.resolutionMicrometres().getAsDouble();
    if (always) {
      return OptionalDouble.of(0);
    }
    return of.resolutionPercent().isPresent()
        ? OptionalDouble.of(100 * resolution / of.resolutionPercent().getAsDouble())
        : OptionalDouble.empty();
  }

  /** The ranges, the strictest class first; a laxer one is named only where it reaches lower. */
  public List<Range> ranges() {
    List<Range> ranges = new ArrayList<>();
    double lowest = Double.POSITIVE_INFINITY;
    for (ClassLimits of : limits.classes()) {
      Optional<Range> range = rangeOf(of);
      if (range.isPresent() && range.get().from() < lowest) {
        lowest = range.get().from();
        ranges.add(range.get());
      }
    }
    return List.copyOf(ranges);
  }

  /**
   * Every figure beyond the limits of a class, in whole words with its step; empty if the class is
   * met from a value up.
   *
   * @param of the class
   * @param from the least applied value looked at, in the unit of the runs
   */
  public List<String> failures(ClassLimits of, double from) {
    List<String> failures = new ArrayList<>();
    zeroJudgement(of)
        .filter(judgement -> !judgement.met())
        .ifPresent(judgement -> failures.add(judgement.words() + " of the greatest applied value"));
    gaugeLengthJudgement(of)
        .filter(judgement -> !judgement.met())
        .ifPresent(judgement -> failures.add(judgement.words() + " of the nominal length"));
    for (StepErrors step : steps) {
      if (step.applied() < from * (1 - 1e-9)) {
        continue;
      }
      for (Judgement judgement : judgements(step, of)) {
        if (!judgement.met()) {
          failures.add(
              "at "
                  + Plain.digits(step.applied(), 7)
                  + " "
                  + runs.unit().symbol()
                  + ": "
                  + judgement.words());
        }
      }
    }
    return List.copyOf(failures);
  }

  /** What the standard wants and these runs do not show, in whole sentences. */
  public List<String> remarks() {
    List<String> remarks = new ArrayList<>();
    int count = runs.ascending().size();
    if (count < limits.leastRuns()) {
      remarks.add(
          limits.title()
              + " wants at least "
              + limits.leastRuns()
              + " rising runs; there "
              + (count == 1 ? "is 1." : "are " + count + "."));
    }
    if (steps.size() < limits.leastSteps()) {
      remarks.add(
          limits.title()
              + " wants at least "
              + limits.leastSteps()
              + " steps; there "
              + (steps.size() == 1 ? "is 1." : "are " + steps.size() + "."));
    }
    List<Double> applied = steps.stream().map(StepErrors::applied).toList();
    remarks.addAll(limits.spread().remarks(limits.title(), applied, runs.unit().symbol()));
    boolean limitsLength =
        limits.classes().stream().anyMatch(of -> of.gaugeLengthPercent().isPresent());
    boolean measured = runs.gaugeLength().map(l -> l.measured().isPresent()).orElse(true);
    if (limitsLength && !measured) {
      remarks.add(
          "The gauge length was not measured ('gauge-length-measured'), so it was not judged.");
    }
    if (runs.resolution().isEmpty()) {
      remarks.add("The resolution is not given, so neither it nor the lower limit was judged.");
    }
    if (count < 2) {
      remarks.add("With a single rising run the repeatability cannot be judged.");
    }
    boolean limitsZero = limits.classes().stream().anyMatch(of -> of.zeroPercent().isPresent());
    if (limitsZero && zeroPercent.isEmpty()) {
      remarks.add("No zero after a run is given ('zero-after'), so it was not judged.");
    }
    return List.copyOf(remarks);
  }
}
