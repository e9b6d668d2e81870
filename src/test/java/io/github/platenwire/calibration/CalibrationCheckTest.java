package io.github.platenwire.calibration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.platenwire.quantity.Unit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Classes of ISO 7500-1, ISO 9513 and ASTM E4. The limits used here are written out again from the
 * tables in memory (ISO 7500-1 Table 2; ISO 9513; E4: 1 % seen in a copy of E4-14), not read from
 * the files that are tested.
 */
class CalibrationCheckTest {
  private static final LimitTable FORCE = LimitTable.shipped("iso-7500-1");
  private static final LimitTable LENGTH = LimitTable.shipped("iso-9513");
  private static final LimitTable E4 = LimitTable.shipped("astm-e4");

  private static String classAll(CalibrationRuns runs, LimitTable limits) {
    CalibrationCheck check = CalibrationCheck.of(runs, Correction.NONE, limits);
    List<CalibrationCheck.Range> ranges = check.ranges();
    return ranges.stream()
        .filter(range -> range.from() == check.steps().get(0).applied())
        .map(CalibrationCheck.Range::className)
        .findFirst()
        .orElse("none");
  }

  @ParameterizedTest(name = "{0} % is class {1}")
  @CsvSource({
    "0.0, 0.5",
    "0.5, 0.5",
    "0.501, 1",
    "-0.5, 0.5",
    "-0.501, 1",
    "1.0, 1",
    "1.001, 2",
    "2.0, 2",
    "2.001, 3",
    "-2.0, 2",
    "-2.001, 3",
    "3.0, 3",
    "3.001, none",
    "-3.001, none"
  })
  void iso7500_errorAtAndJustBeyondEachLimit_givesTheClass(double percent, String expected) {
    CalibrationRun run = Runs.run(true, percent, 0);
    assertThat(classAll(Runs.kilonewtons(0.1, run, run, run), FORCE)).isEqualTo(expected);
  }

  @ParameterizedTest(name = "range of {0} % is class {1}")
  @CsvSource({
    "0.5, 0.5",
    "0.502, 1",
    "1.0, 1",
    "1.002, 2",
    "2.0, 2",
    "2.002, 3",
    "3.0, 3",
    "3.002, none"
  })
  void iso7500_repeatabilityAtAndJustBeyondEachLimit_givesTheClass(double range, String expected) {
    // symmetrical about no error at all, so that only the range counts
    CalibrationRuns runs =
        Runs.kilonewtons(
            0.1, Runs.run(true, -range / 2, 0), Runs.run(true, 0, 0), Runs.run(true, range / 2, 0));
    assertThat(classAll(runs, FORCE)).isEqualTo(expected);
  }

  @ParameterizedTest(name = "falling differs by {0} %, class {1}")
  @CsvSource({
    "0.75, 0.5",
    "0.752, 1",
    "-0.75, 0.5",
    "-0.752, 1",
    "1.5, 1",
    "1.502, 2",
    "3.0, 2",
    "3.002, 3",
    "-4.5, 3",
    "-4.502, none"
  })
  void iso7500_reversibilityAtAndJustBeyondEachLimit_givesTheClass(
      double percent, String expected) {
    CalibrationRun up = Runs.run(true, 0, 0);
    CalibrationRuns runs = Runs.kilonewtons(0.1, up, up, up, Runs.run(false, percent, 0));
    assertThat(classAll(runs, FORCE)).isEqualTo(expected);
  }

  @ParameterizedTest(name = "zero {0} kN of 1000 kN, class {1}")
  @CsvSource({
    "0.5, 0.5",
    "0.501, 1",
    "-0.5, 0.5",
    "-0.501, 1",
    "1.0, 1",
    "1.001, 2",
    "2.0, 2",
    "2.001, 3",
    "3.0, 3",
    "3.001, none"
  })
  void iso7500_zeroAtAndJustBeyondEachLimit_givesTheClass(double zero, String expected) {
    CalibrationRun run = Runs.run(true, 0, 0);
    assertThat(classAll(Runs.kilonewtons(0.1, run, run, Runs.run(true, 0, zero)), FORCE))
        .isEqualTo(expected);
  }

  @ParameterizedTest(name = "resolution {0} kN at 200 kN, class {1}")
  @CsvSource({
    "0.5, 0.5",
    "0.501, 1",
    "1.0, 1",
    "1.001, 2",
    "2.0, 2",
    "2.001, 3",
    "2.9, 3",
    "3.0, none"
  })
  void iso7500_resolutionAtAndJustBeyondEachLimit_givesTheClass(
      double resolution, String expected) {
    // the lower limit of class 3 is 67 resolutions: 2.9 kN x 67 is 194 kN, 3 kN x 67 is 201 kN
    CalibrationRun run = Runs.run(true, 0, 0);
    assertThat(classAll(Runs.kilonewtons(resolution, run, run, run), FORCE)).isEqualTo(expected);
  }

