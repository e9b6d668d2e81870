package io.github.platenwire.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.platenwire.statistics.ConfidenceSet;
import io.github.platenwire.statistics.Fieller;
import io.github.platenwire.statistics.Interval;
import io.github.platenwire.statistics.StudentT;
import java.io.IOException;
import java.util.Map;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SeriesComparisonTest {
  private static final double[] DOSE = {
    465.0, 492.2, 466.3, 555.5, 528.1, 483.8, 502.8, 468.1, 519.2, 500.2
  };
  private static final double[] CONTROL = {
    519.8, 535.7, 491.7, 508.7, 565.5, 485.8, 520.7, 507.5, 428.9, 466.0
  };

  /** Student's t, upper tail (any printed table). */
  @ParameterizedTest
  @CsvSource({
    "1, 0.025, 12.7062",
    "2, 0.025, 4.3027",
    "3, 0.005, 5.8409",
    "4, 0.05, 2.1318",
    "5, 0.0005, 6.8688",
    "10, 0.025, 2.2281",
    "16, 0.025, 2.1199",
    "30, 0.01, 2.4573",
    "120, 0.10, 1.2886",
    "Infinity, 0.025, 1.9600",
    "Infinity, 0.005, 2.5758",
  })
  void quantile_printedTable_agrees(double degrees, double tail, double expected) {
    assertThat(StudentT.quantile(1 - tail, degrees)).isCloseTo(expected, within(0.00006));
  }

  /** The series of Hipparchus' TTestTest: t = −2.81976445346 against 100. */
  @Test
  void meanInterval_publishedT_reachesExactlyTo100() {
    SeriesStatistics series =
        SeriesStatistics.of(93, 103, 95, 101, 91, 105, 96, 94, 101, 88, 98, 94, 101, 92, 95);
    Interval interval = series.meanInterval(1 - 0.0136390585873).orElseThrow();
    assertThat(interval.high()).isCloseTo(100, within(1e-9));
    assertThat((series.mean() - 100) / Math.sqrt(series.meanVariance()))
        .isCloseTo(-2.81976445346, within(1e-10));
  }

  @Test
  void statistics_oneOrTwoSpecimens_figuresButNoInterval() {
    assertThat(SeriesStatistics.of(30.0).standardDeviation()).isEmpty();
    SeriesStatistics two = SeriesStatistics.of(30.0, 32.0);
    assertThat(two.standardDeviation()).hasValue(Math.sqrt(2));
    assertThat(two.coefficientOfVariation()).hasValue(Math.sqrt(2) / 31);
    assertThat(two.meanInterval()).isEmpty();
  }

  @Test
  void statistics_valueMissing_saysWhich() {
    assertThatThrownBy(() -> SeriesStatistics.of(30.0, Double.NaN))
        .hasMessage("value number 2 is NaN");
    assertThatThrownBy(SeriesStatistics::of).hasMessageContaining("at least one specimen");
  }

  /** Data of Hipparchus' OneWayAnovaTest, groups A and C; t, df and p computed with SciPy. */
  @Test
  void welch_knownSeries_agrees() {
    SeriesStatistics a = SeriesStatistics.of(93, 103, 95, 101, 91, 105, 96, 94, 101);
    SeriesStatistics c = SeriesStatistics.of(110, 115, 111, 117, 128, 117);
    WelchDifference difference = WelchDifference.between(a, c);
    WelchDifference.Inference sure = difference.inference().orElseThrow();
    assertThat(difference.difference() / sure.standardError())
        .isCloseTo(-6.022898276056524, within(1e-12));
    assertThat(sure.degreesOfFreedom()).isCloseTo(8.820743363307093, within(1e-12));
    assertThat(sure.probability()).isCloseTo(2.1354369571499807E-04, within(1e-13));
    assertThat(sure.interval().high()).isNegative();
  }

  @Test
  void welch_noSpreadAtAll_intervalWithoutWidth() {
    SeriesStatistics a = SeriesStatistics.of(30, 30, 30);
    WelchDifference.Inference sure =
        WelchDifference.between(a, SeriesStatistics.of(31, 31, 31)).inference().orElseThrow();
    assertThat(sure.interval()).isEqualTo(new Interval(-1, -1));
    assertThat(sure.probability()).isZero();
  }

  /** Body weights of R package mratios (rat.weight); limits computed from Fieller's formula. */
  @Test
  void fiellerPooled_ratWeight_limits() {
    assertFieller(0.95, 0.9289315926642722, 1.0555506017932852);
    assertFieller(0.90, 0.9393727382783205, 1.0438314816907663);
  }

  private static void assertFieller(double level, double low, double high) {
    FiellerRatio ratio =
        FiellerRatio.pooled(SeriesStatistics.of(DOSE), SeriesStatistics.of(CONTROL), level);
    assertThat(ratio.ratio()).isCloseTo(0.9902391507464765, within(1e-14));
    assertThat(ratio.degreesOfFreedom()).isEqualTo(18);
    assertBounded(ratio.set(), low, high, within(1e-11));
  }

  /** ASAT of R package mratios (Hauschke 1999); limits computed from Fieller's formula. */
  @Test
  void fiellerPooled_asat_limits() throws IOException {
    Map<String, double[]> groups = CheckData.read("fieller_asat.csv").groups("group", "asat");
    SeriesStatistics treated = SeriesStatistics.of(groups.get("TREAT"));
    SeriesStatistics control = SeriesStatistics.of(groups.get("KON"));
    FiellerRatio ratio = FiellerRatio.pooled(treated, control, 0.95);
    assertThat(ratio.ratio()).isCloseTo(1.1130054644808742, within(1e-14));
    assertThat(ratio.degreesOfFreedom()).isEqualTo(32);
    assertBounded(ratio.set(), 0.9348870550570156, 1.3246109893195, within(1e-11));
    assertBounded(
        FiellerRatio.pooled(treated, control, 0.90).set(),
        0.9630467516933406,
        1.28601483107108,
        within(1e-11));
  }

  private static void assertBounded(
      ConfidenceSet set, double low, double high, Offset<Double> offset) {
    Interval interval = ((ConfidenceSet.Bounded) set).interval();
    assertThat(interval.low()).isCloseTo(low, offset);
    assertThat(interval.high()).isCloseTo(high, offset);
  }

  /** By definition an end of the set is a ratio at which the t statistic equals its quantile. */
  @Test
  void fiellerUnequal_ends_areWhereTMeetsItsQuantile() {
    SeriesStatistics a = SeriesStatistics.of(31.2, 33.0, 30.1);
    SeriesStatistics b = SeriesStatistics.of(21.9, 23.5, 22.0, 25.1);
    FiellerRatio ratio = FiellerRatio.unequalVariances(a, b);
    Interval interval = ((ConfidenceSet.Bounded) ratio.set()).interval();
    double quantile = StudentT.twoSided(0.95, ratio.degreesOfFreedom());
    for (double end : new double[] {interval.low(), interval.high()}) {
      double t =
          (a.mean() - end * b.mean()) / Math.sqrt(a.meanVariance() + end * end * b.meanVariance());
      assertThat(Math.abs(t)).isCloseTo(quantile, within(1e-10));
    }
    // Welch–Satterthwaite for a − ρ·b at the ratio found, written out.
    double v1 = a.meanVariance();
    double v2 = Math.pow(a.mean() / b.mean(), 2) * b.meanVariance();
    assertThat(ratio.degreesOfFreedom())
        .isCloseTo(Math.pow(v1 + v2, 2) / (v1 * v1 / 2 + v2 * v2 / 3), within(1e-12));
  }

  @Test
  void fieller_denominatorNearZero_saidAsSuch() {
    SeriesStatistics clear = SeriesStatistics.of(30, 31, 32);
    SeriesStatistics nearZero = SeriesStatistics.of(-1, 0.5, 1.2);
    ConfidenceSet open = FiellerRatio.unequalVariances(clear, nearZero).set();
    assertThat(open).isInstanceOf(ConfidenceSet.Unbounded.class);
    assertThat(open.contains(0)).isFalse();
    assertThat(open.contains(1e6)).isTrue();
    assertThat(open.contains(-1e6)).isTrue();
    ConfidenceSet whole =
        FiellerRatio.unequalVariances(SeriesStatistics.of(-2, 1, 1.5), nearZero).set();
    assertThat(whole).isEqualTo(new ConfidenceSet.Whole());
  }

  /** With denominator² = t²·variance the quadratic is a line: one end only. */
  @Test
  void fieller_denominatorExactlyAtItsLimit_oneSided() {
    ConfidenceSet up = Fieller.solve(10, 1, 2, 1, 2);
    assertThat(up).isEqualTo(new ConfidenceSet.Unbounded(Double.NEGATIVE_INFINITY, 96 / 40.0));
    ConfidenceSet down = Fieller.solve(-10, 1, 2, 1, 2);
    assertThat(down).isEqualTo(new ConfidenceSet.Unbounded(96 / -40.0, Double.POSITIVE_INFINITY));
  }

  @Test
  void fieller_twoSpecimens_figureWithoutSet() {
    FiellerRatio ratio =
        FiellerRatio.unequalVariances(SeriesStatistics.of(30, 32), SeriesStatistics.of(20, 20, 20));
    assertThat(ratio.ratio()).isCloseTo(1.55, within(1e-12));
    assertThat(ratio.set()).isInstanceOf(ConfidenceSet.NotGiven.class);
  }

  /** ASTM E178 Table 1, one-sided (from memory), and LibreTexts Appendix 07: within 0.001. */
  @ParameterizedTest
  @CsvSource({
    "3, 0.05, 1.153",
    "3, 0.025, 1.155",
    "3, 0.01, 1.155",
    "4, 0.05, 1.463",
    "4, 0.025, 1.481",
    "4, 0.01, 1.492",
    "5, 0.05, 1.672",
    "5, 0.025, 1.715",
    "5, 0.005, 1.764",
    "6, 0.05, 1.822",
    "6, 0.025, 1.887",
    "7, 0.05, 1.938",
    "8, 0.05, 2.032",
    "8, 0.025, 2.126",
    "9, 0.025, 2.215",
    "10, 0.05, 2.176",
    "10, 0.01, 2.410",
    "12, 0.005, 2.636",
    "14, 0.005, 2.755",
    "20, 0.05, 2.557",
  })
  void grubbsCritical_printedTable_agrees(int n, double significance, double expected) {
    assertThat(Grubbs.critical(n, significance, Grubbs.Side.HIGH))
        .isCloseTo(expected, within(0.001));
    assertThat(Grubbs.critical(n, 2 * significance, Grubbs.Side.EITHER))
        .isCloseTo(expected, within(0.001));
  }

  /** NIST's example after Tietjen and Moore: G 2.4687646, one-sided 5 % critical 2.031652. */
  @Test
  void grubbs_nistExample_namesTheLastAndKeepsAll() {
    double[] values = {199.31, 199.53, 200.19, 200.82, 201.92, 201.95, 202.18, 245.57};
    Grubbs.Finding finding = Grubbs.test(0.05, Grubbs.Side.HIGH, values).orElseThrow();
    assertThat(finding.index()).isEqualTo(7);
    assertThat(finding.statistic()).isCloseTo(2.4687646, within(5e-8));
    assertThat(finding.critical()).isCloseTo(2.031652, within(5e-7));
    assertThat(finding.suspected()).isTrue();
    assertThat(Grubbs.test(0.05, Grubbs.Side.LOW, values).orElseThrow().suspected()).isFalse();
  }

  @Test
  void grubbs_soundOrTooFewOrEqual_namesNothing() {
    assertThat(Grubbs.test(30.1, 31.0, 30.6, 29.8).orElseThrow().suspected()).isFalse();
    assertThat(Grubbs.test(30.1, 45)).isEmpty();
    assertThat(Grubbs.test(30, 30, 30)).isEmpty();
  }

  /** ASTM C670 multipliers as printed, from memory; second digits computed with SciPy. */
  @ParameterizedTest
  @CsvSource({
    "2, 2.8, 2.7718",
    "3, 3.3, 3.3145",
    "4, 3.6, 3.6332",
    "5, 3.9, 3.8577",
    "6, 4.0, 4.0301",
    "7, 4.2, 4.1696",
    "8, 4.3, 4.2863",
    "9, 4.4, 4.3865",
    "10, 4.5, 4.4741",
  })
  void multiplier_c670_agrees(int n, double printed, double computed) {
    assertThat(CompanionRange.multiplier(n)).isCloseTo(printed, within(0.05));
    assertThat(CompanionRange.multiplier(n)).isCloseTo(computed, within(0.00006));
  }

  /** ASTM C39 precision, from memory: 2.4 % gives 6.6 % for two and 7.8 % for three. */
  @Test
  void companionRange_c39Laboratory_limitsOfTwoAndThree() {
    assertThat(CompanionRange.of(0.0237, 30, 31).greatestExpected()).isCloseTo(0.066, within(5e-4));
    CompanionRange three = CompanionRange.of(0.0237, 30, 31, 32.5);
    assertThat(three.greatestExpected()).isCloseTo(0.078, within(1e-3));
    assertThat(three.rangeOfMean()).isCloseTo(2.5 / (93.5 / 3), within(1e-12));
    assertThat(three.withinLimit()).isFalse();
    assertThat(CompanionRange.of(0.0237, 30, 31, 32).withinLimit()).isTrue();
  }
}
