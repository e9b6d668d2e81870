package io.github.platenwire.audit;

import java.util.Optional;

/**
 * Whether two traces are the same readings: their outlines must agree, and then their noise, or
 * where an indicator is too coarse to show noise, the moments of its steps and either small
 * departures from an even course or uneven moments of arrival. Stateless.
 *
 * <p>Two honest traces have noise of their own. In a stretch of 128 readings the correlation of two
 * independent residuals has a standard deviation of 0.09; the greatest over the shifts that are
 * tried stays near 0.3, and passes 0.55 (six deviations, normal approximation) in fewer than one
 * stretch of a million. That the middle one of four stretches or more does so by chance will not
 * happen. What hundreds of emulated specimens and their copies come to is printed by the tests.
 */
final class TwinTest {
  /** Noise that correlates above this is the same noise. */
  static final double SAME_NOISE = 0.55;

  /**
   * The same, where a trace has fewer than {@value #FULL_STRETCHES} full stretches: in slow traces
   * the wander of the rate is part of the residuals.
   */
  static final double SAME_NOISE_SHORT = 0.85;

  private static final int FULL_STRETCHES = 4;

  /** Share of equal changes above which two coarse traces may be the same. */
  static final double SAME_CHANGES = 0.99;

  /** How far outlines of the same readings may lie apart, as a share of the peak. */
  private static final double NEAR = 0.0002;

  /** Outlines farther apart than this are never the same, however blurred. */
  private static final double FAR = 0.02;

  private TwinTest() {}

  /**
   * What shows that two traces are the same.
   *
   * @param figure correlation of their noise, or share of equal changes
   * @param byNoise which of the two
   */
  record Evidence(double figure, boolean byNoise) {}

  /** Whether two outlines are near enough for their noise to be compared. */
  static boolean areNear(TraceShape a, TraceShape b) {
    return a.distance(b) <= nearness(a, b);
  }

  /** The greatest distance at which two outlines are still compared. */
  static double nearness(TraceShape a, TraceShape b) {
    return Math.min(FAR, NEAR + a.blur() + b.blur());
  }

  /** Compares two traces; empty if they are two tests, or if nothing can be told. */
  static Optional<Evidence> compare(LoadTrace a, LoadTrace b) {
    Optional<Landmarks> first = Landmarks.of(a);
    Optional<Landmarks> second = Landmarks.of(b);
    if (first.isEmpty() || second.isEmpty()) {
      return Optional.empty();
    }
    Optional<NoiseMatch.Found> noise = NoiseMatch.of(a, first.get(), b, second.get());
    if (noise.isPresent()) {
      double correlation = noise.get().correlation();
      boolean isShort = noise.get().stretches() < FULL_STRETCHES;
      return correlation > (isShort ? SAME_NOISE_SHORT : SAME_NOISE)
          ? Optional.of(new Evidence(correlation, true))
          : Optional.empty();
    }
    return compareMute(a, first.get(), b, second.get());
  }

  /** Without noise equal changes alone prove nothing: two even loadings have them too. */
  private static Optional<Evidence> compareMute(
      LoadTrace a, Landmarks first, LoadTrace b, Landmarks second) {
    double same = ChangeMatch.of(a, first, b, second);
    boolean proven =
        same > SAME_CHANGES
            && ((OwnCourse.isIn(a, first) && OwnCourse.isIn(b, second))
                || SameArrivals.isIn(a, first, b, second));
    return proven ? Optional.of(new Evidence(same, false)) : Optional.empty();
  }
}
