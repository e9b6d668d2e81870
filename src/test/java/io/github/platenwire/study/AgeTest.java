package io.github.platenwire.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.platenwire.quantity.UnitSystem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class AgeTest {
  private static final double[] AGES = {3, 3, 3, 7, 7, 7, 28, 28, 28};

  /** ACI 209R-92 Table 2.2.1, from memory, printed to two decimals from rounded inputs. */
  @ParameterizedTest
  @CsvSource({
    "MOIST_TYPE_I, 3, .46, .45802",
    "MOIST_TYPE_I, 7, .70, .70352",
    "MOIST_TYPE_I, 28, 1.0, 1.00719",
    "MOIST_TYPE_I, 91, 1.12, 1.11862",
    "MOIST_TYPE_III, 3, .59, .59289",
    "MOIST_TYPE_III, 56, 1.04, 1.04051",
    "STEAM_TYPE_I, 7, .91, .91503",
    "STEAM_TYPE_I, 3650, 1.05, 1.05233",
    "STEAM_TYPE_III, 3, .82, .82418",
    "STEAM_TYPE_III, 365, 1.02, 1.01842",
  })
  void aciRatio_table_agrees(
      AgeCurves.AciCuring curing, double ageDays, double printed, double computed) {
    assertThat(curing.ratioAt(ageDays)).isCloseTo(printed, within(0.0155));
    assertThat(curing.ratioAt(ageDays)).isCloseTo(computed, within(0.000006));
  }

  /** EN 1992-1-1 3.2; class N at 9, 27, 56, 365 d as in structuralcodes' tests, 10 d blueprints. */
  @ParameterizedTest
  @CsvSource({
    "N, 9, 0.8261668305331398",
    "N, 27, 0.995422968073841",
    "N, 56, 1.075970779425791",
    "N, 365, 1.198124627036262",
    "N, 10, 0.84507490",
    "N, 28, 1",
    "R, 1, .423882",
    "R, 3, .662980",
    "R, 7, .818731",
    "S, 3, .457985",
    "S, 14, .854361",
    "S, 365, 1.316203",
  })
  void enRatio_publishedValue_agrees(AgeCurves.EnCement cement, double ageDays, double expected) {
    assertThat(cement.ratioAt(ageDays)).isCloseTo(expected, within(6e-7));
  }

  /** The two-point formula b = (t1·f2 − t2·f1)/(f1(t1 − t2)), a = t2(1 − b) of WSDOT's WBFL. */
  @Test
  void fitAci_twoAges_isTheTwoPointFormula() {
    double[] ages = {7, 7, 28, 28};
    double[] strengths = {20, 22, 29, 31};
    AgeCurves.AciFit fit = AgeCurves.fitAci(ages, strengths).orElseThrow();
    double b = (7 * 30.0 - 28 * 21.0) / (21.0 * (7 - 28));
    assertThat(fit.b().value()).isCloseTo(b, within(1e-9));
    assertThat(fit.aDays().value()).isCloseTo(28 * (1 - b), within(1e-7));
    assertThat(fit.strength28Megapascals().value()).isCloseTo(30, within(1e-8));
    assertThat(fit.strength28Megapascals().standardError()).isCloseTo(1, within(1e-8));
    assertThat(fit.degreesOfFreedom()).isEqualTo(2);
    assertThat(fit.megapascalsAt(7)).isCloseTo(21, within(1e-8));
  }

  @Test
  void fit_pointsOnCurve_findsIt() {
    double[] aci = new double[AGES.length];
    double[] en = new double[AGES.length];
    for (int i = 0; i < AGES.length; i++) {
      aci[i] = 35 * AgeCurves.aciRatio(4.2, 0.85, AGES[i]);
      en[i] = 35 * AgeCurves.enRatio(0.31, AGES[i]);
    }
    AgeCurves.AciFit aciFit = AgeCurves.fitAci(AGES, aci).orElseThrow();
    assertThat(aciFit.b().value()).isCloseTo(0.85, within(1e-9));
    assertThat(aciFit.aDays().value()).isCloseTo(4.2, within(1e-8));
    AgeCurves.EnFit enFit = AgeCurves.fitEn(AGES, en).orElseThrow();
    assertThat(enFit.s().value()).isCloseTo(0.31, within(1e-9));
    assertThat(enFit.strength28Megapascals().value()).isCloseTo(35, within(1e-8));
    assertThat(enFit.megapascalsAt(28)).isCloseTo(35, within(1e-8));
  }

  /** At the least-squares minimum no small step of a parameter lowers the sum of squares. */
  @Test
  void fitEn_scatter_isALeastSquaresMinimum() {
    double[] strengths = {17.9, 19.2, 18.1, 25.2, 24.0, 26.1, 31.9, 33.2, 30.5};
    AgeCurves.EnFit fit = AgeCurves.fitEn(AGES, strengths).orElseThrow();
    double least = squares(fit.strength28Megapascals().value(), fit.s().value(), strengths);
    for (double step : new double[] {-1e-3, 1e-3}) {
      assertThat(squares(fit.strength28Megapascals().value() + step, fit.s().value(), strengths))
          .isGreaterThan(least);
      assertThat(squares(fit.strength28Megapascals().value(), fit.s().value() + step, strengths))
          .isGreaterThan(least);
    }
    assertThat(fit.residualDeviationMegapascals()).isCloseTo(Math.sqrt(least / 7), within(1e-9));
    assertThat(fit.s().standardError()).isBetween(0.01, 0.1);
  }

  private static double squares(double strength28, double s, double[] strengths) {
    double squares = 0;
    for (int i = 0; i < AGES.length; i++) {
      double left = strengths[i] - strength28 * AgeCurves.enRatio(s, AGES[i]);
      squares += left * left;
    }
    return squares;
  }

  @Test
  void fit_tooFewOrOneAge_empty() {
    assertThat(AgeCurves.fitAci(new double[] {7, 28}, new double[] {20, 30})).isEmpty();
    assertThat(AgeCurves.fitEn(new double[] {7, 7, 7}, new double[] {20, 21, 22})).isEmpty();
    assertThatThrownBy(() -> AgeCurves.fitEn(new double[] {0, 7, 28}, new double[] {1, 2, 3}))
        .hasMessage("age number 1 must be above zero, it is 0.0");
  }

  /** Strengths that fall to nothing by 28 days leave no curve that is above zero at every age. */
  @Test
  void fitAci_noSuchCurve_empty() {
    double[] ages = {1, 1, 1, 40, 40, 40};
    double[] strengths = {0.1, 0.1, 0.1, 60, 61, 62};
    assertThat(AgeCurves.fitAci(ages, strengths)).isEmpty();
  }

  /** Common practice, no source: no gain between 7 and 28 days is not declared a gain. */
  @Test
  void trend_noGainFrom7To28Days_notDeclaredAndDetectableSaid() {
    double[] ages = {7, 7, 7, 28, 28, 28};
    AgeTrend trend = AgeTrend.of(ages, new double[] {24.1, 25.3, 24.6, 24.9, 24.0, 25.0});
    AgeTrend.NoGainShown none = (AgeTrend.NoGainShown) trend.verdict();
    assertThat(none.interval().contains(0)).isTrue();
    // With two ages the line is the difference of the means, its error that of a pooled t test.
    double pooled =
        Math.sqrt(
            (SeriesStatistics.of(24.1, 25.3, 24.6).sumOfSquares()
                    + SeriesStatistics.of(24.9, 24.0, 25.0).sumOfSquares())
                / 4);
    assertThat(none.smallestDetectableGainMegapascals())
        .isCloseTo(3.7610602610043036 * pooled * Math.sqrt(2.0 / 3), within(1e-6));
    assertThat(PlainSentences.trend("RA-S", trend, UnitSystem.SI))
        .startsWith("No gain shown for RA-S between 7 days and 28 days: ")
        .contains("would have been shown four times out of five");
  }

  @Test
  void trend_clearGain_gainsByTheLine() {
    double[] strengths = {17.9, 19.2, 18.1, 25.2, 24.0, 26.1, 31.9, 33.2, 30.5};
    AgeTrend trend = AgeTrend.of(AGES, strengths);
    AgeTrend.Gains gains = (AgeTrend.Gains) trend.verdict();
    assertThat(gains.gainMegapascals()).isBetween(12.0, 15.0);
    assertThat(gains.interval().contains(gains.gainMegapascals())).isTrue();
    assertThat(PlainSentences.trend("NA-T", trend, UnitSystem.SI))
        .matches(
            "NA-T gains 13\\.\\d MPa \\(\\d+0 psi\\) between 3 days and 28 days .*n = 9\\)\\.");
  }

  @Test
  void trend_clearLoss_fallsAndSaysToLook() {
    double[] ages = {7, 7, 7, 28, 28, 28};
    AgeTrend trend = AgeTrend.of(ages, new double[] {30, 31, 30.5, 25, 24.5, 25.2});
    assertThat(trend.verdict()).isInstanceOf(AgeTrend.Falls.class);
    assertThat(PlainSentences.trend("RA-T", trend, UnitSystem.SI))
        .startsWith("RA-T falls by 5.6 MPa (810 psi)")
        .endsWith("Look at the specimens before believing it.");
  }

  @Test
  void trend_tooFew_noVerdictWithReason() {
    AgeTrend two = AgeTrend.of(new double[] {7, 7, 28, 28, 28, 28}, new double[6]);
    assertThat(PlainSentences.trend("RA-T", two, UnitSystem.SI))
        .isEqualTo(
            "No verdict on the gain of RA-T (n = 6): a verdict from two ages needs three specimens"
                + " at each, there are 2 at 7 days.");
    assertThat(AgeTrend.of(new double[] {7, 14, 28}, new double[3]).verdict())
        .isInstanceOf(AgeTrend.TooFew.class);
    AgeTrend oneAge = AgeTrend.of(new double[] {7, 7, 7}, new double[] {20, 21, 22});
    assertThat(oneAge.line()).isEmpty();
    assertThat(((AgeTrend.TooFew) oneAge.verdict()).reason()).contains("same age");
  }
}
