package io.github.platenwire.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import io.github.platenwire.audit.Audit;
import io.github.platenwire.audit.Scope;
import io.github.platenwire.emulate.BeamDevice;
import io.github.platenwire.emulate.BeamReadings;
import io.github.platenwire.emulate.ClockedPorts;
import io.github.platenwire.emulate.EmulatedClock;
import io.github.platenwire.emulate.EmulatedModulus;
import io.github.platenwire.emulate.ModulusTruth;
import io.github.platenwire.emulate.TimedBytes;
import io.github.platenwire.explain.Explanation;
import io.github.platenwire.lab.LabFolder;
import io.github.platenwire.lab.LabTemplate;
import io.github.platenwire.lab.PrivateKeys;
import io.github.platenwire.lab.Register;
import io.github.platenwire.method.MethodResult.Figure;
import io.github.platenwire.port.Port;
import io.github.platenwire.quantity.UnitSystem;
import io.github.platenwire.reading.SystemClocks;
import io.github.platenwire.record.CloseReason;
import io.github.platenwire.record.Observations;
import io.github.platenwire.record.Summary;
import io.github.platenwire.recorder.ChecklistItem;
import io.github.platenwire.recorder.LabTest;
import io.github.platenwire.recorder.RecordedTest;
import io.github.platenwire.recorder.RecorderClocks;
import io.github.platenwire.recorder.Recording;
import io.github.platenwire.recorder.SummaryCheck;
import io.github.platenwire.recorder.TestClose;
import io.github.platenwire.report.ReportSetting;
import io.github.platenwire.report.TestReport;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * A modulus from the bytes of three devices through record, summary, reduce and explain: a load, a
 * compressometer on a lever of 2, and a gauge across the cylinder.
 */
@Timeout(120)
class ModulusRecordTest {
  private static final Duration PATIENCE = Duration.ofSeconds(20);
  private static final Instant START = Instant.parse("2026-11-25T07:00:00Z");
  private static final List<String> PORTS =
      List.of("memory:m-load", "memory:m-axial", "memory:m-across");

  private static final String RIG =
      """
      format = "platenwire-rig 1"
      name = "frame-modulus"
      title = "Frame with compressometer"
      [[channel]]
      name = "load"
      quantity = "force"
      unit = "kN"
      port = "memory:m-load"
      device = "signed-line-kn"
      calibration = "all"
      range = [-5, 1500]
      resolution = 0.001
      [[channel]]
      name = "axial"
      quantity = "length"
      unit = "mm"
      port = "memory:m-axial"
      device = "gauge-line-mm"
      calibration = "all"
      range = [-5, 5]
      zero-tolerance = 2
      resolution = 0.0001
      gauge-length-in = 5.25
      lever = 2
      delay-ms = 20
      [[channel]]
      name = "across"
      quantity = "strain"
      unit = "µm/m"
      port = "memory:m-across"
      device = "strain-line"
      calibration = "all"
      range = [-3000, 3000]
      zero-tolerance = 100
      resolution = 0.1
      direction = "transverse"
      """;

  private static final String CERTIFICATE =
      """
      format = "platenwire-calibration 1"
      name = "all"
      certificate = "M-1"
      laboratory = "invented"
      date = 2026-01-15
      due = 2127-01-15
      class = "1"
      expanded-uncertainty-percent = 0.5
      """;

  private static final String SPECIMENS =
      """
      specimen,series,shape,diameter_1_mm,diameter_2_mm,length_mm,cast,age_days,ends,companion_strength_MPa,notes
      NA-28-4,NA-T,cylinder,150.00,150.00,300,2026-10-28 07:00,28,ground,32.0,invented
      """;

  private final EmulatedModulus cylinder = new EmulatedModulus(27_500, 32, 0.2, 0.19, 40e-6, 150);
  private final ModulusTruth truth =
      new ModulusTruth(
          cylinder, ModulusTruth.cycles(cylinder, 3, 0.42, 0.25, 4), List.of(5.25 * 25.4 * 2, 1e6));

  @TempDir Path folder;
  private LabFolder lab;
  private Register register;

  @BeforeEach
  void makeLab() throws Exception {
    lab =
        LabFolder.create(
            folder.resolve("lab"),
            LabTemplate.example("Weir", ZoneOffset.UTC, UnitSystem.SI)
                .withRigs(Map.of("frame-modulus", RIG))
                .withSpecimens(SPECIMENS)
                .withFile("calibrations/all.toml", CERTIFICATE));
    PrivateKeys keys = new PrivateKeys(folder.resolve("keys"));
    register = Register.open(lab, "frame-modulus", keys, SystemClocks.wall());
  }

