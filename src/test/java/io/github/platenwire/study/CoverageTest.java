package io.github.platenwire.study;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.platenwire.method.FrontAdvance;
import io.github.platenwire.statistics.Interval;
import io.github.platenwire.statistics.LineFit;
import io.github.platenwire.statistics.StudentT;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.DoubleUnaryOperator;
import java.util.function.Predicate;
import org.junit.jupiter.api.Test;

/**
 * Simulated studies with a known truth: 95 % intervals must hold it in about 95 of 100. 2000 seeded
 * studies have a standard error of 0.5 %.
 */
class CoverageTest {
  private static final int STUDIES = 2000;

  private static void assertCovers(String what, long seed, Predicate<Normal> study) {
    Normal normal = new Normal(new SplittableRandom(seed));
    int covered = 0;
    for (int i = 0; i < STUDIES; i++) {
      covered += study.test(normal) ? 1 : 0;
    }
    double percent = 100.0 * covered / STUDIES;
    System.out.println(
        "coverage of 95 % intervals, " + what + ": " + percent + " % of " + STUDIES + " studies");
    assertThat(percent).isBetween(93.0, 97.0);
  }

  /** Numbers of specimens go round through 3, 4, 5, in each series on its own. */
  private static final class Numbers {
    private int calls;

    int next() {
      int place = calls++;
      return 3 + (place + place / 3) % 3;
    }
  }

  @Test
  void ratio_simulatedStudies_covered() {
    Numbers numbers = new Numbers();
    assertCovers(
        "ratio of means, equal spread in %",
        1, normal -> ratioHolds(normal, numbers, 42, 0.04, 30, 0.04));
    assertCovers(
        "ratio of means, unequal spread",
        2,
        normal -> ratioHolds(normal, numbers, 66, 0.03, 30, 0.08));
  }

  private static boolean ratioHolds(
      Normal normal, Numbers numbers, double mean1, double cv1, double mean2, double cv2) {
    SeriesStatistics first = SeriesStatistics.of(normal.sample(numbers.next(), mean1, cv1 * mean1));
    SeriesStatistics second =
        SeriesStatistics.of(normal.sample(numbers.next(), mean2, cv2 * mean2));
    return FiellerRatio.unequalVariances(first, second).set().contains(mean1 / mean2);
  }

  /**
   * Three series against one reference: all three ratios at once, with one spread for all. A set
   * holds the true ratio where its t is at most the quantile, so where the distribution at the
   * greatest t is at most 0.95: asked so, as 2000 quantiles take minutes.
   */
  @Test
  void ratiosOfSeveralSeries_simulatedStudies_allCoveredAtOnce() {
    Numbers numbers = new Numbers();
    assertCovers(
        "three ratios to one reference at once",
        9,
        normal -> {
          List<SeriesStatistics> all = new ArrayList<>();
          for (double mean : new double[] {30, 42, 33, 27}) {
            all.add(SeriesStatistics.of(normal.sample(numbers.next(), mean, 1.2)));
          }
          return allRatiosHold(all, new double[] {1, 1.4, 1.1, 0.9});
        });
  }

  private static boolean allRatiosHold(List<SeriesStatistics> all, double[] truth) {
    OneWayAnalysis analysis = OneWayAnalysis.of(all);
    SeriesStatistics reference = all.get(0);
    int[] counts = all.stream().skip(1).mapToInt(SeriesStatistics::n).toArray();
    double[] found =
        all.stream().skip(1).mapToDouble(one -> one.mean() / reference.mean()).toArray();
    double greatest = 0;
    for (int i = 1; i < all.size(); i++) {
      double error =
          Math.sqrt(
              analysis.withinVariance()
                  * (1.0 / all.get(i).n() + truth[i] * truth[i] / reference.n()));
      double t = Math.abs(all.get(i).mean() - truth[i] * reference.mean()) / error;
      greatest = Math.max(greatest, t);
    }
    return new DunnettDistribution(reference.n(), counts, found, analysis.withinDegrees())
            .below(greatest)
        <= 0.95;
  }

  @Test
  void slopeOnLogAge_simulatedStudies_covered() {
    Numbers numbers = new Numbers();
    double slope = 5;
    assertCovers(
        "slope of strength on ln(age)",
        3,
        normal -> {
          double[] agesDays = agesDays(numbers.next(), 3, 7, 28);
          double[] strengths = strengths(normal, agesDays, 20, slope, 1.5);
          LineFit line = AgeTrend.of(agesDays, strengths).line().orElseThrow();
          return line.slopeInterval(0.95).contains(slope);
        });
  }