  @Test
  void ranges_coarseResolution_givesEachClassItsLowerLimit() {
    CalibrationRun run = Runs.run(true, 0.1, 0);
    CalibrationCheck check =
        CalibrationCheck.of(Runs.kilonewtons(1.5, run, run, run), Correction.NONE, FORCE);
    // 400 x 1.5 = 600, 200 x 1.5 = 300, 100 x 1.5 = 150
    assertThat(check.ranges())
        .containsExactly(
            new CalibrationCheck.Range("0.5", 600, 1000, OptionalDouble.of(600)),
            new CalibrationCheck.Range("1", 400, 1000, OptionalDouble.of(300)),
            new CalibrationCheck.Range("2", 200, 1000, OptionalDouble.of(150)));
  }

  @Test
  void ranges_oneBadStepInTheMiddle_beginAboveIt() {
    CalibrationRun run = Runs.run(true, 0.1, 0);
    List<CalibrationPoint> points = new ArrayList<>(run.points());
    points.set(1, new CalibrationPoint(400, 404.4));
    CalibrationRun bad = new CalibrationRun(true, points, OptionalDouble.of(0));
    CalibrationCheck check =
        CalibrationCheck.of(Runs.kilonewtons(0.1, bad, bad, bad), Correction.NONE, FORCE);
    assertThat(check.ranges())
        .extracting(range -> range.className() + " from " + range.from())
        .containsExactly("0.5 from 600.0", "2 from 200.0");
    assertThat(check.failures(FORCE.ofClass("class 1").orElseThrow(), 0))
        .containsExactly("at 400 kN: error 1.1 % is beyond 1 %");
    assertThat(check.failures(FORCE.ofClass("1").orElseThrow(), 600)).isEmpty();
  }

  @Test
  void steps_handComputed_giveTheFigures() {
    // by hand: q = 100 (100.3 - 100) / 100, b = 100 (100.5 - 100.1) / 100,
    // v = 100 ((100.3 - 100) - (100.9 - 100)) / 100, a = 100 x 0.1 / 100
    CalibrationRuns runs =
        Runs.kilonewtons(
            0.1,
            one(true, 100, 100.1),
            one(true, 100, 100.3),
            one(true, 100, 100.5),
            one(false, 100, 100.9));
    StepErrors step = CalibrationCheck.of(runs, Correction.NONE, FORCE).steps().get(0);
    assertThat(step.errorPercent()).isCloseTo(0.3, within(1e-12));
    assertThat(step.repeatabilityPercent().orElseThrow()).isCloseTo(0.4, within(1e-12));
    assertThat(step.reversibilityPercent().orElseThrow()).isCloseTo(-0.6, within(1e-12));
    assertThat(step.resolutionPercent().orElseThrow()).isCloseTo(0.1, within(1e-12));
  }

  @Test
  void steps_sameIndicationRisingAndFalling_giveTheReversibilityOfTheStandard() {
    // v = 100 (F' - F) / F with F = 100 and F' = 99.2 at the same indication of 100
    CalibrationRuns runs = Runs.kilonewtons(0.1, one(true, 100, 100), one(false, 99.2, 100));
    StepErrors step = CalibrationCheck.of(runs, Correction.NONE, FORCE).steps().get(0);
    assertThat(step.reversibilityPercent().orElseThrow()).isCloseTo(-0.8, within(1e-12));
  }

  private static CalibrationRun one(boolean ascending, double applied, double indicated) {
    return new CalibrationRun(
        ascending, List.of(new CalibrationPoint(applied, indicated)), OptionalDouble.empty());
  }

  @ParameterizedTest(name = "{0} and {1} %: {2}")
  @CsvSource({
    "1.0, 1.0, E4",
    "1.001, 1.0, none",
    "0.5, -0.5, E4",
    "0.501, -0.501, none",
    "1.0, 0.0, E4",
    "-1.0, -1.001, none"
  })
  void e4_errorsOfTwoRuns_eachWithinOnePercentAndOfEachOther(
      double first, double second, String expected) {
    CalibrationRuns runs =
        Runs.kilonewtons(0.1, Runs.run(true, first, 0), Runs.run(true, second, 0));
    assertThat(classAll(runs, E4)).isEqualTo(expected);
  }

