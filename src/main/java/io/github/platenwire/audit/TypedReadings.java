package io.github.platenwire.audit;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Looks for what readings have that were typed or computed rather than measured: no noise at all, a
 * course along a perfect line, last digits that people like, noise that repeats itself, digits that
 * the device does not have. Stateless.
 *
 * <p>Each limit lies where no machine comes, not where most do not: a coarse indicator at rest
 * shows the same value for minutes, an even pump draws a nearly straight line, an emulated clock
 * has perfectly even intervals, and none of these is a mark by itself. Even intervals only make the
 * limits for missing noise and for straightness stricter. The limits are this program's own; what
 * honest and made-up traces come to is printed by the tests.
 */
final class TypedReadings {
  /** Fewer readings than this on the rise tell nothing. */
  private static final int FEWEST_READINGS = 60;

  /**
   * Least noise that a loaded machine has, as a share of the peak: a few newtons at some hundred
   * kilonewtons. Rounding alone makes more in any indicator with up to 40000 steps.
   */
  private static final double LEAST_NOISE = 7e-6;

  private static final double LEAST_NOISE_IF_EVEN = 3e-5;

  private static final int STRAIGHT_STEPS = 1000;
  private static final int STRAIGHT_STEPS_IF_EVEN = 400;
  private static final double OFF_STEP_SHARE = 0.02;

  /** A rig's file may be a digit behind its device; ten times finer is no longer that. */
  private static final double FINER = 9.5;

  private final LoadTrace trace;
  private final OptionalDouble resolution;
  private final Landmarks rise;
  private final boolean even;
  private final List<Mark> marks = new ArrayList<>();

  private TypedReadings(LoadTrace trace, OptionalDouble resolution, Landmarks rise) {
    this.trace = trace;
    this.resolution = resolution;
    this.rise = rise;
    this.even = EvenIntervals.longestRun(trace.micros()) > trace.length() / 2;
  }

  /**
   * One mark of readings that were not measured.
   *
   * @param expected what measured readings are like
   * @param seen what these are like
   */
  record Mark(String expected, String seen) {}

  /**
   * All marks of a trace.
   *
   * @param resolution the smallest step that the rig's file says the channel has, in the channel's
   *     unit, if it says so
   */
  static List<Mark> of(LoadTrace trace, OptionalDouble resolution) {
    Optional<Landmarks> rise = Landmarks.of(trace);
    if (rise.isEmpty() || rise.get().span() < FEWEST_READINGS) {
      return List.of();
    }
    TypedReadings typed = new TypedReadings(trace, resolution, rise.get());
    typed.noise();
    if (trace.hasDigits()) {
      typed.straight();
      typed.decimals();
      typed.lastDigits();
      typed.repetition();
    }
    return typed.marks;
  }

  /** Noise between 20 % and 90 % of the peak, as a share of the peak. */
  static double noiseShare(LoadTrace trace, Landmarks rise) {
    return Residuals.roughness(trace.values(), (int) rise.from(), (int) rise.to())
        / Residuals.GAIN
        / rise.peak();
  }

  private void noise() {
    double share = noiseShare(trace, rise);
    double least = even ? LEAST_NOISE_IF_EVEN : LEAST_NOISE;
    if (share < least) {
      mark(
          String.format(
              Locale.ROOT,
              "noise of at least %.0f millionths of the peak while the load rises",
              least * 1e6),
          String.format(
              Locale.ROOT, "readings that scatter by %.2f millionths%s", share * 1e6, evenWords()));
    }
  }

  private void straight() {
    int steps = even ? STRAIGHT_STEPS_IF_EVEN : STRAIGHT_STEPS;
    int straight = StraightRuns.parts(trace, rise, steps);
    if (straight >= StraightRuns.MOST_HONEST) {
      mark(
          "a load that wanders by more than its rounding",
          straight
              + " of "
              + StraightRuns.PARTS
              + " parts of the rise lie on a straight line to half a step"
              + evenWords());
    }
  }

  private String evenWords() {
    return even ? ", at intervals that are equal to the microsecond" : "";
  }

  private void decimals() {
    if (trace.fewestDecimals() != trace.mostDecimals()) {
      mark(
          "the same number of decimals in each reading",
          "between " + trace.fewestDecimals() + " and " + trace.mostDecimals() + " decimals");
    }
    double unit = Math.pow(10, -trace.mostDecimals());
    if (resolution.isPresent() && resolution.getAsDouble() > unit * FINER) {
      double step = resolution.getAsDouble() / unit;
      long off = 0;
      for (long count : trace.counts()) {
        off += Math.abs(count / step - Math.rint(count / step)) > 0.01 ? 1 : 0;
      }
      if (off > OFF_STEP_SHARE * trace.length()) {
        mark(
            "readings in steps of " + resolution.getAsDouble() + ", as the rig's file says",
            off + " of " + trace.length() + " readings lie between two steps");
      }
    }
  }

  private void lastDigits() {
    LastDigits digits = LastDigits.of(trace);
    if (digits.areLiked()) {
      mark(
          "last digits that come about equally often",
          String.format(
              Locale.ROOT,
              "of %d readings %.0f %% end in %s",
              digits.number(),
              100 * digits.share(),
              digits.words()));
    }
  }

  private void repetition() {
    RepeatedNoise.find(trace.counts())
        .ifPresent(
            found ->
                mark(
                    "noise that never comes twice",
                    "the differences of "
                        + RepeatedNoise.LENGTH
                        + " readings from reading "
                        + (found.first() + 1)
                        + " on come again from reading "
                        + (found.second() + 1)
                        + " on"));
  }

  private void mark(String expected, String seen) {
    marks.add(new Mark(expected, seen));
  }
}
