package io.github.platenwire.calibration;

import io.github.platenwire.quantity.Unit;
import java.util.ArrayList;
import java.util.List;

/**
 * A polynomial in the indicated value. Immutable; safe for any thread.
 *
 * @param coefficients of the powers 0, 1, 2 …; at least two
 * @param low least indicated value that it may be used for
 * @param high greatest indicated value that it may be used for
 */
public record PolynomialCorrection(List<Double> coefficients, double low, double high)
    implements Correction {
  /** The noise of an unloaded channel around the lower end is no excursion: 1 %. */
  private static final double SLACK_PART = 0.01;

  /** How many places between {@code low} and {@code high} are looked at. */
  private static final int PLACES = 1000;

  /**
   * Checks that it rises wherever it may be used.
   *
   * @throws IllegalArgumentException if it has fewer than two coefficients, its range is empty, or
   *     it falls anywhere between {@code low} and {@code high}, judged at a thousand places; the
   *     message is fit for a person
   */
  public PolynomialCorrection {
    coefficients = List.copyOf(coefficients);
    if (coefficients.size() < 2 || !(low < high)) {
      throw new IllegalArgumentException(
          "a polynomial needs at least two coefficients and a range, coefficients="
              + coefficients
              + " low="
              + low
              + " high="
              + high);
    }
    for (int i = 0; i <= PLACES; i++) {
      double at = low + (high - low) * i / PLACES;
      if (!(slope(coefficients, at) > 0)) {
        throw new IllegalArgumentException(
            "the polynomial does not rise at the indicated value "
                + Plain.digits(at, 6)
                + "; take a lower degree");
      }
    }
  }

  private static double slope(List<Double> coefficients, double at) {
    double slope = 0;
    for (int power = coefficients.size() - 1; power > 0; power--) {
      slope = slope * at + power * coefficients.get(power);
    }
    return slope;
  }

  @Override
  public double apply(double indicated) {
    double value = 0;
    for (int power = coefficients.size() - 1; power >= 0; power--) {
      value = value * indicated + coefficients.get(power);
    }
    return value;
  }

  @Override
  public boolean covers(double indicated) {
    return indicated >= low - SLACK_PART * (high - low) && indicated <= high;
  }

  @Override
  public Correction inUnit(Unit from, Unit to) {
    if (from == to) {
      return this;
    }
    double ratio = from.convert(1, to);
    List<Double> converted = new ArrayList<>();
    for (int power = 0; power < coefficients.size(); power++) {
      converted.add(coefficients.get(power) * Math.pow(ratio, 1.0 - power));
    }
    return new PolynomialCorrection(converted, from.convert(low, to), from.convert(high, to));
  }

  @Override
  public String words() {
    return "polynomial of degree " + (coefficients.size() - 1);
  }
}