  @Test
  void ageCurves_simulatedStudies_strengthAt28DaysCovered() {
    Numbers numbers = new Numbers();
    double b = 0.85;
    assertCovers(
        "28-day strength of the ACI curve",
        7,
        normal -> {
          double[] ages = agesDays(numbers.next(), 3, 7, 28);
          double[] strengths = scattered(normal, ages, t -> t / (28 * (1 - b) + b * t));
          AgeCurves.AciFit fit = AgeCurves.fitAci(ages, strengths).orElseThrow();
          return holds35(fit.strength28Megapascals(), fit.degreesOfFreedom());
        });
    assertCovers(
        "28-day strength of the EN curve",
        8,
        normal -> {
          double[] ages = agesDays(numbers.next(), 3, 7, 28);
          double[] strengths = scattered(normal, ages, AgeCurves.EnCement.N::ratioAt);
          AgeCurves.EnFit fit = AgeCurves.fitEn(ages, strengths).orElseThrow();
          return holds35(fit.strength28Megapascals(), fit.degreesOfFreedom());
        });
  }

  private static double[] scattered(Normal normal, double[] ages, DoubleUnaryOperator ratio) {
    double[] strengths = new double[ages.length];
    for (int i = 0; i < ages.length; i++) {
      strengths[i] = 35 * ratio.applyAsDouble(ages[i]) + 1.5 * normal.next();
    }
    return strengths;
  }

  private static boolean holds35(AgeCurves.Coefficient strength28, int degrees) {
    double reach = StudentT.twoSided(0.95, degrees) * strength28.standardError();
    return Interval.around(strength28.value(), reach).contains(35);
  }

  @Test
  void crackRatio_simulatedStudies_covered() {
    Numbers numbers = new Numbers();
    assertCovers(
        "ratio of crack widths",
        4,
        normal -> {
          double[] plain = widths(normal, numbers.next(), 0.60, 0.35);
          double[] coated = widths(normal, numbers.next(), 0.08, 0.20);
          CrackRatio.Outcome outcome = CrackRatio.ofWidths(plain, coated, 0.001);
          return outcome instanceof CrackRatio.Found found
              && found.interval().contains(0.60 / 0.08);
        });
  }

  @Test
  void timeToDepth_simulatedLogs_covered() {
    assertCovers(
        "time of a front to a depth",
        5,
        normal -> {
          double[] seconds = {600, 1200, 2400, 3600, 5400};
          double[] depths = new double[seconds.length];
          for (int i = 0; i < depths.length; i++) {
            depths[i] = 0.8 * Math.sqrt(seconds[i]) + normal.next();
          }
          return FrontAdvance.of(seconds, depths)
              .timeTo(40, FrontAdvance.Shape.SQUARE_ROOT)
              .orElseThrow()
              .set()
              .contains(2500);
        });
  }

  /** At most one study in twenty, all told, may take noise for a change; half of them a gain. */
  @Test
  void trend_seriesWithoutGain_seldomDeclaredToGain() {
    Normal normal = new Normal(new SplittableRandom(6));
    int gains = 0;
    int shown = 0;
    for (int study = 0; study < STUDIES; study++) {
      double[] agesDays = agesDays(3, 7, 28);
      double[] flat = strengths(normal, agesDays, 30, 0, 1.5);
      gains += AgeTrend.of(agesDays, flat).verdict() instanceof AgeTrend.Gains ? 1 : 0;
      // A true gain of the detectable size: 3.761 standard errors at 4 degrees of freedom.
      double slope = 3.7610602610043036 * 1.5 / Math.sqrt(1.5) / Math.log(4);
      double[] rising = strengths(normal, agesDays, 30, slope, 1.5);
      shown += AgeTrend.of(agesDays, rising).verdict() instanceof AgeTrend.Gains ? 1 : 0;
    }
    System.out.println(
        "no true gain, declared to gain: " + gains + " of " + STUDIES + " (expected 50)");
    System.out.println(
        "true gain of the detectable size, declared: " + shown + " of " + STUDIES + " (1600)");
    assertThat(gains).isBetween(25, 80);
    assertThat(shown).isBetween(1530, 1670);
  }

  private static double[] agesDays(int each, double... ages) {
    double[] all = new double[each * ages.length];
    for (int i = 0; i < all.length; i++) {
      all[i] = ages[i / each];
    }
    return all;
  }

  private static double[] strengths(
      Normal normal, double[] agesDays, double atOneDay, double slope, double deviation) {
    double[] strengths = new double[agesDays.length];
    for (int i = 0; i < strengths.length; i++) {
      strengths[i] = atOneDay + slope * Math.log(agesDays[i]) + deviation * normal.next();
    }
    return strengths;
  }

  private static double[] widths(Normal normal, int n, double median, double logDeviation) {
    double[] widths = normal.sample(n, Math.log(median), logDeviation);
    for (int i = 0; i < n; i++) {
      widths[i] = Math.exp(widths[i]);
    }
    return widths;
  }
}
