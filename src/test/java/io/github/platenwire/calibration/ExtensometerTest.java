package io.github.platenwire.calibration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.github.platenwire.quantity.Unit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Classes of extensometers with a gauge length, and how steps are to be spread. */
class ExtensometerTest {
  private static final LimitTable E83 = LimitTable.shipped("astm-e83");
  private static final LimitTable ISO_9513 = LimitTable.shipped("iso-9513");
  private static final LimitTable ISO_7500 = LimitTable.shipped("iso-7500-1");
  private static final LimitTable E4 = LimitTable.shipped("astm-e4");

  private static CalibrationRuns gauge(
      Unit unit, double nominal, double measured, double applied, double indicated) {
    CalibrationRun run =
        new CalibrationRun(
            true, List.of(new CalibrationPoint(applied, indicated)), OptionalDouble.empty());
    return new CalibrationRuns(
        unit,
        OptionalDouble.empty(),
        Optional.of(new GaugeLength(nominal, OptionalDouble.of(measured))),
        List.of(run, run));
  }

  private static String classOf(CalibrationRuns runs, LimitTable limits) {
    CalibrationCheck check = CalibrationCheck.of(runs, Correction.NONE, limits);
    return check.classOf(check.steps().get(0)).map(ClassLimits::name).orElse("none");
  }

  /**
   * ASTM E83, table of classes, from memory (class A to be checked): fixed errors of strain
   * 0.00002, 0.0001, 0.0002, 0.001, 0.01 and 0.1, or 0.1, 0.5, 0.5, 1, 1, 1 % of the strain; here
   * over 100 mm, so that 0.0001 is 0.01 mm. At 0.1 mm of travel the fixed errors are the larger up
   * to class E; at 10 mm (strain 0.1) the relative ones up to class C.
   */
  @ParameterizedTest
  @CsvSource({
    "0.1, 0.102, A", "0.1, 0.1021, B-1", "0.1, 0.11, B-1", "0.1, 0.1101, B-2", "0.1, 0.12, B-2",
    "0.1, 0.1201, C", "0.1, 0.2, C", "0.1, 0.201, D", "0.1, 1.1, D", "0.1, 1.11, E",
    "0.1, 10.1, E", "0.1, 10.2, none", "10, 10.01, A", "10, 10.011, B-1", "10, 9.95, B-1",
    "10, 10.051, C", "10, 9.9, C", "10, 10.101, D", "10, 11, D", "10, 11.01, E"
  })
  void e83_errorAtAndJustBeyondEachLimit_givesTheClass(
      double applied, double indicated, String expected) {
    assertThat(classOf(gauge(Unit.MILLIMETRE, 100, 100, applied, indicated), E83))
        .isEqualTo(expected);
  }

  /** 4 in = 101.6 mm: class B-1 allows 0.0001 of that, 0.0004 in. */
  @Test
  void e83_inches_areHeldAgainstTheSameStrain() {
    assertThat(classOf(gauge(Unit.INCH, 4, 4, 0.004, 0.0044), E83)).isEqualTo("B-1");
    assertThat(classOf(gauge(Unit.INCH, 4, 4, 0.004, 0.00441), E83)).isEqualTo("B-2");
  }

  /**
   * Gauge lengths within 0.1, 0.25, 0.5, 1 % (ASTM E83) and 0.2, 0.5, 1, 2 % (ISO 9513), memory.
   */
  @ParameterizedTest
  @CsvSource({
    "100.1, A, 0.2",
    "99.89, B-1, 0.2",
    "100.25, B-1, 0.5",
    "100.26, B-2, 0.5",
    "99.5, B-2, 0.5",
    "100.51, C, 1",
    "101, C, 1",
    "101.01, none, 2",
    "98, none, 2",
    "97.99, none, none"
  })
  void gaugeLength_atAndJustBeyondEachLimit_givesTheClass(
      double measured, String e83, String iso9513) {
    CalibrationRuns runs = gauge(Unit.MILLIMETRE, 100, measured, 1, 1);
    assertThat(classOf(runs, E83)).isEqualTo(e83);
    assertThat(classOf(runs, ISO_9513)).isEqualTo(iso9513);
  }

  @Test
  void failures_gaugeLengthBeyondTheClass_saySo() {
    CalibrationCheck check =
        CalibrationCheck.of(gauge(Unit.MILLIMETRE, 100, 100.4, 1, 1), Correction.NONE, E83);
    assertThat(check.failures(E83.ofClass("B-1").orElseThrow(), 0))
        .containsExactly("gauge length 0.4 % is beyond 0.25 % of the nominal length");
  }

  @Test
  void e83_withoutGaugeLength_isRefusedAndSaysWhatToAdd() {
    CalibrationRuns runs = Runs.gauge(Unit.MILLIMETRE, 0.001, new double[] {1}, new double[] {1});
    assertThatThrownBy(() -> CalibrationCheck.of(runs, Correction.NONE, E83))
        .hasMessageContaining("add 'gauge-length' to the calibration");
  }

  private static List<String> spread(LimitTable limits, double... steps) {
    List<CalibrationPoint> points = new ArrayList<>();
    for (double step : steps) {
      points.add(new CalibrationPoint(step, step));
    }
    CalibrationRun run = new CalibrationRun(true, points, OptionalDouble.of(0));
    CalibrationRuns runs =
        new CalibrationRuns(Unit.KILONEWTON, OptionalDouble.of(0.001), List.of(run, run, run));
    return CalibrationCheck.of(runs, Correction.NONE, limits).remarks();
  }

  /** ISO 7500-1, 6.4.5, from memory: 20 to 100 % in five steps, and 10, 5, 2, 1 … % below. */
  @Test
  void iso7500_stepsSpreadAsWanted_haveNoRemark() {
    assertThat(spread(ISO_7500, 200, 400, 600, 800, 1000)).isEmpty();
    assertThat(spread(ISO_7500, 1, 2, 5, 10, 20, 50, 100, 200, 400, 600, 800, 1000)).isEmpty();
  }

  @Test
  void iso7500_stepsSpreadOtherwise_areSaid() {
    assertThat(spread(ISO_7500, 100, 200, 400, 600, 1000))
        .containsExactly(
            "ISO 7500-1 wants at least 5 steps from 20 % of the greatest value up; there are 4.",
            "ISO 7500-1 wants its steps there about evenly spread; between 600 and 1000 kN lie"
                + " 40 % of the greatest value.");
    assertThat(spread(ISO_7500, 20, 200, 400, 600, 800, 1000))
        .containsExactly(
            "ISO 7500-1 wants the lower steps to follow each other closer; there is none between"
                + " 20 and 200 kN.");
  }

  /** ASTM E4-16, section 10: at least five forces in each decade, such as 1, 2, 4, 7, 10. */
  @Test
  void e4_fewerThanFiveStepsInADecade_areSaid() {
    assertThat(spread(E4, 10, 20, 40, 70, 100, 200, 400, 700, 1000)).isEmpty();
    assertThat(spread(E4, 10, 40, 70, 100, 200, 400, 700, 1000))
        .containsExactly(
            "ASTM E4 wants at least 5 steps in each decade; between 10 and 100 kN there are"
                + " 4.");
  }
}
