package io.github.platenwire.study;

import io.github.platenwire.statistics.Values;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.hipparchus.exception.MathRuntimeException;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.QRDecomposition;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LeastSquaresBuilder;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LeastSquaresOptimizer;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LevenbergMarquardtOptimizer;

/**
 * A curve fitted to points by least squares (Levenberg–Marquardt). Immutable.
 *
 * @param parameters found
 * @param standardErrors of the parameters, from the curve's slopes at the end and the residuals
 * @param residualSquares sum of the squared residuals, in the squared unit of y
 * @param degreesOfFreedom points less parameters
 */
record CurveFit(
    List<Double> parameters,
    List<Double> standardErrors,
    double residualSquares,
    int degreesOfFreedom) {
  private static final int MOST_STEPS = 2000;

  CurveFit {
    parameters = List.copyOf(parameters);
    standardErrors = List.copyOf(standardErrors);
  }

  /** A curve with parameters. */
  interface Curve {
    double value(double x, double[] parameters);

    /** Derivatives of the value by each parameter. */
    double[] slopes(double x, double[] parameters);
  }

  double residualDeviation() {
    return Math.sqrt(residualSquares / degreesOfFreedom);
  }

  /**
   * The least-squares fit from a first guess.
   *
   * @return empty when no minimum is found or the points do not fix the parameters
   * @throws IllegalArgumentException if there are not more points than parameters
   */
  static Optional<CurveFit> of(Curve curve, double[] x, double[] y, double... start) {
    Values.requireSameLength("x", x.length, "y", y.length);
    if (x.length <= start.length) {
      throw new IllegalArgumentException(
          "needs more points than parameters: " + x.length + " against " + start.length);
    }
    try {
      LeastSquaresOptimizer.Optimum optimum =
          new LevenbergMarquardtOptimizer(100, 1e-15, 1e-14, 1e-15, Double.MIN_NORMAL)
              .optimize(
                  new LeastSquaresBuilder()
                      .model(p -> values(curve, x, p), p -> slopes(curve, x, p))
                      .target(y)
                      .start(start)
                      .maxEvaluations(MOST_STEPS)
                      .maxIterations(MOST_STEPS)
                      .build());
      return Optional.of(describe(curve, x, y, optimum.getPoint().toArray()));
    } catch (MathRuntimeException notFound) {
      return Optional.empty();
    }
  }

  private static CurveFit describe(Curve curve, double[] x, double[] y, double[] parameters) {
    double[] squares = values(curve, x, parameters);
    for (int i = 0; i < x.length; i++) {
      squares[i] = (y[i] - squares[i]) * (y[i] - squares[i]);
    }
    double residualSquares = Values.sum(squares);
    int degrees = x.length - parameters.length;
    double deviation = Math.sqrt(residualSquares / degrees);
    double[] perUnit = errorsPerUnitDeviation(slopes(curve, x, parameters));
    return new CurveFit(
        boxed(parameters),
        boxed(Arrays.stream(perUnit).map(unit -> unit * deviation).toArray()),
        residualSquares,
        degrees);
  }

  /** Square roots of the diagonal of (JᵀJ)⁻¹, by QR of J with its columns brought to length 1. */
  private static double[] errorsPerUnitDeviation(double[][] slopes) {
    RealMatrix jacobian = MatrixUtils.createRealMatrix(slopes);
    int columns = jacobian.getColumnDimension();
    double[] lengths = new double[columns];
    for (int j = 0; j < columns; j++) {
      lengths[j] = jacobian.getColumnVector(j).getNorm();
      jacobian.setColumnVector(j, jacobian.getColumnVector(j).mapDivide(lengths[j]));
    }
    RealMatrix upper =
        new QRDecomposition(jacobian).getR().getSubMatrix(0, columns - 1, 0, columns - 1);
    RealMatrix inverse = MatrixUtils.inverse(upper, 1e-14);
    double[] errors = new double[columns];
    for (int j = 0; j < columns; j++) {
      errors[j] = inverse.getRowVector(j).getNorm() / lengths[j];
    }
    return errors;
  }

  private static double[] values(Curve curve, double[] x, double[] parameters) {
    return Arrays.stream(x).map(one -> curve.value(one, parameters)).toArray();
  }

  private static double[][] slopes(Curve curve, double[] x, double[] parameters) {
    return Arrays.stream(x).mapToObj(one -> curve.slopes(one, parameters)).toArray(double[][]::new);
  }

  private static List<Double> boxed(double[] values) {
    List<Double> boxed = new ArrayList<>();
    for (double value : values) {
      boxed.add(value);
    }
    return boxed;
  }
}
