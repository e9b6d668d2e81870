package io.github.platenwire.study;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;

/**
 * How many times wider the cracks of one series are than those of another at the same load, and how
 * many times the load is at the same width: the ratio of geometric means, its interval from Welch's
 * t on the logarithms. Ratios of widths are skewed and often large; their logarithms are neither.
 * Stateless; safe for use by several threads.
 */
public final class CrackRatio {
  /**
   * Widths below so many standard uncertainties are near the noise (our choice: there a width is
   * known to worse than 20 %, and its logarithm leans visibly).
   */
  public static final double NOISE_MULTIPLE = 5;

  private CrackRatio() {}

  /** What may be said at one load or width. */
  public sealed interface Outcome {}

  /**
   * A ratio with its 95 % interval.
   *
   * @param ratio of the geometric means, first over second
   * @param interval of the ratio
   * @param degreesOfFreedom by Welch–Satterthwaite on the logarithms
   * @param nFirst specimens in the first series
   * @param nSecond specimens in the second series
   */
  public record Found(
      double ratio, Interval interval, double degreesOfFreedom, int nFirst, int nSecond)
      implements Outcome {}

  /**
   * A ratio without interval: a series has fewer than three specimens.
   *
   * @param ratio of the geometric means, first over second
   * @param nFirst specimens in the first series
   * @param nSecond specimens in the second series
   */
  public record FigureOnly(double ratio, int nFirst, int nSecond) implements Outcome {}

  /**
   * No ratio: a width cannot be told well enough from nothing.
   *
   * @param smallestWidthMillimetres the smallest width of the two series
   * @param leastUsableMillimetres what it would have to be
   * @param nFirst specimens in the first series
   * @param nSecond specimens in the second series
   */
  public record NearNoise(
      double smallestWidthMillimetres, double leastUsableMillimetres, int nFirst, int nSecond)
      implements Outcome {}

  /**
   * The outcome at one place of the shared range.
   *
   * @param place load in newtons, or width in millimetres
   * @param outcome what may be said there
   */
  public record At(double place, Outcome outcome) {}

  /**
   * The ratio of widths at one load.
   *
   * @param firstMillimetres one width a specimen
   * @param secondMillimetres one width a specimen
   * @param standardUncertaintyMillimetres of a single width, zero noise included
   * @throws IllegalArgumentException if a series is empty or a value is not finite
   */
  public static Outcome ofWidths(
      double[] firstMillimetres,
      double[] secondMillimetres,
      double standardUncertaintyMillimetres) {
    return ofWidths(
        firstMillimetres, secondMillimetres, standardUncertaintyMillimetres, NOISE_MULTIPLE);
  }

  /**
   * As {@link #ofWidths(double[], double[], double)}, with another multiple of the uncertainty.
   *
   * @param noiseMultiple widths below so many standard uncertainties give no ratio
   */
  public static Outcome ofWidths(
      double[] firstMillimetres,
      double[] secondMillimetres,
      double standardUncertaintyMillimetres,
      double noiseMultiple) {
    Values.requireFinite("width", firstMillimetres);
    Values.requireFinite("width", secondMillimetres);
    Values.requireNotNegative("standard uncertainty", standardUncertaintyMillimetres);
    Values.requirePositive("noise multiple", noiseMultiple);
    requireSpecimens(firstMillimetres, secondMillimetres);
    double least = noiseMultiple * standardUncertaintyMillimetres;
    double smallest = Math.min(smallest(firstMillimetres), smallest(secondMillimetres));
    if (smallest <= 0 || smallest < least) {
      return new NearNoise(smallest, least, firstMillimetres.length, secondMillimetres.length);
    }
    return ofPositive(firstMillimetres, secondMillimetres);
  }

  /**
   * The ratio of loads at one width; a load far above zero is never near the noise.
   *
   * @param firstNewtons one load a specimen, above zero
   * @param secondNewtons one load a specimen, above zero
   */
  public static Outcome ofLoads(double[] firstNewtons, double[] secondNewtons) {
    Values.requirePositive("load", firstNewtons);
    Values.requirePositive("load", secondNewtons);
    requireSpecimens(firstNewtons, secondNewtons);
    return ofPositive(firstNewtons, secondNewtons);
  }

  /**
   * Ratios of widths at equally spaced loads over the range that every specimen of both series
   * reached, both ends included.
   *
   * @param places how many, at least 2
   * @return empty when there is no shared range
   */
  public static List<At> overLoads(
      List<CrackCurve> first,
      List<CrackCurve> second,
      double standardUncertaintyMillimetres,
      int places) {
    double[] loads = grid(sharedLoads(first, second), places);
    return atLoads(first, second, standardUncertaintyMillimetres, loads);
  }

  /**
   * Ratios of widths at given loads; those outside the shared range are left out.
   *
   * @param loadsNewtons in the order to report them
   */
  public static List<At> atLoads(
      List<CrackCurve> first,
      List<CrackCurve> second,
      double standardUncertaintyMillimetres,
      double... loadsNewtons) {
    Optional<Interval> shared = sharedLoads(first, second);
    List<At> ratios = new ArrayList<>();
    for (double load : loadsNewtons) {
      if (shared.isPresent() && shared.get().contains(load)) {
        double[] widths = each(first, curve -> curve.widthMillimetresAt(load));
        double[] others = each(second, curve -> curve.widthMillimetresAt(load));
        ratios.add(new At(load, ofWidths(widths, others, standardUncertaintyMillimetres)));
      }
    }
    return List.copyOf(ratios);
  }

