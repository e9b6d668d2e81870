package io.github.platenwire.method;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.github.platenwire.method.Method.Objection;
import io.github.platenwire.method.Method.Weight;
import io.github.platenwire.quantity.Unit;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CylinderExaminationTest {
  private static final TestSetting SETTING = Bench.setting(Bench.kilonewtons());

  private static List<Objection> examine(Bench.SpecimenBuilder specimen) {
    return Bench.METHOD.examine(specimen.build(), SETTING);
  }

  private static void assertOnly(List<Objection> objections, Weight weight, String part) {
    assertThat(objections).hasSize(1);
    assertThat(objections.get(0).weight()).isEqualTo(weight);
    assertThat(objections.get(0).problem()).contains(part);
    assertThat(objections.get(0).remedy()).isNotEmpty();
  }

  @Test
  void examine_soundCylinder_hasNoObjection() {
    assertThat(examine(new Bench.SpecimenBuilder())).isEmpty();
  }

  @Test
  void examine_oneDiameter_isRefused() {
    assertOnly(
        examine(new Bench.SpecimenBuilder().diameters(100.0)),
        Weight.REFUSED,
        "1 of 2 diameters are given");
  }

  @Test
  void examine_impossibleDiameter_isRefused() {
    assertOnly(
        examine(new Bench.SpecimenBuilder().diameters(100.0, 0.0)),
        Weight.REFUSED,
        "are not possible");
    assertOnly(
        examine(new Bench.SpecimenBuilder().diameters(Double.NaN, 100.0)),
        Weight.REFUSED,
        "are not possible");
  }

  @Test
  void examine_noLength_isRefused() {
    assertOnly(
        examine(new Bench.SpecimenBuilder().length(0)), Weight.REFUSED, "length is not given");
  }

  @Test
  void examine_wrongShape_isRefused() {
    assertOnly(
        examine(new Bench.SpecimenBuilder().shape("cube")), Weight.REFUSED, "cylinder or core");
  }

  /** ASTM C39, from memory: not to be tested if one differs from another by more than 2 %. */
  @ParameterizedTest
  @CsvSource({
    "100.0, 102.0, false",
    "101.6, 103.632, false",
    "100.0, 102.1, true",
    "102.1, 100.0, true",
  })
  void examine_diametersDiffer_needsAReasonAboveTwoPercent(double a, double b, boolean objected) {
    List<Objection> objections = examine(new Bench.SpecimenBuilder().diameters(a, b).length(203));
    if (objected) {
      assertOnly(objections, Weight.NEEDS_REASON, "2.10 %, more than 2 %");
    } else {
      assertThat(objections).isEmpty();
    }
  }

  /**
   * ASTM C39, from memory: the table of corrections goes from 1.00; 2.2 is where length matters.
   */
  @ParameterizedTest
  @CsvSource({"99.9, REFUSED", "220.5, DEPARTURE"})
  void examine_lengthOutOfProportion_isObjected(double length, Weight weight) {
    assertOnly(
        examine(new Bench.SpecimenBuilder().length(length)), weight, "length over diameter is");
  }

  @ParameterizedTest
  @CsvSource({"100", "175", "200", "220"})
  void examine_lengthAtALimit_isNotObjected(double length) {
    assertThat(examine(new Bench.SpecimenBuilder().length(length))).isEmpty();
  }

  /** Tolerances of ASTM C39, from memory: 0.5 h, 2 h, 6 h, 20 h and 2 d. */
  @ParameterizedTest
  @CsvSource({
    "1, 24.5, false", "1, 24.52, true", "3, 74, false", "3, 74.1, true", "7, 162, false",
    "7, 161.9, true", "28, 692, false", "28, 692.1, true", "28, 651.9, true", "90, 2208, false",
    "90, 2208.1, true", "56, 1500, false",
  })
  void examine_age_isADepartureOutsideItsTolerance(double planned, double hours, boolean objected) {
    Specimen specimen =
        new Bench.SpecimenBuilder().cast("2026-06-01T08:00:00").planned(planned).build();
    Instant cast = specimen.cast().orElseThrow().atZone(Bench.ZONE).toInstant();
    TestSetting setting =
        new TestSetting(
            cast.plus(Duration.ofSeconds(Math.round(hours * 3600))),
            Bench.ZONE,
            SETTING.channels(),
            Optional.empty());
    List<Objection> objections = Bench.METHOD.examine(specimen, setting);
    if (objected) {
      assertOnly(objections, Weight.DEPARTURE, "outside the tolerance");
    } else {
      assertThat(objections).isEmpty();
    }
  }

  /**
   * Summer time ends on 2026-10-25 in this zone: the true time is an hour more than the clock's.
   */
  @Test
  void examine_clocksPutBackInBetween_countsTrueTime() {
    TestSetting setting =
        new TestSetting(
            Instant.parse("2026-10-25T08:30:00Z"),
            Bench.ZONE,
            SETTING.channels(),
            Optional.empty());
    Specimen specimen = new Bench.SpecimenBuilder().cast("2026-10-24T09:00:00").planned(1).build();
    assertOnly(Bench.METHOD.examine(specimen, setting), Weight.DEPARTURE, "the age is 1.06 d");
  }

  @Test
  void examine_noCastTime_isADeparture() {
    assertOnly(
        examine(new Bench.SpecimenBuilder().cast("")), Weight.DEPARTURE, "its age is not known");
  }

  @Test
  void examine_castAfterTheTest_isRefused() {
    assertOnly(
        examine(new Bench.SpecimenBuilder().cast("2027-01-01T00:00:00")),
        Weight.REFUSED,
        "after the start of the test");
  }

  @Test
  void examine_noPlannedAge_isADeparture() {
    assertOnly(examine(new Bench.SpecimenBuilder().planned(0)), Weight.DEPARTURE, "no planned age");
  }

  @Test
  void examine_endsUnknownOrNotGiven_isADeparture() {
    assertOnly(examine(new Bench.SpecimenBuilder().ends("sawn")), Weight.DEPARTURE, "'sawn'");
    assertOnly(examine(new Bench.SpecimenBuilder().ends("")), Weight.DEPARTURE, "not given");
  }

  @Test
  void examine_severalObjections_putsTheRefusalFirst() {
    List<Objection> objections =
        examine(
            new Bench.SpecimenBuilder().cast("").ends("").diameters(100.0, 110.0).shape("cube"));
    assertThat(objections)
        .extracting(Objection::weight)
        .containsExactly(Weight.REFUSED, Weight.NEEDS_REASON, Weight.DEPARTURE, Weight.DEPARTURE);
  }

  @Test
  void examine_noForceChannelOrTwo_isRefused() {
    Specimen specimen = new Bench.SpecimenBuilder().build();
    assertOnly(
        Bench.METHOD.examine(specimen, Bench.setting()), Weight.REFUSED, "exactly one channel");
    TestSetting two = Bench.setting(Bench.kilonewtons(), Bench.kilonewtons());
    assertOnly(Bench.METHOD.examine(specimen, two), Weight.REFUSED, "exactly one channel");
    assertThatThrownBy(() -> Bench.METHOD.start(specimen, two))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("exactly one channel");
  }

  @Test
  void start_againstAnObjection_recordsTheReason() {
    Specimen oval = new Bench.SpecimenBuilder().diameters(100.0, 103.0).build();
    TestSetting reasoned =
        new TestSetting(
            Bench.START, Bench.ZONE, SETTING.channels(), Optional.of("last one of its batch"));
    MethodRun run = Bench.METHOD.start(oval, reasoned);
    MethodResult result = new Bench(run, Unit.KILONEWTON, 100).crush(250, 2).run.finish();
    assertThat(result.departures())
        .anyMatch(text -> text.endsWith("reason given: last one of its batch"));
    assertThat(Bench.check(result, "diameters").met()).isFalse();
  }
}
