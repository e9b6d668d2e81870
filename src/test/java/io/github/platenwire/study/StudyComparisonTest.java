package io.github.platenwire.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.platenwire.lab.LabException;
import io.github.platenwire.quantity.UnitSystem;
import io.github.platenwire.statistics.ConfidenceSet;
import io.github.platenwire.statistics.Interval;
import io.github.platenwire.study.StudyComparison.AgainstReference;
import io.github.platenwire.study.StudyComparison.CrackComparison;
import io.github.platenwire.study.StudyComparison.SeriesSet;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class StudyComparisonTest {
  @TempDir private Path folder;

  private StudyLab lab() {
    return new StudyLab(folder, UnitSystem.SI, "RA-S", "[7, 28]")
        .series("RA-S")
        .series("NA-T", "label = \"natural, tank\"")
        .series("NA-S");
  }

  private static StudyComparison whole(StudyLab lab) throws LabException {
    return StudyComparison.of(lab.data(), StudyQuestion.WHOLE);
  }

  private static AgainstReference only(StudyComparison comparison) {
    assertThat(comparison.ages()).hasSize(1);
    assertThat(comparison.ages().get(0).series()).hasSize(1);
    return comparison.ages().get(0).series().get(0);
  }

  @Test
  void compare_twoSeries_saysRatioWithIntervalAndNumbers() throws LabException {
    StudyComparison comparison =
        whole(
            lab()
                .cylinders("NA-T", 7, 35.0, 36.4, 33.9)
                .cylinders("RA-S", 7, 24.6, 25.9, 24.1, 25.0));
    AgainstReference against = only(comparison);
    FiellerRatio bare =
        FiellerRatio.unequalVariances(
            SeriesStatistics.of(35.0, 36.4, 33.9), SeriesStatistics.of(24.6, 25.9, 24.1, 25.0));
    assertThat(against.ratio()).isEqualTo(bare);
    assertThat(comparison.sentences().get(0))
        .matches(
            "At 7 days NA-T is 1\\.4\\d+ times RA-S \\(95 % interval 1\\.3\\d+ to 1\\.5\\d*,"
                + " calibration included; n = 3 and 4\\)\\.");
    assertThat(comparison.ages().get(0).choice()).startsWith("One series against its reference");
    SeriesSet set = comparison.sets().get(0);
    assertThat(set.series()).isEqualTo("RA-S");
    assertThat(set.values().get(0).record())
        .isEqualTo("records/2026-11/20261125T081800Z_RA-S-07-1.raw.csv");
    assertThat(set.values().get(0).rows()).containsExactly(42L, 41L, 43L);
    assertThat(set.companions().orElseThrow().words()).contains("limit 11.5 %: within");
    assertThat(comparison.sets().get(1).label()).isEqualTo("natural, tank");
  }

  /** One frame, one certificate: its error cancels, and the interval is the bare one. */
  @Test
  void compare_sameFrame_commonErrorCancels() throws LabException {
    AgainstReference against =
        only(whole(lab().cylinders("NA-T", 7, 35, 36, 34).cylinders("RA-S", 7, 25, 26, 24)));
    Interval bare = ((ConfidenceSet.Bounded) against.ratio().set()).interval();
    assertThat(against.calibrated().orElseThrow().calibrationRelative()).isZero();
    assertThat(against.ratioInterval().orElseThrow().low()).isCloseTo(bare.low(), within(1e-12));
    // The difference is stretched as a whole: 0.5 % of 10 MPa, by hand.
    double welch = against.difference().inference().orElseThrow().interval().halfWidth();
    assertThat(against.differenceInterval().orElseThrow().halfWidth())
        .isCloseTo(Math.hypot(welch, 1.959963984540054 * 0.005 * 10), within(1e-9));
  }

  /** Two frames of 0.5 % each add in squares, on the logarithmic scale: by hand from JCGM 100. */
  @Test
  void compare_otherFrameOrCertificate_bothAreAdded() throws LabException {
    StudyComparison comparison =
        whole(
            lab()
                .cylinders("NA-T", 7, 35, 36, 34)
                .on("frame-2", "certificate C-2 of lab, 2026-08-27, due 2027-08-27: in date")
                .cylinders("RA-S", 7, 25, 26, 24));
    AgainstReference against = only(comparison);
    Interval bare = ((ConfidenceSet.Bounded) against.ratio().set()).interval();
    double reach =
        Math.hypot(Math.log(bare.high() / 1.4), 1.959963984540054 * 0.005 * Math.sqrt(2));
    assertThat(against.ratioInterval().orElseThrow().high())
        .isCloseTo(1.4 * Math.exp(reach), within(1e-9));
    assertThat(comparison.ages().get(0).choice()).contains("measured with different calibrations");
  }

  @Test
  void compare_noCertificate_doesNotCancel() throws LabException {
    StudyComparison comparison =
        whole(
            lab()
                .on("frame-1", "no calibration is named in the rig file")
                .cylinders("NA-T", 7, 35, 36, 34)
                .cylinders("RA-S", 7, 25, 26, 24));
    assertThat(comparison.ages().get(0).choice()).contains("No certificate tells");
    assertThat(only(comparison).calibrated().orElseThrow().calibrationRelative()).isPositive();
  }

  /** Being out of date between two days changes nothing of what the frame reads. */
  @Test
  void compare_sameCertificateOutOfDateLater_isTheSameFrame() throws LabException {
    AgainstReference against =
        only(
            whole(
                lab()
                    .cylinders("NA-T", 7, 35, 36, 34)
                    .on(
                        "frame-1",
                        "certificate C-1 of lab, 2026-08-27, was due 2027-08-27: out of date")
                    .cylinders("RA-S", 7, 25, 26, 24)));
    assertThat(against.calibrated().orElseThrow().calibrationRelative()).isZero();
  }

  /** Common practice, no source: a reference 2.2 times stronger is found so from three each. */
  @Test
  void compare_reference22TimesStronger_isFoundSo() throws LabException {
    StudyLab lab = new StudyLab(folder, UnitSystem.SI, "NA-T", "[7]").series("NA-T").series("RA-S");
    StudyComparison comparison =
        StudyComparison.of(
            lab.cylinders("NA-T", 7, 33.4, 31.9, 34.0)
                .cylinders("RA-S", 7, 15.2, 14.6, 15.5)
                .data(),
            new StudyQuestion(
                Optional.of("NA-T"),
                Optional.of("RA-S"),
                OptionalDouble.of(7),
                StudyQuestion.STRENGTH,
                Optional.empty()));
    Interval interval = only(comparison).ratioInterval().orElseThrow();
    assertThat(interval.contains(2.2)).isTrue();
    assertThat(interval.contains(1.9)).isFalse();
    assertThat(comparison.sentences().get(0)).startsWith("At 7 days NA-T is 2.19 times RA-S (95 %");
  }

  /**
   * Common practice, no source: a series without gain from 7 to 28 days is not declared to gain.
   */
  @Test
  void compare_seriesWithoutGain_isNotDeclaredToGain() throws LabException {
    StudyComparison comparison =
        whole(
            lab()
                .cylinders("RA-S", 7, 25.1, 24.4, 25.6)
                .cylinders("RA-S", 28, 25.4, 24.2, 25.9)
                .cylinders("NA-T", 7, 33.9, 34.8, 34.2)
                .cylinders("NA-T", 28, 42.1, 43.6, 42.9));
    assertThat(comparison.trends()).hasSize(2);
    assertThat(comparison.trends().get(0).trend().verdict())
        .isInstanceOf(AgeTrend.NoGainShown.class);
    assertThat(comparison.trends().get(0).sentences().get(0))
        .startsWith("No gain shown for RA-S between 7 days and 28 days")
        .contains("a true gain of");
    assertThat(comparison.trends().get(1).trend().verdict()).isInstanceOf(AgeTrend.Gains.class);
    assertThat(comparison.trends().get(1).aci()).isPresent();
    assertThat(comparison.trends().get(1).en().orElseThrow().megapascalsAt(28))
        .isCloseTo(42.87, within(0.1));
    assertThat(comparison.trends().get(1).sentences().get(1))
        .startsWith("Curves through NA-T: ACI 209R with 42.9 MPa");
  }

  @Test
  void compare_twoSpecimens_figuresButNoIntervalAndNoVerdict() throws LabException {
    StudyComparison comparison =
        whole(lab().cylinders("NA-T", 7, 35, 36).cylinders("RA-S", 7, 25, 26, 24));
    AgainstReference against = only(comparison);
    assertThat(against.ratioInterval()).isEmpty();
    assertThat(against.differenceInterval()).isEmpty();
    assertThat(against.sentences())
        .allMatch(sentence -> sentence.contains("no interval and no verdict"));
    assertThat(comparison.ages().get(0).choice()).startsWith("Fewer than three specimens");
  }

  /** With a third series the intervals are wider, and one with two specimens widens nothing. */
  @Test
  void compare_severalSeries_intervalsHoldForAllAtOnce() throws LabException {
    StudyComparison comparison =
        whole(
            lab()
                .series("RA-T")
                .cylinders("RA-S", 7, 25, 26.1, 24.2)
                .cylinders("NA-T", 7, 35, 36.2, 34.1)
                .cylinders("NA-S", 7, 30.5, 29.4, 31.0)
                .cylinders("RA-T", 7, 27.0, 28.0));
    assertThat(comparison.ages().get(0).choice())
        .startsWith("Dunnett's simultaneous intervals")
        .contains("Bartlett", "same calibration");
    AgainstReference first = comparison.ages().get(0).series().get(0);
    assertThat(first.sentences().get(0)).contains("95 % interval for both series at once");
    // The pooled interval of these two by themselves, 6 degrees of freedom: t = 2.4469.
    double dunnett = first.differenceInterval().orElseThrow().halfWidth();
    double pooled =
        Math.sqrt(
            (SeriesStatistics.of(25, 26.1, 24.2).sumOfSquares()
                    + SeriesStatistics.of(35, 36.2, 34.1).sumOfSquares()
                    + SeriesStatistics.of(30.5, 29.4, 31.0).sumOfSquares())
                / 6
                * 2
                / 3);
    double calibration = 1.959963984540054 * 0.005 * 10;
    // Dunnett's table, two comparisons, 6 degrees of freedom, from memory: 2.86.
    assertThat(Math.sqrt(dunnett * dunnett - calibration * calibration) / pooled)
        .isCloseTo(2.86, within(0.006));
    assertThat(comparison.ages().get(0).series().get(2).ratioInterval()).isEmpty();
  }

  @Test
  void compare_suspectedOutlier_isNamedAndKept() throws LabException {
    StudyComparison comparison =
        whole(
            lab()
                .cylinders("RA-S", 7, 30.1, 30.4, 29.8, 30.2, 19.0)
                .cylinders("NA-T", 7, 35, 36, 34));
    assertThat(comparison.sets().get(0).suspect().orElseThrow().specimen()).isEqualTo("RA-S-07-5");
    assertThat(comparison.sets().get(0).statistics().n()).isEqualTo(5);
    assertThat(comparison.sentences().get(0)).startsWith("RA-S-07-5 stands").contains("It is kept");
  }

  /** Equal values leave no scatter: the interval has no width, and rounding must not break it. */
  @Test
  void compare_equalValues_givesAnIntervalOfNoWidth() throws LabException {
    for (double value : new double[] {25.1, 0.7, 33.3, 41.9}) {
      StudyLab lab = new StudyLab(folder.resolve("equal-" + value), UnitSystem.SI, "A", "[7]");
      StudyComparison comparison =
          whole(
              lab.series("A")
                  .series("B")
                  .cylinders("A", 7, value, value, value)
                  .cylinders("B", 7, 30.3, 30.3, 30.3));
      assertThat(only(comparison).ratioInterval().orElseThrow().halfWidth())
          .isCloseTo(0, within(1e-12));
    }
  }

  @Test
  void compare_referenceNobodyLookedAt_isNotCompared() throws LabException {
    StudyComparison comparison =
        whole(
            lab()
                .cylinders("NA-T", 7, "through", 35, 36, 34)
                .cylinders("NA-S", 7, "around", 30, 31, 32)
                .cylinders("RA-S", 7, "not-seen", 25, 26, 24));
    assertThat(comparison.observations()).isEmpty();
  }

  @Test
  void compare_observations_countsSeriesBesideSeries() throws LabException {
    StudyComparison comparison =
        whole(
            lab()
                .cylinders("NA-T", 7, "through", 35, 36, 34)
                .cylinders("RA-S", 7, "around", 25, 26, 24)
                .cylinders("NA-S", 7, "not-seen", 30, 31, 32));
    assertThat(comparison.observations()).hasSize(1);
    assertThat(comparison.observations().get(0).sentence())
        .isEqualTo("At 7 days: 3 of 3 of NA-T through the aggregate, against 0 of 3 of RA-S.");
  }

  /** Ribs that are not seen are a finding; an aggregate that nobody could judge is none. */
  @Test
  void compare_imprintNotSeen_counts() throws LabException {
    StudyComparison comparison =
        StudyComparison.of(
            new StudyLab(folder, UnitSystem.SI, "CB", "[7]")
                .series("PB")
                .series("CB")
                .beams("PB", 7, "seen", "seen", "seen")
                .beams("CB", 7, "not-seen", "not-seen", "not-seen")
                .data(),
            StudyQuestion.WHOLE);
    assertThat(comparison.observations())
        .extracting(StudyComparison.Observation::sentence)
        .containsExactly(
            "At 7 days: 3 of 3 of PB with the ribs of the bar seen in the concrete, against 0 of 3"
                + " of CB.");
  }

  @Test
  void compare_fronts_ratioOfRatesWithIntervalAndOneByOne() throws LabException {
    StudyData data =
        new StudyLab(folder, UnitSystem.INCH_POUND, "NA-F", "[28]")
            .series("NA-F")
            .series("RA-F")
            .fronts("NA-F", 28, 1.02, 0.98, 1.00)
            .fronts("RA-F", 28, 1.53, 1.47, 1.50)
            .data();
    List<StudyComparison> all = StudyComparison.main(data);
    assertThat(all)
        .extracting(comparison -> comparison.subject().figure())
        .containsExactly("rate-in-time", "time-to-50-mm-in-time");
    AgainstReference rate = only(all.get(0));
    assertThat(rate.ratio().ratio()).isCloseTo(1.5, within(1e-12));
    FiellerRatio fieller =
        FiellerRatio.unequalVariances(
            SeriesStatistics.of(1.53, 1.47, 1.50), SeriesStatistics.of(1.02, 0.98, 1.00));
    assertThat(rate.ratioInterval()).contains(((ConfidenceSet.Bounded) fieller.set()).interval());
    assertThat(rate.sentences().get(0))
        .startsWith(
            "At 28 days the advance along the line in time of RA-F is 1.500 times that of NA-F (95 %"
                + " interval 1.4");
    assertThat(rate.sentences().get(1)).contains("is 0.0197 in/min (0.500 mm/min) above that of");
    assertThat(all.get(0).sets().get(1).values()).hasSize(3);
    assertThat(only(all.get(1)).sentences().get(0))
        .startsWith("At 28 days the time to 50 mm (1.97 in) of RA-F is 0.667 times that of NA-F");
    assertThat(StudyComparison.of(data, StudyQuestion.WHOLE).subject().figure())
        .isEqualTo("rate-in-time");
  }

  @Test
  void compare_frontsWithoutAge_areComparedAndThatIsSaid() throws LabException {
    StudyComparison comparison =
        StudyComparison.main(
                new StudyLab(folder, UnitSystem.SI, "NA-F", "[28]")
                    .series("NA-F")
                    .series("RA-F")
                    .fronts("NA-F", 0, 1.02, 0.98, 1.00)
                    .fronts("RA-F", 0, 1.53, 1.47, 1.50)
                    .data())
            .get(0);
    assertThat(only(comparison).sentences().get(0))
        .startsWith("The advance along the line in time of RA-F is 1.500 times that of NA-F");
    assertThat(comparison.warnings())
        .anyMatch(
            words -> words.startsWith("NA-F-1 has neither a planned age nor a cast time and"));
  }

  @Test
  void compare_moduli_inStepsOfAModulusAndWithoutGrowth() throws LabException {
    List<StudyComparison> all =
        StudyComparison.main(
            lab()
                .cylinders("NA-T", 7, 35, 36, 34)
                .cylinders("RA-S", 7, 25, 26, 24)
                .moduli("NA-T", 28, 31_200, 30_800, 31_000)
                .moduli("RA-S", 28, 24_900, 24_700, 24_800)
                .moduli("RA-S", 7, 22_900)
                .data());
    assertThat(all)
        .extracting(comparison -> comparison.subject().figure())
        .containsExactly("strength", "modulus");
    assertThat(all.get(1).ages().get(0).series().get(0).sentences().get(0))
        .startsWith("At 28 days the modulus of elasticity of NA-T is 1.250 times that of RA-S");
    assertThat(all.get(1).ages().get(0).series().get(0).sentences().get(1))
        .contains("is 6200 MPa (899000 psi) above that of RA-S");
    assertThat(all.get(1).trends()).isEmpty();
  }

  @Test
  void compare_otherMethod_isNotComparedAndThatIsSaid() throws LabException {
    StudyLab lab = lab().cylinders("RA-S", 7, 25, 26, 24);
    for (int i = 1; i <= 3; i++) {
      lab.other("NA-T-" + i, "NA-T", 7, "compression-cube-en12390", "strength", 40 + i);
    }
    List<StudyComparison> all = StudyComparison.main(lab.data());
    assertThat(all).hasSize(2);
    assertThat(all).allSatisfy(comparison -> assertThat(comparison.ages()).isEmpty());
    assertThat(all.get(0).warnings())
        .contains(
            "NA-T is not compared with RA-S in this figure (strength): the methods differ"
                + " (compression-cube-en12390 and compression-cylinder-c39).");
  }

  /** The lab's first system of units stands first in every sentence; the other beside it. */
  @Test
  void compare_labWithInchPoundFirst_saysPsiBeforeMegapascals() throws LabException {
    StudyComparison comparison =
        whole(
            new StudyLab(folder, UnitSystem.INCH_POUND, "RA-S", "[7, 28]")
                .series("RA-S")
                .series("NA-T")
                .cylinders("NA-T", 7, 35, 36, 34)
                .cylinders("RA-S", 7, 25, 26, 24)
                .cylinders("NA-T", 28, 45, 46, 44));
    assertThat(comparison.ages().get(0).series().get(0).sentences().get(1))
        .startsWith("At 7 days NA-T is 1450 psi (10.0 MPa) above RA-S")
        .containsPattern("interval [0-9]+ to [0-9]+ psi, [0-9.]+ to [0-9.]+ MPa");
    assertThat(comparison.trends().get(0).sentences().get(0))
        .startsWith("NA-T gains 1450 psi (10.0 MPa) between");
    assertThat(comparison.sets().get(0).companions().orElseThrow().words())
        .contains("the mean 3630 psi (25.0 MPa)");
  }

  /** Widths in proportion, known by construction: 10 to 1 at every load above the first crack. */
  @Test
  void compare_cracks_ratioOverTheSharedRangeAndNoiseSaid() throws LabException {
    StudyLab lab =
        new StudyLab(folder, UnitSystem.SI, "PB", "[7]")
            .series("PB")
            .series("CB", "reference = \"PB\"");
    double[] plain = {0.0045, 0.005, 0.0055};
    double[] coated = {0.045, 0.05, 0.055};
    for (int i = 0; i < 3; i++) {
      lab.beam("PB-" + i, "PB", 7, plain[i], 22_000).beam("CB-" + i, "CB", 7, coated[i], 18_000);
    }
    StudyComparison comparison = whole(lab);
    assertThat(comparison.cracks()).hasSize(1);
    CrackComparison crack = comparison.cracks().get(0);
    assertThat(crack.atLoads().get(0).outcome()).isInstanceOf(CrackRatio.NearNoise.class);
    CrackRatio.At last = crack.atLoads().get(crack.atLoads().size() - 1);
    assertThat(last.place()).isEqualTo(18_000);
    assertThat(((CrackRatio.Found) last.outcome()).ratio()).isCloseTo(10, within(1e-9));
    assertThat(crack.sentences().get(0))
        .startsWith("Up to 8.00 kN (1.80 kip) no ratio of crack widths is given: near the noise.");
    assertThat(crack.sentences())
        .anyMatch(
            words ->
                words.startsWith("At 18.0 kN (4.05 kip) the crack of CB is 10.0 times as wide"));
    assertThat(crack.atWidths()).isNotEmpty();
    assertThat(crack.first()).hasSize(3);
    // No strength there: the first figure of the beams is compared instead, and that is said.
    assertThat(comparison.subject().figure()).isEqualTo("width-at-12-kN");
    assertThat(comparison.warnings())
        .anyMatch(words -> words.startsWith("No test came to a strength"));
  }

  @Test
  void compare_specimenWithoutTheFigure_isNamed() throws LabException {
    StudyComparison comparison =
        whole(
            lab()
                .cylinders("NA-T", 7, 35, 36, 34)
                .cylinders("RA-S", 7, 25, 26)
                .cylinder("RA-S-07-3", "RA-S", 7, 168, 20, "around", "operator"));
    assertThat(comparison.warnings())
        .contains(
            "RA-S-07-3 did not come to this figure (strength); the mean of RA-S is that of the"
                + " others only.");
  }

  @Test
  void compare_testedTwiceOrTooLate_isSaid() throws LabException {
    StudyComparison comparison =
        whole(
            lab()
                .cylinders("NA-T", 7, 35, 36, 34)
                .cylinders("RA-S", 7, 25, 26)
                .cylinder("RA-S-07-1", "RA-S", 7, 168, 99, "around", "break")
                .cylinder("RA-S-07-3", "RA-S", 7, 180, 24, "around", "break"));
    assertThat(comparison.sets().get(0).statistics().mean()).isEqualTo(25);
    assertThat(comparison.warnings())
        .contains("RA-S-07-1 has 2 tests; the first counts.")
        .anyMatch(
            words ->
                words.startsWith("RA-S-07-3 was tested 12.0 h after its planned 7 days")
                    && words.contains("tolerance of 6 h; it is kept"));
  }

  @Test
  void compare_questionThatCannotBeAnswered_saysWhatThereIs() {
    StudyData data = lab().cylinders("NA-T", 7, 35, 36, 34).cylinders("RA-S", 7, 25, 26).data();
    assertThatThrownBy(() -> ask(data, "NA-TT", StudyQuestion.STRENGTH))
        .hasMessage("there is no series 'NA-TT', did you mean 'NA-T'?");
    assertThatThrownBy(() -> ask(data, "RA-S", StudyQuestion.STRENGTH))
        .hasMessageContaining("is the reference itself");
    assertThatThrownBy(() -> ask(data, "NA-T", "stength"))
        .hasMessageContaining("came to a figure 'stength', did you mean 'strength'?");
    assertThatThrownBy(() -> ask(data, "NA-T", "density"))
        .hasMessageContaining("there are: strength, peak-load, diameter");
    List<String> empty = List.of();
    assertThat(data.remarks()).isEqualTo(empty);
  }

  private static StudyComparison ask(StudyData data, String series, String figure)
      throws LabException {
    return StudyComparison.of(
        data,
        new StudyQuestion(
            Optional.of(series),
            Optional.empty(),
            OptionalDouble.empty(),
            figure,
            Optional.empty()));
  }
}
