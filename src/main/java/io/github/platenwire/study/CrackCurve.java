package io.github.platenwire.study;

import io.github.platenwire.statistics.Interval;
import io.github.platenwire.statistics.Values;
import java.util.Arrays;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The virgin curve of one specimen: crack width against load, load not falling. Between two points
 * it is a straight line; outside it says nothing. Immutable.
 */
public final class CrackCurve {
  private final double[] loadsNewtons;
  private final double[] widthsMillimetres;

  /**
   * A curve through points.
   *
   * @param loadsNewtons strictly rising, at least two
   * @param widthsMillimetres in the same order; zero noise may make single ones fall or be negative
   * @throws IllegalArgumentException if the points are not of that kind
   */
  public CrackCurve(double[] loadsNewtons, double[] widthsMillimetres) {
    Values.requireSameLength("loads", loadsNewtons.length, "widths", widthsMillimetres.length);
    Values.requireFinite("load", loadsNewtons);
    Values.requireFinite("width", widthsMillimetres);
    if (loadsNewtons.length < 2) {
      throw new IllegalArgumentException("a curve needs at least two points");
    }
    for (int i = 1; i < loadsNewtons.length; i++) {
      if (loadsNewtons[i] <= loadsNewtons[i - 1]) {
        throw new IllegalArgumentException(
            "loads must rise, number " + (i + 1) + " does not: " + loadsNewtons[i]);
      }
    }
    this.loadsNewtons = loadsNewtons.clone();
    this.widthsMillimetres = widthsMillimetres.clone();
  }

  /** The loads from the first to the last point, newtons. */
  public Interval loadRangeNewtons() {
    return new Interval(loadsNewtons[0], loadsNewtons[loadsNewtons.length - 1]);
  }

  /** From zero to the greatest width, millimetres; empty if the crack never opened. */
  public Optional<Interval> widthRangeMillimetres() {
    double low = widthsMillimetres[0];
    double high = low;
    for (double width : widthsMillimetres) {
      high = Math.max(high, width);
    }
    double from = Math.max(0, low);
    return high > from ? Optional.of(new Interval(from, high)) : Optional.empty();
  }

  /** Width at a load, millimetres; empty outside the curve. */
  public OptionalDouble widthMillimetresAt(double loadNewtons) {
    if (!loadRangeNewtons().contains(loadNewtons)) {
      return OptionalDouble.empty();
    }
    int above = Arrays.binarySearch(loadsNewtons, loadNewtons);
    if (above >= 0) {
      return OptionalDouble.of(widthsMillimetres[above]);
    }
    int next = -above - 1;
    return OptionalDouble.of(between(loadNewtons, loadsNewtons, widthsMillimetres, next));
  }

  /**
   * Load at which the crack first has a width, newtons; empty if it never has or had it already.
   */
  public OptionalDouble loadNewtonsAt(double widthMillimetres) {
    if (widthsMillimetres[0] > widthMillimetres) {
      return OptionalDouble.empty();
    }
    if (widthsMillimetres[0] == widthMillimetres) {
      return OptionalDouble.of(loadsNewtons[0]);
    }
    for (int i = 1; i < widthsMillimetres.length; i++) {
      if (widthsMillimetres[i] >= widthMillimetres) {
        return OptionalDouble.of(between(widthMillimetres, widthsMillimetres, loadsNewtons, i));
      }
    }
    return OptionalDouble.empty();
  }

  private static double between(double x, double[] xs, double[] ys, int next) {
    double share = (x - xs[next - 1]) / (xs[next] - xs[next - 1]);
    return ys[next - 1] + share * (ys[next] - ys[next - 1]);
  }
}
