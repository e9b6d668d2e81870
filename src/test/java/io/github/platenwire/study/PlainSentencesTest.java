package io.github.platenwire.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.platenwire.statistics.ConfidenceSet;
import io.github.platenwire.statistics.Interval;
import org.junit.jupiter.api.Test;

class PlainSentencesTest {
  @Test
  void ratio_bounded_inTheWordsAskedFor() {
    FiellerRatio ratio =
        new FiellerRatio(
            1.4213, 3, 4, 4.4, new ConfidenceSet.Bounded(new Interval(1.2074, 1.6849)));
    assertThat(PlainSentences.ratio(7, "NA-T", "RA-S", ratio))
        .isEqualTo("At 7 days NA-T is 1.42 times RA-S (95 % interval 1.21 to 1.68; n = 3 and 4).");
  }

  /** Common practice, no source: a reference 2.2 times stronger is found so from three each. */
  @Test
  void ratio_reference22TimesStrongerAt7Days_foundFromThreeEach() {
    SeriesStatistics reference = SeriesStatistics.of(33.4, 31.9, 34.0);
    SeriesStatistics weak = SeriesStatistics.of(15.2, 14.6, 15.5);
    FiellerRatio ratio = FiellerRatio.unequalVariances(reference, weak);
    assertThat(ratio.ratio()).isCloseTo(2.2, within(0.05));
    assertThat(ratio.set().contains(2.2)).isTrue();
    assertThat(ratio.set().contains(1.9)).isFalse();
    assertThat(PlainSentences.ratio(7, "NA-T", "RA-S", ratio))
        .matches("At 7 days NA-T is 2\\.19 times RA-S \\(95 % .*; n = 3 and 3\\)\\.");
  }

  @Test
  void ratio_intervalHoldsOne_saysNoDifference() {
    FiellerRatio ratio =
        FiellerRatio.unequalVariances(
            SeriesStatistics.of(30, 31, 32), SeriesStatistics.of(30.5, 31, 31.5));
    assertThat(PlainSentences.ratio(1, "A", "B", ratio))
        .startsWith("At 1 day A is 1.000 times B (95 % interval 0.9")
        .endsWith(" The interval holds 1: no difference is shown.");
  }

  @Test
  void ratio_twoSpecimens_figureAndNoVerdict() {
    FiellerRatio ratio =
        FiellerRatio.unequalVariances(
            SeriesStatistics.of(30, 32), SeriesStatistics.of(20, 21, 19, 20));
    assertThat(PlainSentences.ratio(28, "A", "B", ratio))
        .isEqualTo(
            "At 28 days A is 1.55 times B (n = 2 and 4; fewer than three specimens in a series, so"
                + " no interval and no verdict).");
  }

  @Test
  void ratio_denominatorNearZero_saysUnbounded() {
    FiellerRatio ratio =
        FiellerRatio.unequalVariances(
            SeriesStatistics.of(30, 31, 32), SeriesStatistics.of(-1, 0.5, 1.2));
    assertThat(PlainSentences.ratio(7, "A", "B", ratio))
        .contains("no bounded 95 % interval, because the mean of B cannot be told from zero");
  }

  /** On one frame its error cancels; on two frames it adds in squares: checked by hand. */
  @Test
  void calibratedRatio_sameFrame_cancelsButNotOwnShare() {
    Interval statistical = new Interval(1.9, 2.3);
    CalibratedRatio.Systematic frame = new CalibratedRatio.Systematic(0.005, 0);
    CalibratedRatio same =
        CalibratedRatio.of(2.1, statistical, frame, frame, CalibratedRatio.Frames.SAME);
    assertThat(same.interval().low()).isCloseTo(1.9, within(1e-12));
    assertThat(same.interval().high()).isCloseTo(2.3, within(1e-12));
    assertThat(same.calibrationRelative()).isZero();
    CalibratedRatio different =
        CalibratedRatio.of(2.1, statistical, frame, frame, CalibratedRatio.Frames.DIFFERENT);
    assertThat(different.calibrationRelative()).isCloseTo(0.005 * Math.sqrt(2), within(1e-15));
    double reach = Math.hypot(Math.log(2.3 / 2.1), 1.959963984540054 * 0.005 * Math.sqrt(2));
    assertThat(different.interval().high()).isCloseTo(2.1 * Math.exp(reach), within(1e-9));
    CalibratedRatio own =
        CalibratedRatio.of(
            2.1,
            new Interval(-0.1, 4.5),
            new CalibratedRatio.Systematic(0.005, 0.01),
            frame,
            CalibratedRatio.Frames.SAME);
    assertThat(own.calibrationRelative()).isEqualTo(0.01);
    assertThat(own.interval().low()).isLessThan(-0.1);
    assertThatThrownBy(
            () ->
                CalibratedRatio.of(3, statistical, frame, frame, CalibratedRatio.Frames.DIFFERENT))
        .hasMessageContaining("does not hold the ratio");
  }

  @Test
  void ratio_calibrated_saysWhatCancelled() {
    SeriesStatistics a = SeriesStatistics.of(33.4, 31.9, 34.0);
    SeriesStatistics b = SeriesStatistics.of(15.2, 14.6, 15.5);
    FiellerRatio ratio = FiellerRatio.unequalVariances(a, b);
    Interval statistical = ((ConfidenceSet.Bounded) ratio.set()).interval();
    CalibratedRatio.Systematic frame = new CalibratedRatio.Systematic(0.005, 0.002);
    CalibratedRatio calibrated =
        CalibratedRatio.of(ratio.ratio(), statistical, frame, frame, CalibratedRatio.Frames.SAME);
    assertThat(PlainSentences.ratio(7, "NA-T", "RA-S", ratio, calibrated))
        .contains(", calibration included; n = 3 and 3).")
        .endsWith("only what belongs to one series alone is added.");
  }

  @Test
  void difference_eitherSign_saysAboveOrBelowInBothUnits() {
    SeriesStatistics a = SeriesStatistics.of(30, 31, 32);
    SeriesStatistics b = SeriesStatistics.of(20, 21, 22);
    assertThat(PlainSentences.difference(7, "A", "B", WelchDifference.between(a, b)))
        .isEqualTo(
            "At 7 days A is 10.0 MPa (1450 psi) above B (95 % interval 7.7 to 12.3 MPa,"
                + " 1120 to 1780 psi; n = 3 and 3).");
    assertThat(PlainSentences.difference(7, "B", "A", WelchDifference.between(b, a)))
        .startsWith("At 7 days B is 10.0 MPa (1450 psi) below A (95 % interval 7.7 to 12.3 MPa");
    assertThat(
            PlainSentences.difference(
                7, "A", "B", WelchDifference.between(a, SeriesStatistics.of(20.0))))
        .endsWith(
            "(n = 3 and 1; fewer than three specimens in a series, so no interval and no"
                + " verdict).");
  }

  @Test
  void outlier_suspected_namedAndKept() {
    Grubbs.Finding finding = Grubbs.test(30.1, 30.4, 29.8, 30.2, 19.0).orElseThrow();
    assertThat(PlainSentences.outlier("RA-07-5", 5, finding).orElseThrow())
        .startsWith("RA-07-5 stands 1.787 standard deviations from the mean of its set of 5, more")
        .contains("chance explains (Grubbs, 5 %)")
        .contains("It is kept in every figure");
    assertThat(PlainSentences.outlier("A", 4, Grubbs.test(30.1, 31.0, 30.6, 29.8).orElseThrow()))
        .isEmpty();
  }
}
