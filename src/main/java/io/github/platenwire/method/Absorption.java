package io.github.platenwire.method;

import io.github.platenwire.statistics.LineFit;
import io.github.platenwire.statistics.Values;
import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * The rate of absorption of water by mass (ASTM C1585): I = gain/(area · density of water), its
 * least-squares slope on the square root of time, reported only when the points follow a line
 * closely enough. Immutable.
 *
 * @param leastCorrelation below this correlation no rate is reported
 * @param waterGramsPerCubicMillimetre density of water as the method takes it
 */
public record Absorption(double leastCorrelation, double waterGramsPerCubicMillimetre) {
  /**
   * One stretch of time over which a line is laid.
   *
   * @param name such as {@code initial}
   * @param fromSeconds its beginning, since the face met the water
   * @param toSeconds its end
   */
  public record Stretch(String name, double fromSeconds, double toSeconds) {
    private boolean contains(double seconds) {
      return fromSeconds <= seconds && seconds <= toSeconds;
    }
  }

  /** What may be said of one stretch. */
  public sealed interface Outcome {}

  /**
   * A rate.
   *
   * @param line absorption in mm on √time in √s; its slope is the rate, mm/√s
   */
  public record Rate(LineFit line) implements Outcome {}

  /**
   * No rate: the points do not follow a line.
   *
   * @param correlation found
   * @param asked the least with which a rate is reported
   */
  public record NotALine(double correlation, double asked) implements Outcome {}

  /**
   * No rate: fewer than three points in the stretch.
   *
   * @param points in the stretch
   */
  public record TooFew(int points) implements Outcome {}

  /**
   * Absorption at a mass gain, millimetres.
   *
   * @param gainGrams since the first mass
   * @param areaSquareMillimetres of the face in the water, above zero
   */
  public double millimetres(double gainGrams, double areaSquareMillimetres) {
    Values.requirePositive("area", areaSquareMillimetres);
    return gainGrams / (areaSquareMillimetres * waterGramsPerCubicMillimetre);
  }

  /**
   * The rate over one stretch; readings outside it are left alone.
   *
   * @param elapsedSeconds since the face met the water
   * @param gainsGrams in the same order
   * @param areaSquareMillimetres of the face in the water, above zero
   */
  public Outcome rate(
      double[] elapsedSeconds, double[] gainsGrams, double areaSquareMillimetres, Stretch stretch) {
    Values.requireSameLength("times", elapsedSeconds.length, "masses", gainsGrams.length);
    Values.requireNotNegative("time", elapsedSeconds);
    Values.requireFinite("mass gain", gainsGrams);
    Values.requirePositive("area", areaSquareMillimetres);
    int[] inside =
        IntStream.range(0, elapsedSeconds.length)
            .filter(i -> stretch.contains(elapsedSeconds[i]))
            .toArray();
    double[] roots = Arrays.stream(inside).mapToDouble(i -> Math.sqrt(elapsedSeconds[i])).toArray();
    if (Arrays.stream(roots).distinct().count() < 2 || roots.length < 3) {
      return new TooFew(roots.length);
    }
    double[] absorbed =
        Arrays.stream(inside)
            .mapToDouble(i -> millimetres(gainsGrams[i], areaSquareMillimetres))
            .toArray();
    LineFit line = LineFit.of(roots, absorbed);
    double correlation = line.correlation();
    return correlation >= leastCorrelation
        ? new Rate(line)
        : new NotALine(correlation, leastCorrelation);
  }
}