  private Summary record() throws Exception {
    EmulatedClock clock = new EmulatedClock(START);
    List<Iterator<TimedBytes>> streams = new ArrayList<>();
    for (BeamDevice device :
        List.of(
            BeamDevice.load(50, 20, 10),
            BeamDevice.gauge(0, 20, 0.0001, 0.0001).delayed(20_000_000),
            BeamDevice.strain(1, 10, 0.3, 0.1))) {
      streams.add(new BeamReadings(truth, device, 7).bytes());
    }
    ClockedPorts bench = new ClockedPorts(clock, streams);
    bench.holdAt(2_500_000_000L);
    List<Port> ports = bench.ports(PORTS);
    try (LabTest test =
        LabTest.open(
            lab,
            "frame-modulus",
            "NA-28-4",
            "modulus-c469",
            (address, settings) -> () -> ports.get(PORTS.indexOf(address)),
            new RecorderClocks(clock, clock, SystemClocks.monotonic()))) {
      List<ChecklistItem> checklist = test.check(false, Optional.empty(), PATIENCE);
      assertThat(LabTest.mayStart(checklist)).as("%s", checklist).isTrue();
      Recording recording =
          test.start(
              checklist,
              Optional.empty(),
              Optional.of("tester"),
              Optional.of(PATIENCE),
              "test",
              progress -> {});
      // nobody stops it: the method has to end it by itself
      bench.release(() -> {});
      RecordedTest recorded = recording.await();
      assertThat(recorded.failure()).isEmpty();
      return new TestClose(lab, register)
          .close(test.method(), recorded, Observations.NONE)
          .summary();
    }
  }

  @Test
  void record_threeCycles_closesItselfAndEveryFigureFollowsFromTheRawFile() throws Exception {
    Summary summary = record();
    assertThat(summary.closing().reason()).isEqualTo(CloseReason.COMPLETE);
    Figure modulus = summary.result().figure("modulus").orElseThrow();
    double real = cylinder.chordMegapascals(50e-6, 0.4);
    assertThat(modulus.exact()).isCloseTo(real, within(0.01 * real));
    assertThat(Double.parseDouble(modulus.rounded()) % 200).isZero();
    Figure poisson = summary.result().figure("poisson").orElseThrow();
    assertThat(poisson.exact()).isCloseTo(0.19, within(0.004));
    Path raw = lab.records().get(0);
    SummaryCheck check = SummaryCheck.of(raw);
    assertThat(check.rowDifferences()).isEmpty();
    assertThat(check.versions()).singleElement().matches(v -> v.differences().isEmpty());
    assertThat(check.isEqual()).isTrue();
    String page = TestReport.of(new ReportSetting(lab, folder, "test", START), raw).xhtml();
    assertThat(page)
        .contains("NA-28-4: stress over strain", "chord of cycle 1 (seating)", "chord of cycle 3")
        .contains("<p class=\"label\">Modulus of elasticity, mean of 2 cycles after the first</p>")
        .contains("NA-28-4: load over time");
    Audit.Settings settings =
        new Audit.Settings(Scope.ARCHIVE, 1, Set.of(), List.of(), "test", START);
    assertThat(Audit.of(lab, settings, (read, of) -> {}).findings()).isEmpty();
  }

  @Test
  void summary_ofAModulus_fitsThePublishedSchemaAndNamesTheCompanions() throws Exception {
    record();
    Path file = LabFolder.summaryOf(lab.records().get(0));
    JsonNode summary = new ObjectMapper().readTree(Files.readString(file));
    try (InputStream schema =
        ModulusRecordTest.class.getResourceAsStream("/schema/summary-1.schema.json")) {
      assertThat(
              JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012)
                  .getSchema(schema)
                  .validate(summary))
          .isEmpty();
    }
    assertThat(summary.at("/specimen/companion_strength_mpa").asDouble()).isEqualTo(32);
    assertThat(summary.at("/specimen/companion_strength_psi").asDouble())
        .isCloseTo(4641.2, within(0.1));
    assertThat(summary.at("/raw/reason").asText()).isEqualTo("complete");
    assertThat(summary.at("/channels/2/unit").asText()).isEqualTo("µm/m");
  }

  @Test
  void explain_modulus_tellsMarksChordsAndMean() throws Exception {
    Summary summary = record();
    Path raw = lab.records().get(0);
    Explanation explanation = Explanation.of(raw, LabFolder.newestSummaryOf(raw), UnitSystem.SI);
    String text = String.join("\n", explanation.figure("modulus").orElseThrow());
    List<Long> rows = summary.result().figure("modulus-cycle-2").orElseThrow().rows();
    assertThat(text)
        .contains("By ASTM C469/C469M")
        .contains("between rows " + rows.get(1) + " and " + rows.get(0))
        .contains("Chord of cycle 2: (S2 - S1)")
        .contains("Chord of cycle 3: (S2 - S1)")
        .doesNotContain("Chord of cycle 1")
        .contains("Mean of the 2 cycles after the first")
        .contains("modulus-mpa = 200.0");
    assertThat(String.join("\n", explanation.figure("poisson-cycle-1").orElseThrow()))
        .contains("Poisson's ratio of cycle 1: widening over shortening");
  }
}
