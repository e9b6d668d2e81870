package io.github.platenwire.study;

import io.github.platenwire.statistics.Interval;
import io.github.platenwire.statistics.LineFit;
import io.github.platenwire.statistics.Values;
import java.util.Arrays;
import java.util.Optional;

/**
 * Whether a series still gains strength: the least-squares slope of strength on the natural
 * logarithm of age. Immutable.
 *
 * @param n number of specimens
 * @param firstAgeDays youngest age
 * @param lastAgeDays oldest age
 * @param line strength in MPa on ln(age in days); empty when no line can be laid
 * @param verdict what may be said
 */
public record AgeTrend(
    int n, double firstAgeDays, double lastAgeDays, Optional<LineFit> line, Verdict verdict) {
  /** Specimens needed altogether before a verdict: two ages of three, or more ages. */
  private static final int FEWEST_SPECIMENS = 2 * Values.FEWEST_FOR_VERDICT;

  private static final double POWER = 0.8;

  /** What may be said of the gain. */
  public sealed interface Verdict {}

  /**
   * The slope's 95 % interval lies above zero.
   *
   * @param gainMegapascals from the first to the last age along the line
   * @param interval of that gain, MPa
   */
  public record Gains(double gainMegapascals, Interval interval) implements Verdict {}

  /**
   * The slope's 95 % interval holds zero.
   *
   * @param gainMegapascals from the first to the last age along the line
   * @param interval of that gain, MPa
   * @param smallestDetectableGainMegapascals the true gain over the same ages that so many
   *     specimens with this scatter would show, in the sense of {@link Gains}, four times out of
   *     five
   */
  public record NoGainShown(
      double gainMegapascals, Interval interval, double smallestDetectableGainMegapascals)
      implements Verdict {}

  /**
   * The slope's 95 % interval lies below zero: look at the specimens before believing it.
   *
   * @param gainMegapascals from the first to the last age along the line, negative
   * @param interval of that gain, MPa
   */
  public record Falls(double gainMegapascals, Interval interval) implements Verdict {}

  /**
   * No verdict.
   *
   * @param reason in words for a person
   */
  public record TooFew(String reason) implements Verdict {}

  /**
   * The trend of single strengths over age. A verdict needs six specimens, and three at each age
   * where there are only two ages.
   *
   * <p>The smallest detectable gain comes from the noncentral t distribution at 95 % and 80 %
   * power, with the standard error that was observed in place of the unknown true one.
   *
   * @param agesDays above zero, one for each specimen
   * @param strengthsMegapascals in the same order
   * @throws IllegalArgumentException if the arrays do not match or a value cannot be
   */
  public static AgeTrend of(double[] agesDays, double[] strengthsMegapascals) {
    Values.requireSameLength("ages", agesDays.length, "strengths", strengthsMegapascals.length);
    Values.requirePositive("age", agesDays);
    Values.requireFinite("strength", strengthsMegapascals);
    if (agesDays.length == 0) {
      throw new IllegalArgumentException("a trend needs at least one specimen");
    }
    double first = Arrays.stream(agesDays).min().orElseThrow();
    double last = Arrays.stream(agesDays).max().orElseThrow();
    if (first == last || agesDays.length < 3) {
      String reason =
          first == last
              ? "all specimens have the same age"
              : "there are only " + agesDays.length + " specimens";
      return new AgeTrend(agesDays.length, first, last, Optional.empty(), new TooFew(reason));
    }
    LineFit line =
        LineFit.of(Arrays.stream(agesDays).map(Math::log).toArray(), strengthsMegapascals);
    Verdict verdict =
        tooFew(agesDays)
            .<Verdict>map(TooFew::new)
            .orElseGet(() -> judge(line, Math.log(last / first)));
    return new AgeTrend(agesDays.length, first, last, Optional.of(line), verdict);
  }

  private static Optional<String> tooFew(double[] agesDays) {
    if (agesDays.length < FEWEST_SPECIMENS) {
      return Optional.of("a verdict on the gain needs six specimens, there are " + agesDays.length);
    }
    double[] ages = Arrays.stream(agesDays).distinct().toArray();
    for (double age : ages) {
      long count = Arrays.stream(agesDays).filter(other -> other == age).count();
      if (ages.length == 2 && count < Values.FEWEST_FOR_VERDICT) {
        return Optional.of(
            "a verdict from two ages needs three specimens at each, there are "
                + count
                + " at "
                + Figures.age(age));
      }
    }
    return Optional.empty();
  }

  private static Verdict judge(LineFit line, double logSpan) {
    Interval slope = line.slopeInterval(Values.LEVEL);
    double gain = line.slope() * logSpan;
    Interval interval = new Interval(slope.low() * logSpan, slope.high() * logSpan);
    if (slope.low() > 0) {
      return new Gains(gain, interval);
    }
    if (slope.high() < 0) {
      return new Falls(gain, interval);
    }
    double detectable =
        NoncentralT.detectable(Values.LEVEL, POWER, line.degreesOfFreedom())
            * line.slopeStandardError()
            * logSpan;
    return new NoGainShown(gain, interval, detectable);
  }
}
