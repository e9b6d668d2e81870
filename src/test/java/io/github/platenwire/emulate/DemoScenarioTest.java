package io.github.platenwire.emulate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.platenwire.toml.TomlException;
import io.github.platenwire.toml.TomlSection;
import java.io.IOException;
import java.io.StringReader;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DemoScenarioTest {
  private static final Instant START = Instant.parse("2026-11-25T07:15:02Z");
  private static final ZoneId ZONE = ZoneId.of("Europe/Vienna");
  private static final DemoSpecimen[] EMPTY = {};

  private static List<CSVRecord> rows(String table) throws IOException {
    CSVFormat format = CSVFormat.RFC4180.builder().setHeader().setSkipHeaderRecord(true).get();
    try (StringReader reader = new StringReader(table)) {
      return format.parse(reader).getRecords();
    }
  }

  /**
   * ASTM C39/C39M, from memory: diameters of a cylinder within 2 %; three 100 × 200 mm companions
   * within 10.6 % of their mean.
   */
  @Property(tries = 200)
  void today_anySeed_areFourSetsOfBelievableCompanions(@ForAll long seed) {
    DemoScenario scenario = new DemoScenario(START, ZONE, seed);

    assertThat(scenario.today()).hasSize(12).startsWith(scenario.firstSet().toArray(EMPTY));
    for (int set = 0; set < 12; set += 3) {
      assertThatCompanions(scenario.today().subList(set, set + 3));
    }
    assertThat(scenario.firstSet())
        .allSatisfy(
            first ->
                assertThat(first.cylinder().orElseThrow().strengthMegapascals())
                    .isBetween(24.0, 27.0));
  }

  private static void assertThatCompanions(List<DemoSpecimen> set) {
    assertThat(set.stream().map(DemoSpecimen::series).distinct()).hasSize(1);
    assertThat(set.stream().map(DemoSpecimen::ageDays).distinct()).hasSize(1);
    double sum = 0;
    double least = 1000;
    double greatest = 0;
    for (DemoSpecimen specimen : set) {
      double first = specimen.firstDiameterMillimetres();
      double second = specimen.secondDiameterMillimetres();
      EmulatedCylinder cylinder = specimen.cylinder().orElseThrow();
      assertThat(first / second).isCloseTo(1, within(0.02));
      assertThat(cylinder.diameterMillimetres()).isCloseTo((first + second) / 2, within(1e-9));
      assertThat(specimen.lengthMillimetres()).isBetween(198.0, 202.0);
      double density =
          specimen.massGrams()
              / (cylinder.areaSquareMillimetres() * specimen.lengthMillimetres())
              * 1e6;
      assertThat(density).isBetween(2200.0, 2450.0);
      sum += cylinder.strengthMegapascals();
      least = Math.min(least, cylinder.strengthMegapascals());
      greatest = Math.max(greatest, cylinder.strengthMegapascals());
    }
    assertThat((greatest - least) / (sum / 3)).isLessThan(0.106);
  }

  /**
   * Seven days ± 6 h, 28 days ± 20 h: ASTM C39/C39M, from memory. Also across a change of the
   * clocks.
   */
  @ParameterizedTest
  @CsvSource({
    "2026-11-25T07:15:02Z, Europe/Vienna",
    "2026-03-31T15:00:00Z, America/New_York",
    "2026-03-30T06:00:00Z, Europe/Vienna",
    "2026-11-02T06:10:00Z, America/New_York",
    "2026-06-01T23:59:59Z, Asia/Kathmandu"
  })
  void cast_anyZone_isItsAgeBeforeWithinTolerance(Instant start, String zone) {
    ZoneId zoneId = ZoneId.of(zone);

    for (DemoSpecimen specimen : new DemoScenario(start, zoneId, 1).today()) {
      Instant cast = specimen.cast().atZone(zoneId).toInstant();
      assertThat(Duration.between(cast, start))
          .isBetween(
              Duration.ofDays(specimen.ageDays()).minusHours(2),
              Duration.ofDays(specimen.ageDays()).plusHours(4));
      assertThat(specimen.cast().getMinute() % 5).isZero();
    }
  }

  @Test
  void specimensText_wholeStudy_isATableOfCylindersAndSixBeams() throws IOException {
    DemoScenario scenario = new DemoScenario(START, ZONE, 1);
    List<CSVRecord> rows = rows(scenario.specimensText());

    assertThat(rows).hasSize(18 + scenario.waiting().size()).hasSizeGreaterThan(20);
    Set<String> names = new HashSet<>();
    for (CSVRecord row : rows) {
      assertThat(row.isConsistent()).isTrue();
      assertThat(names.add(row.get("specimen"))).isTrue();
      if (row.get("shape").equals("beam")) {
        assertThat(row.get("depth_mm")).isEqualTo("150");
        continue;
      }
      assertThat(row.get("shape")).isEqualTo("cylinder");
      assertThat(Double.parseDouble(row.get("diameter_1_mm"))).isBetween(99.0, 101.0);
      assertThat(LocalDateTime.parse(row.get("cast").replace(" ", "T")))
          .isBefore(LocalDateTime.ofInstant(START, ZONE));
    }
    assertThat(rows.get(0).get("specimen")).isEqualTo("RA-S-07-1");
    assertThat(rows.get(0).get("age_days")).isEqualTo("7");
    assertThat(rows.get(11).get("notes")).isEmpty();
    assertThat(rows.get(12).get("notes")).isEqualTo("not yet broken");
  }

  @Test
  void waiting_specimens_areNotOverdue() {
    for (DemoSpecimen specimen : new DemoScenario(START, ZONE, 1).waiting()) {
      Instant due =
          specimen.cast().atZone(ZONE).toInstant().plus(Duration.ofDays(specimen.ageDays()));
      assertThat(due).isAfter(START.minus(Duration.ofHours(6)));
      assertThat(specimen.cylinder()).isEmpty();
    }
  }

  @Test
  void studyText_everySeriesOfTheTable_isDeclared() throws TomlException, IOException {
    DemoScenario scenario = new DemoScenario(START, ZONE, 1);
    TomlSection study = TomlSection.parse(scenario.studyText(), "study.toml");

    study.allow("format", "title", "reference", "ages-days", "replicates", "series");
    assertThat(study.string("reference")).isEqualTo("NA-T");
    assertThat(study.numbers("ages-days")).containsExactly(3.0, 7.0, 28.0);
    assertThat(study.whole("replicates")).isEqualTo(3);
    Set<String> declared = new HashSet<>();
    for (TomlSection series : study.sections("series")) {
      series.allow(
          "name", "label", "mix", "placing", "curing", "bar", "reference", "method", "ages-days");
      declared.add(series.string("name"));
    }
    assertThat(declared)
        .containsExactlyInAnyOrder("NA-T", "NA-S", "RA-T", "RA-S", "NA-PB", "NA-CB");
    for (CSVRecord row : rows(scenario.specimensText())) {
      assertThat(declared).contains(row.get("series"));
    }
  }

  @Test
  void rigText_portWithBackslashes_isReadBackAsWritten() throws TomlException {
    DemoScenario scenario = new DemoScenario(START, ZONE, 1);
    String port = "\\\\.\\COM3";
    TomlSection rig =
        TomlSection.parse(scenario.rigText("frame-1", port, "line-kn"), "frame-1.toml");

    assertThat(rig.string("name")).isEqualTo("frame-1");
    TomlSection channel = rig.sections("channel").get(0);
    assertThat(channel.string("port")).isEqualTo(port);
    assertThat(channel.string("device")).isEqualTo("line-kn");
    assertThat(channel.string("calibration")).isEqualTo(DemoScenario.CALIBRATION_NAME);
    assertThat(channel.numbers("range")).containsExactly(-15.0, 1500.0);
  }

  @Test
  void calibrationText_dayOfTheDemo_isInDate() throws TomlException {
    TomlSection calibration =
        TomlSection.parse(new DemoScenario(START, ZONE, 1).calibrationText(), "frame-1-load.toml");

    LocalDate today = LocalDate.ofInstant(START, ZONE);
    assertThat(calibration.optionalDate("date").orElseThrow()).isBefore(today);
    assertThat(calibration.optionalDate("due").orElseThrow()).isAfter(today);
    assertThat(calibration.string("name")).isEqualTo(DemoScenario.CALIBRATION_NAME);
  }

  @Test
  void scenario_sameSeed_isTheSameAndOtherSeedIsNot() {
    DemoScenario one = new DemoScenario(START, ZONE, 42);

    assertThat(new DemoScenario(START, ZONE, 42).today()).isEqualTo(one.today());
    assertThat(new DemoScenario(START, ZONE, 42).specimensText()).isEqualTo(one.specimensText());
    assertThat(new DemoScenario(START, ZONE, 43).specimensText()).isNotEqualTo(one.specimensText());
  }

  @Test
  void test_ofEachCompanion_breaksAtItsTruth() {
    DemoScenario scenario = new DemoScenario(START, ZONE, 42);
    EmulatedIndicator indicator = DemoScenario.indicator(20);

    for (DemoSpecimen specimen : scenario.today()) {
      EmulatedFrame frame = scenario.test(specimen, indicator);
      while (frame.hasNext()) {
        frame.next();
      }
      double area = specimen.cylinder().orElseThrow().areaSquareMillimetres();
      // Four standard deviations of 20 N and half a step of 50 N on some 7850 mm².
      assertThat(frame.sent().greatestAboveZeroNewtons() / area)
          .isCloseTo(specimen.cylinder().orElseThrow().strengthMegapascals(), within(0.014));
    }
    assertThatThrownBy(() -> scenario.test(scenario.waiting().get(0), indicator))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("is not broken today");
  }
}
