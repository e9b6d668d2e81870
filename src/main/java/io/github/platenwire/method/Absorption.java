package io.github.platenwire.method;

import io.github.platenwire.statistics.LineFit;
import io.github.platenwire.statistics.Values;
import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * The rate of absorption of water by mass (ASTM C1585, from memory): I = gain/(area · density of
 * water), its least-squares slope on the square root of time, reported only when the points follow
 * a line with a correlation of at least 0.98. Stateless; safe for use by several threads.
 */
public final class Absorption {
  /** Below this correlation C1585 lets no rate be reported (from memory). */
  private static final double LEAST_CORRELATION = 0.98;

  /** Water, grams a cubic millimetre, as C1585 takes it (from memory). */
  private static final double WATER_GRAMS_PER_CUBIC_MILLIMETRE = 0.001;

  private static final double INITIAL_FROM_SECONDS = 60;
  private static final double INITIAL_TO_SECONDS = 6 * 3600.0;
  private static final double SECONDARY_FROM_SECONDS = 86_400;
  private static final double SECONDARY_TO_SECONDS = 7 * 86_400.0;

  private Absorption() {}

  /** The two stretches over which C1585 lays a line (from memory). */
  public enum Stretch {
    /** One minute to six hours. */
    INITIAL(INITIAL_FROM_SECONDS, INITIAL_TO_SECONDS),
    /** One to seven days. */
    SECONDARY(SECONDARY_FROM_SECONDS, SECONDARY_TO_SECONDS);

    private final double fromSeconds;
    private final double toSeconds;

    Stretch(double fromSeconds, double toSeconds) {
      this.fromSeconds = fromSeconds;
      this.toSeconds = toSeconds;
    }

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
   * @param correlation found, below 0.98
   */
  public record NotALine(double correlation) implements Outcome {}

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
  public static double millimetres(double gainGrams, double areaSquareMillimetres) {
    Values.requirePositive("area", areaSquareMillimetres);
    return gainGrams / (areaSquareMillimetres * WATER_GRAMS_PER_CUBIC_MILLIMETRE);
  }

  /**
   * The rate over one stretch; readings outside it are left alone.
   *
   * @param elapsedSeconds since the face met the water
   * @param gainsGrams in the same order
   * @param areaSquareMillimetres of the face in the water, above zero
   */
  public static Outcome rate(
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
    return correlation >= LEAST_CORRELATION ? new Rate(line) : new NotALine(correlation);
  }
}
