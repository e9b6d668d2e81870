package io.github.platenwire.method;

import io.github.platenwire.statistics.ConfidenceSet;
import io.github.platenwire.statistics.Interval;
import io.github.platenwire.statistics.LineFit;
import io.github.platenwire.statistics.Values;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * How far a front has gone against time, as a line in time and as a line in its square root.
 * Immutable.
 *
 * @param linear depth in mm on time in s
 * @param squareRoot depth in mm on √time in √s
 * @param residuals both fits' residuals side by side, in the order of the readings
 * @param better the shape that the data point to; empty when they do not tell the two apart
 * @param lastSeconds time of the last reading
 */
public record FrontAdvance(
    LineFit linear,
    LineFit squareRoot,
    List<Residual> residuals,
    Optional<Shape> better,
    double lastSeconds) {
  /** With fewer readings the better of two lines is mostly chance. */
  private static final int FEWEST_TO_TELL_APART = 5;

  /**
   * Least n·ln(worse/better sum of squares), the difference of AICc between two fits of as many
   * parameters. 6 is odds of e³, 20 to 1: the same caution as a 95 % interval (our choice).
   */
  private static final double LEAST_AICC_DIFFERENCE = 6;

  /** Makes the list immutable. */
  public FrontAdvance {
    residuals = List.copyOf(residuals);
  }

  /** How the depth may go with time. */
  public enum Shape {
    /** In proportion to time. */
    LINEAR,
    /** In proportion to the square root of time. */
    SQUARE_ROOT
  }

  /**
   * What is left of one reading beside the two lines.
   *
   * @param elapsedSeconds time of the reading
   * @param depthMillimetres the reading
   * @param linearMillimetres reading less line in time
   * @param squareRootMillimetres reading less line in the square root of time
   */
  public record Residual(
      double elapsedSeconds,
      double depthMillimetres,
      double linearMillimetres,
      double squareRootMillimetres) {}

  /**
   * When the front reaches a depth.
   *
   * @param seconds along the fitted line
   * @param set 95 % set of the time at which the line itself is there, not of one more reading
   * @param beyondReadings whether this lies after the last reading: then the shape must go on
   */
  public record TimeToDepth(double seconds, ConfidenceSet set, boolean beyondReadings) {}

  /**
   * Fits both lines to readings.
   *
   * @param elapsedSeconds since the front started, not negative, at least two different
   * @param depthsMillimetres in the same order, at least three
   * @throws IllegalArgumentException if the readings are not of that kind
   */
  public static FrontAdvance of(double[] elapsedSeconds, double[] depthsMillimetres) {
    Values.requireSameLength("times", elapsedSeconds.length, "depths", depthsMillimetres.length);
    Values.requireNotNegative("time", elapsedSeconds);
    Values.requireFinite("depth", depthsMillimetres);
    LineFit linear = LineFit.of(elapsedSeconds, depthsMillimetres);
    double[] roots = Arrays.stream(elapsedSeconds).map(Math::sqrt).toArray();
    LineFit squareRoot = LineFit.of(roots, depthsMillimetres);
    List<Residual> residuals = new ArrayList<>();
    for (int i = 0; i < roots.length; i++) {
      double depth = depthsMillimetres[i];
      residuals.add(
          new Residual(
              elapsedSeconds[i],
              depth,
              depth - linear.at(elapsedSeconds[i]),
              depth - squareRoot.at(roots[i])));
    }
    double last = Arrays.stream(elapsedSeconds).max().orElseThrow();
    return new FrontAdvance(linear, squareRoot, residuals, better(linear, squareRoot), last);
  }

  private static Optional<Shape> better(LineFit linear, LineFit squareRoot) {
    if (linear.n() < FEWEST_TO_TELL_APART) {
      return Optional.empty();
    }
    double difference = aiccDifference(linear, squareRoot);
    if (Math.abs(difference) < LEAST_AICC_DIFFERENCE) {
      return Optional.empty();
    }
    return Optional.of(difference > 0 ? Shape.SQUARE_ROOT : Shape.LINEAR);
  }

  /** Positive when the square root fits better. Sums below rounding count as rounding. */
  private static double aiccDifference(LineFit linear, LineFit squareRoot) {
    double rounding =
        Math.ulp(linear.meanY()) * Math.ulp(linear.meanY()) + 1e-30 * linear.sumOfSquaresY();
    if (rounding == 0) {
      return 0;
    }
    return linear.n()
        * Math.log(
            Math.max(rounding, linear.residualSquares())
                / Math.max(rounding, squareRoot.residualSquares()));
  }

  /**
   * When the front reaches a depth along one of the two lines.
   *
   * @return empty when that line does not advance, or was at the depth before time zero
   */
  public Optional<TimeToDepth> timeTo(double depthMillimetres, Shape shape) {
    Values.requireFinite("depth", depthMillimetres);
    LineFit line = shape == Shape.LINEAR ? linear : squareRoot;
    if (line.slope() <= 0) {
      return Optional.empty();
    }
    double place = line.meanX() + (depthMillimetres - line.meanY()) / line.slope();
    if (place < 0) {
      return Optional.empty();
    }
    double seconds = shape == Shape.LINEAR ? place : place * place;
    ConfidenceSet set = inTime(line.whereReached(depthMillimetres, Values.LEVEL), shape);
    return Optional.of(new TimeToDepth(seconds, set, seconds > lastSeconds));
  }

  private static ConfidenceSet inTime(ConfidenceSet set, Shape shape) {
    if (set instanceof ConfidenceSet.Bounded bounded) {
      Interval places = bounded.interval();
      return new ConfidenceSet.Bounded(
          new Interval(seconds(places.low(), shape), seconds(places.high(), shape)));
    }
    if (set instanceof ConfidenceSet.Unbounded open) {
      // Times before the start are none: a part that ends there is empty.
      double upTo = open.upTo() < 0 ? Double.NEGATIVE_INFINITY : seconds(open.upTo(), shape);
      return new ConfidenceSet.Unbounded(upTo, seconds(open.from(), shape));
    }
    return set;
  }

  private static double seconds(double place, Shape shape) {
    double later = Math.max(0, place);
    return shape == Shape.LINEAR ? later : later * later;
  }
}
