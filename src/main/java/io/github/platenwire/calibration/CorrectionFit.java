package io.github.platenwire.calibration;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;

/**
 * A correction with what it leaves over at the calibrated steps. Immutable.
 *
 * @param correction in the unit of the runs
 * @param residuals one for each reading of the ascending runs, run after run
 * @param parameters how many numbers were taken from these runs to make the correction
 */
public record CorrectionFit(Correction correction, List<Residual> residuals, int parameters) {
  /** Makes the list immutable. */
  public CorrectionFit {
    residuals = List.copyOf(residuals);
  }

  /**
   * What is left over at one reading.
   *
   * @param point the reading
   * @param value corrected less applied, in the unit of the runs
   */
  public record Residual(CalibrationPoint point, double value) {
    /** In percent of the applied value. */
    public double percent() {
      return 100 * value / point.applied();
    }
  }

  /** How many readings there are beyond the parameters; 0 or less says nothing of scatter. */
  public int degreesOfFreedom() {
    return residuals.size() - parameters;
  }

  /**
   * Standard uncertainty by the residuals: the root of their summed squares over the degrees of
   * freedom (JCGM 100:2008, H.3.2, with so many parameters in place of two), in the unit of the
   * runs. Absent without degrees of freedom.
   */
  public OptionalDouble standardUncertainty() {
    return root(residuals.stream().mapToDouble(Residual::value).toArray());
  }

  /**
   * As {@link #standardUncertainty}, of residuals in percent of the applied values.
   *
   * @param from only applied values from here up are looked at; the degrees of freedom count for
   *     them in proportion
   */
  public OptionalDouble standardUncertaintyPercent(double from) {
    return root(
        residuals.stream()
            .filter(residual -> residual.point().applied() >= from)
            .mapToDouble(Residual::percent)
            .toArray());
  }

  private OptionalDouble root(double[] values) {
    if (degreesOfFreedom() < 1 || values.length == 0) {
      return OptionalDouble.empty();
    }
    double squares = 0;
    for (double value : values) {
      squares += value * value;
    }
    double share = (double) degreesOfFreedom() / residuals.size();
    return OptionalDouble.of(Math.sqrt(squares / (values.length * share)));
  }

  /**
   * Makes the correction of a kind. A table also holds the point 0, 0, since a zero is taken off.
   *
   * @param kind which
   * @param runs the calibration
   * @param scale the factor, where the file gives one; else it is fitted through the origin
   * @param degree of a polynomial
   * @throws IllegalArgumentException if these runs cannot give it; the message is fit for a person
   */
  public static CorrectionFit of(
      CorrectionKind kind, CalibrationRuns runs, OptionalDouble scale, int degree) {
    return switch (kind) {
      case NONE -> with(Correction.NONE, runs, 0);
      case SCALE ->
          scale.isPresent()
              ? with(new ScaleCorrection(scale.getAsDouble()), runs, 0)
              : with(new ScaleCorrection(factor(runs)), runs, 1);
      case TABLE -> with(new TableCorrection(table(runs)), runs, runs.steps());
      case POLYNOMIAL -> with(polynomial(runs, degree), runs, degree + 1);
    };
  }

  private static CorrectionFit with(Correction correction, CalibrationRuns runs, int parameters) {
    List<Residual> residuals = new ArrayList<>();
    for (CalibrationPoint point : runs.readings()) {
      residuals.add(new Residual(point, correction.apply(point.indicated()) - point.applied()));
    }
    return new CorrectionFit(correction, residuals, parameters);
  }

  /** Least squares of applied = factor × indicated. */
  private static double factor(CalibrationRuns runs) {
    double products = 0;
    double squares = 0;
    for (CalibrationPoint point : runs.readings()) {
      products += point.applied() * point.indicated();
      squares += point.indicated() * point.indicated();
    }
    return products / squares;
  }

  private static List<CalibrationPoint> table(CalibrationRuns runs) {
    List<CalibrationPoint> points = new ArrayList<>();
    points.add(new CalibrationPoint(0, 0));
    for (int step = 0; step < runs.steps(); step++) {
      points.add(runs.mean(step));
    }
    return points;
  }

  private static PolynomialCorrection polynomial(CalibrationRuns runs, int degree) {
    List<CalibrationPoint> readings = runs.readings();
    double[] indicated = readings.stream().mapToDouble(CalibrationPoint::indicated).toArray();
    double[] applied = readings.stream().mapToDouble(CalibrationPoint::applied).toArray();
    PolynomialFit fit = PolynomialFit.of(indicated, applied, degree);
    double top = Arrays.stream(indicated).max().orElseThrow();
    return new PolynomialCorrection(fit.coefficients(), 0, top);
  }
}
