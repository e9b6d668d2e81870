package io.github.platenwire.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.platenwire.statistics.ConfidenceSet;
import io.github.platenwire.statistics.Interval;
import io.github.platenwire.statistics.StudentT;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import org.hipparchus.special.Erf;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SimultaneousIntervalsTest {
  /** Tables of the studentized range at 5 % as printed in textbooks, from memory. */
  @ParameterizedTest
  @CsvSource({
    "2, 5, 3.64",
    "3, 4, 5.04",
    "3, 5, 4.60",
    "3, 10, 3.88",
    "4, 10, 4.33",
    "5, 10, 4.65",
    "3, 20, 3.58",
    "4, 20, 3.96",
    "3, Infinity, 3.31",
  })
  void studentizedRange_tableFromMemory_agrees(int means, double degrees, double printed) {
    assertThat(StudentizedRange.quantile(0.95, means, degrees)).isCloseTo(printed, within(0.0051));
  }

  /** Computed with SciPy's studentized_range, an independent code. */
  @ParameterizedTest
  @CsvSource({
    "3, 4, 5.040241254983202",
    "3, 5.5, 4.455747220697707",
    "4, 10, 4.32658211573119",
    "5, 20, 4.231856748997479",
    "2, 2, 6.084869844593298",
    "10, 60, 4.646323963266348",
  })
  void studentizedRange_otherCode_sixDigits(int means, double degrees, double computed) {
    assertThat(StudentizedRange.quantile(0.95, means, degrees))
        .isCloseTo(computed, within(2e-6 * computed));
  }

  /** With two means the range is √2·|t|. */
  @Test
  void studentizedRange_twoMeans_isStudentsT() {
    assertThat(StudentizedRange.quantile(0.95, 2, 7))
        .isCloseTo(Math.sqrt(2) * StudentT.twoSided(0.95, 7), within(1e-8));
  }

  /** Dunnett's two-sided 5 % table for equal numbers (Dunnett 1964), from memory. */
  @ParameterizedTest
  @CsvSource({
    "1, 5, 2.57",
    "2, 5, 3.03",
    "3, 5, 3.29",
    "4, 5, 3.48",
    "5, 5, 3.62",
    "2, 10, 2.57",
    "3, 10, 2.76",
    "4, 10, 2.89",
    "5, 10, 2.99",
    "2, 20, 2.38",
    "3, 20, 2.54",
    "2, Infinity, 2.21",
    "3, Infinity, 2.35",
    "4, Infinity, 2.44",
    "5, Infinity, 2.51",
  })
  void dunnett_tableFromMemory_agrees(int comparisons, double degrees, double printed) {
    int[] counts = new int[comparisons];
    Arrays.fill(counts, 4);
    assertThat(new DunnettDistribution(4, counts, degrees).quantile(0.95))
        .isCloseTo(printed, within(0.0051));
  }

  /** By simulation: unequal numbers, seeded, 40 000 studies; standard error of the share 0.11 %. */
  @Test
  void dunnett_simulatedUnequalNumbers_coversAllAtOnceIn95Percent() {
    SplittableRandom random = new SplittableRandom(20261125);
    Normal normal = new Normal(random);
    int[] counts = {3, 4, 5};
    int degrees = 2 + 2 + 3 + 4;
    double d = new DunnettDistribution(3, counts, degrees).quantile(0.95);
    int studies = 40_000;
    int within = 0;
    for (int study = 0; study < studies; study++) {
      double reference = normal.next() / Math.sqrt(3);
      double squares = 0;
      for (int i = 0; i < degrees; i++) {
        double one = normal.next();
        squares += one * one;
      }
      double deviation = Math.sqrt(squares / degrees);
      boolean all = true;
      for (int count : counts) {
        double t =
            (normal.next() / Math.sqrt(count) - reference)
                / (deviation * Math.sqrt(1.0 / count + 1.0 / 3));
        all &= Math.abs(t) <= d;
      }
      within += all ? 1 : 0;
    }
    double share = within / (double) studies;
    System.out.println("Dunnett, all intervals at once: " + share + " of " + studies);
    assertThat(share).isBetween(0.9455, 0.9545);
  }

  /** Against the library's error function, between and on the places of the table. */
  @Test
  void normalBelow_overItsRange_agreesWithErrorFunction() {
    for (double z = -9; z <= 9; z += 0.00317) {
      assertThat(Quadrature.normalBelow(z))
          .isCloseTo(Erf.erfc(-z / Math.sqrt(2)) / 2, within(1e-15));
    }
    assertThat(Quadrature.normalBetween(-1.959963984540054, 1.959963984540054))
        .isCloseTo(0.95, within(2e-15));
  }

  /** Computed with SciPy's noncentral t, an independent code. */
  @ParameterizedTest
  @CsvSource({
    "4, 2.5, 2.7764, 0.5227542642997416",
    "4, 4, 2.7764, 0.156694743645002",
    "10, 3, 2.2281, 0.2285888035731058",
    "2, 1, 3.0, 0.8335594263371349",
    "30, 2.8, 2.0423, 0.2268047678860421",
    "8, 0, 2.306, 0.9749998386193579",
  })
  void noncentralT_otherCode_agrees(
      double degrees, double noncentrality, double x, double computed) {
    assertThat(NoncentralT.below(x, degrees, noncentrality)).isCloseTo(computed, within(1e-9));
  }

  /** Effect found with 80 % power at two-sided 5 %; computed with SciPy's noncentral t. */
  @ParameterizedTest
  @CsvSource({
    "2, 5.653489266405571",
    "4, 3.7610602610043036",
    "8, 3.2009222385156204",
    "30, 2.895361751579278"
  })
  void detectable_otherCode_agrees(double degrees, double computed) {
    assertThat(NoncentralT.detectable(0.95, 0.8, degrees)).isCloseTo(computed, within(1e-6));
  }

  @Test
  void against_alikeSpreads_dunnettAndWhy() {
    Map<String, SeriesStatistics> others = new LinkedHashMap<>();
    others.put("NA-T", SeriesStatistics.of(42.1, 40.5, 43.0));
    others.put("NA-S", SeriesStatistics.of(31.0, 29.2, 30.3));
    SeriesStatistics reference = SeriesStatistics.of(29.5, 31.0, 28.4);
    ReferenceComparison comparison = ReferenceComparison.against(reference, others);
    assertThat(comparison.procedure()).isEqualTo(ReferenceComparison.Procedure.DUNNETT);
    assertThat(comparison.reason()).startsWith("Dunnett's").contains("Bartlett p = 0.");
    ReferenceComparison.Difference first = comparison.differences().get(0);
    assertThat(first.series()).isEqualTo("NA-T");
    assertThat(first.difference()).isCloseTo(12.2333333, within(1e-6));
    // Dunnett's table for two comparisons and 6 degrees of freedom, from memory: 2.86.
    double squares =
        reference.sumOfSquares()
            + others.values().stream().mapToDouble(SeriesStatistics::sumOfSquares).sum();
    double standardError = Math.sqrt(squares / 6 * (2.0 / 3));
    assertThat(first.interval().orElseThrow().halfWidth() / standardError)
        .isCloseTo(2.86, within(0.0051));
    assertThat(comparison.differences().get(1).interval().orElseThrow().contains(0)).isTrue();
  }

  /** At an end of a ratio's set the t of first − ρ·reference equals the common quantile. */
  @Test
  void against_alikeSpreads_ratiosEndWhereTMeetsTheCommonQuantile() {
    SeriesStatistics reference = SeriesStatistics.of(29.5, 31.0, 28.4);
    Map<String, SeriesStatistics> others = new LinkedHashMap<>();
    others.put("NA-T", SeriesStatistics.of(42.1, 40.5, 43.0, 41.0));
    others.put("NA-S", SeriesStatistics.of(31.0, 29.2, 30.3));
    ReferenceComparison comparison = ReferenceComparison.against(reference, others);
    FiellerRatio ratio = comparison.differences().get(0).ratio();
    double end = ((ConfidenceSet.Bounded) ratio.set()).interval().high();
    OneWayAnalysis analysis =
        OneWayAnalysis.of(List.of(reference, others.get("NA-T"), others.get("NA-S")));
    double t =
        (end * reference.mean() - others.get("NA-T").mean())
            / Math.sqrt(analysis.withinVariance() * (1.0 / 4 + end * end / 3));
    double[] found = {others.get("NA-T").mean() / 29.6333333333, 30.1666666667 / 29.6333333333};
    assertThat(new DunnettDistribution(3, new int[] {4, 3}, found, 7).below(t))
        .isCloseTo(0.95, within(1e-7));
    // Wider than by itself, narrower than Bonferroni's at 97.5 %.
    double alone = StudentT.twoSided(0.95, 7);
    assertThat(t).isBetween(alone, StudentT.twoSided(0.975, 7));
  }

  @Test
  void against_verydifferentSpreads_gamesHowell() {
    Map<String, SeriesStatistics> others = new LinkedHashMap<>();
    others.put("B", SeriesStatistics.of(40.0, 40.1, 39.9, 40.05));
    others.put("C", SeriesStatistics.of(30, 45, 52, 38));
    SeriesStatistics reference = SeriesStatistics.of(30.0, 30.2, 29.9, 30.1);
    ReferenceComparison comparison = ReferenceComparison.against(reference, others);
    assertThat(comparison.procedure()).isEqualTo(ReferenceComparison.Procedure.GAMES_HOWELL);
    Interval tight = comparison.differences().get(0).interval().orElseThrow();
    assertThat(tight.halfWidth()).isLessThan(0.5);
    // The formula once more, by hand: q/√2 times Welch's standard error.
    WelchDifference.Inference welch =
        WelchDifference.between(others.get("B"), reference).inference().orElseThrow();
    double q = StudentizedRange.quantile(0.95, 3, welch.degreesOfFreedom());
    assertThat(tight.halfWidth()).isCloseTo(q / Math.sqrt(2) * welch.standardError(), within(1e-9));
    // The ratios each at 97.5 %, which for two of them together is 95 % or more (Bonferroni).
    assertThat(comparison.differences().get(0).ratio())
        .isEqualTo(FiellerRatio.unequalVariances(others.get("B"), reference, 0.975));
  }

  @Test
  void against_twoSpecimens_figuresOnly() {
    ReferenceComparison comparison =
        ReferenceComparison.against(
            SeriesStatistics.of(30, 31, 32), Map.of("B", SeriesStatistics.of(40, 41)));
    assertThat(comparison.procedure()).isEqualTo(ReferenceComparison.Procedure.NONE);
    assertThat(comparison.differences().get(0).interval()).isEmpty();
    assertThat(comparison.differences().get(0).difference()).isEqualTo(9.5);
  }
}