  @ParameterizedTest(name = "resolution {0} kN: {1}")
  @CsvSource({"1.0, E4", "1.001, none"})
  void e4_leastForceBelow200Resolutions_isNotVerified(double resolution, String expected) {
    CalibrationRun run = Runs.run(true, 0, 0);
    assertThat(classAll(Runs.kilonewtons(resolution, run, run), E4)).isEqualTo(expected);
  }

  @ParameterizedTest(name = "{0} mm applied, {1} mm shown: class {2}")
  @CsvSource({
    // small: the absolute limits 0.6, 1.5, 3 and 6 um hold
    "0.1, 0.1006, 0.2",
    "0.1, 0.1007, 0.5",
    "0.1, 0.1015, 0.5",
    "0.1, 0.0984, 1",
    "0.1, 0.1030, 1",
    "0.1, 0.1031, 2",
    "0.1, 0.1060, 2",
    "0.1, 0.1061, none",
    // from 300 um up the relative ones: 0.2, 0.5, 1 and 2 % of 1 mm
    "1.0, 1.0020, 0.2",
    "1.0, 1.0021, 0.5",
    "1.0, 0.9950, 0.5",
    "1.0, 1.0051, 1",
    "1.0, 1.0200, 2",
    "1.0, 1.0201, none"
  })
  void iso9513_largerOfRelativeAndAbsolute_givesTheClass(
      double applied, double indicated, String expected) {
    CalibrationRuns runs =
        Runs.gauge(Unit.MILLIMETRE, 0.0001, new double[] {applied}, new double[] {indicated});
    assertThat(classAll(runs, LENGTH)).isEqualTo(expected);
  }

  @Test
  void iso9513_inches_areHeldAgainstTheSameMicrometres() {
    double applied = 0.1 / 25.4;
    CalibrationRuns good =
        Runs.gauge(
            Unit.INCH, 0.000004, new double[] {applied}, new double[] {applied + 0.0029 / 25.4});
    CalibrationRuns bad =
        Runs.gauge(
            Unit.INCH, 0.000004, new double[] {applied}, new double[] {applied + 0.0031 / 25.4});
    assertThat(classAll(good, LENGTH)).isEqualTo("1");
    assertThat(classAll(bad, LENGTH)).isEqualTo("2");
  }

  @Test
  void iso9513_coarseResolution_isJudgedByTheLarger() {
    double[] at = {0.1};
    // class 1: larger of 0.5 % (0.5 um) and 1 um
    assertThat(classAll(Runs.gauge(Unit.MILLIMETRE, 0.001, at, at), LENGTH)).isEqualTo("1");
    assertThat(classAll(Runs.gauge(Unit.MILLIMETRE, 0.0011, at, at), LENGTH)).isEqualTo("2");
    assertThat(classAll(Runs.gauge(Unit.MILLIMETRE, 0.0021, at, at), LENGTH)).isEqualTo("none");
  }

  @Test
  void of_standardForAnotherQuantity_isRefused() {
    CalibrationRun run = Runs.run(true, 0, 0);
    CalibrationRuns runs = Runs.kilonewtons(0.1, run);
    assertThatThrownBy(() -> CalibrationCheck.of(runs, Correction.NONE, LENGTH))
        .hasMessage("ISO 9513 is for a length, but the runs are in kN");
  }

  @Test
  void remarks_fewRunsAndSteps_sayWhatIsMissing() {
    CalibrationRuns runs =
        new CalibrationRuns(Unit.KILONEWTON, OptionalDouble.empty(), List.of(one(true, 100, 100)));
    assertThat(CalibrationCheck.of(runs, Correction.NONE, FORCE).remarks())
        .containsExactly(
            "ISO 7500-1 wants at least 3 rising runs; there is 1.",
            "ISO 7500-1 wants at least 5 steps; there is 1.",
            "ISO 7500-1 wants at least 5 steps from 20 % of the greatest value up; there is 1.",
            "The resolution is not given, so neither it nor the lower limit was judged.",
            "With a single rising run the repeatability cannot be judged.",
            "No zero after a run is given ('zero-after'), so it was not judged.");
  }

  @Test
  void correction_takesAwayAConstantError() {
    CalibrationRun run = Runs.run(true, 1.8, 0);
    CalibrationRuns runs = Runs.kilonewtons(0.1, run, run, run);
    assertThat(classAll(runs, FORCE)).isEqualTo("2");
    CorrectionFit fit = CorrectionFit.of(CorrectionKind.SCALE, runs, OptionalDouble.empty(), 2);
    CalibrationCheck corrected = CalibrationCheck.of(runs, fit.correction(), FORCE);
    assertThat(corrected.classOf(corrected.steps().get(0)).map(ClassLimits::name))
        .isEqualTo(Optional.of("0.5"));
  }
}
