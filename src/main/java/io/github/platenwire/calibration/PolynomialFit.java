package io.github.platenwire.calibration;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.hipparchus.stat.regression.OLSMultipleLinearRegression;

/**
 * A polynomial by least squares: QR decomposition on abscissas divided by the greatest of them, so
 * that the powers stay of one size. Immutable.
 *
 * @param coefficients of the powers 0, 1, 2 …
 * @param residualSquares sum of the squared residuals, in squares of y
 */
public record PolynomialFit(List<Double> coefficients, double residualSquares) {
  /** The greatest degree that is fitted; higher ones wave between the steps. */
  public static final int GREATEST_DEGREE = 4;

  /** Makes the list immutable. */
  public PolynomialFit {
    coefficients = List.copyOf(coefficients);
  }

  /**
   * Fits.
   *
   * @param x at least degree + 2 values, degree + 1 of them different
   * @param y as many
   * @param degree 1 to {@link #GREATEST_DEGREE}
   * @throws IllegalArgumentException if there are too few values or the degree is not possible
   */
  public static PolynomialFit of(double[] x, double[] y, int degree) {
    long different = Arrays.stream(x).distinct().count();
    if (degree < 1
        || degree > GREATEST_DEGREE
        || x.length != y.length
        || x.length < degree + 2
        || different < degree + 1) {
      throw new IllegalArgumentException(
          "a polynomial of degree "
              + degree
              + " needs at least "
              + (degree + 2)
              + " readings at "
              + (degree + 1)
              + " different values; the degree may be 1 to "
              + GREATEST_DEGREE
              + ", and there are "
              + x.length
              + " readings");
    }
    double greatest = 0;
    for (double value : x) {
      greatest = Math.max(greatest, Math.abs(value));
    }
    double[][] powers = new double[x.length][degree];
    for (int i = 0; i < x.length; i++) {
      for (int power = 1; power <= degree; power++) {
        powers[i][power - 1] = Math.pow(x[i] / greatest, power);
      }
    }
    OLSMultipleLinearRegression regression = new OLSMultipleLinearRegression();
    regression.newSampleData(y, powers);
    double[] scaled = regression.estimateRegressionParameters();
    List<Double> coefficients = new ArrayList<>();
    for (int power = 0; power <= degree; power++) {
      coefficients.add(scaled[power] / Math.pow(greatest, power));
    }
    return new PolynomialFit(coefficients, regression.calculateResidualSumOfSquares());
  }
}