  /** The loads that every specimen of both series reached; empty when there are none. */
  public static Optional<Interval> sharedLoads(List<CrackCurve> first, List<CrackCurve> second) {
    return shared(first, second, curve -> Optional.of(curve.loadRangeNewtons()));
  }

  /** The widths that every specimen of both series reached; empty when there are none. */
  public static Optional<Interval> sharedWidths(List<CrackCurve> first, List<CrackCurve> second) {
    return shared(first, second, CrackCurve::widthRangeMillimetres);
  }

  /**
   * Ratios of loads at equally spaced widths over the range that every specimen of both series
   * reached. Widths near the noise are left out: where they are reached is chance.
   *
   * @param places how many, at least 2
   * @return empty when there is no shared range
   */
  public static List<At> overWidths(
      List<CrackCurve> first,
      List<CrackCurve> second,
      double standardUncertaintyMillimetres,
      int places) {
    double[] widths = grid(sharedWidths(first, second), places);
    return atWidths(first, second, standardUncertaintyMillimetres, widths);
  }

  /**
   * Ratios of loads at given widths; those outside the shared range, and those near the noise, are
   * left out.
   *
   * @param widthsMillimetres in the order to report them
   */
  public static List<At> atWidths(
      List<CrackCurve> first,
      List<CrackCurve> second,
      double standardUncertaintyMillimetres,
      double... widthsMillimetres) {
    Values.requireNotNegative("standard uncertainty", standardUncertaintyMillimetres);
    double least = NOISE_MULTIPLE * standardUncertaintyMillimetres;
    Optional<Interval> shared = sharedWidths(first, second);
    List<At> ratios = new ArrayList<>();
    for (double width : widthsMillimetres) {
      if (width < least || shared.isEmpty() || !shared.get().contains(width)) {
        continue;
      }
      double[] loads = each(first, curve -> curve.loadNewtonsAt(width));
      double[] others = each(second, curve -> curve.loadNewtonsAt(width));
      if (smallest(loads) > 0 && smallest(others) > 0) {
        ratios.add(new At(width, ofLoads(loads, others)));
      }
    }
    return List.copyOf(ratios);
  }

  private static Outcome ofPositive(double[] first, double[] second) {
    SeriesStatistics firstLogs = logs(first);
    SeriesStatistics secondLogs = logs(second);
    WelchDifference difference = WelchDifference.between(firstLogs, secondLogs);
    double ratio = Math.exp(difference.difference());
    return difference
        .inference()
        .<Outcome>map(
            sure ->
                new Found(
                    ratio,
                    new Interval(Math.exp(sure.interval().low()), Math.exp(sure.interval().high())),
                    sure.degreesOfFreedom(),
                    first.length,
                    second.length))
        .orElseGet(() -> new FigureOnly(ratio, first.length, second.length));
  }

  private static SeriesStatistics logs(double[] values) {
    double[] logs = new double[values.length];
    for (int i = 0; i < values.length; i++) {
      logs[i] = Math.log(values[i]);
    }
    return SeriesStatistics.of(logs);
  }

  private static void requireSpecimens(double[] first, double[] second) {
    if (first.length == 0 || second.length == 0) {
      throw new IllegalArgumentException("a series needs at least one specimen");
    }
  }

  private static double smallest(double[] values) {
    double smallest = values[0];
    for (double value : values) {
      smallest = Math.min(smallest, value);
    }
    return smallest;
  }

  private static Optional<Interval> shared(
      List<CrackCurve> first,
      List<CrackCurve> second,
      Function<CrackCurve, Optional<Interval>> range) {
    if (first.isEmpty() || second.isEmpty()) {
      throw new IllegalArgumentException("a series needs at least one specimen");
    }
    List<CrackCurve> all = new ArrayList<>(first);
    all.addAll(second);
    double low = Double.NEGATIVE_INFINITY;
    double high = Double.POSITIVE_INFINITY;
    for (CrackCurve curve : all) {
      Optional<Interval> own = range.apply(curve);
      if (own.isEmpty()) {
        return Optional.empty();
      }
      low = Math.max(low, own.get().low());
      high = Math.min(high, own.get().high());
    }
    return low < high ? Optional.of(new Interval(low, high)) : Optional.empty();
  }

  private static double[] grid(Optional<Interval> range, int places) {
    if (places < 2) {
      throw new IllegalArgumentException("a range needs at least two places, places=" + places);
    }
    if (range.isEmpty()) {
      return new double[0];
    }
    double low = range.get().low();
    double high = range.get().high();
    double[] grid = new double[places];
    for (int i = 0; i < places; i++) {
      grid[i] = low + (high - low) * i / (places - 1);
    }
    grid[places - 1] = high;
    return grid;
  }

  private static double[] each(
      List<CrackCurve> curves, Function<CrackCurve, OptionalDouble> figure) {
    return curves.stream().mapToDouble(curve -> figure.apply(curve).orElseThrow()).toArray();
  }
}
