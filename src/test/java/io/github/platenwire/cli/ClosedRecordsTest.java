package io.github.platenwire.cli;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.platenwire.emulate.DemoScenario;
import io.github.platenwire.emulate.DemoSpecimen;
import io.github.platenwire.emulate.EmulatedIndicator;
import io.github.platenwire.emulate.Faults;
import io.github.platenwire.explain.Explanation;
import io.github.platenwire.lab.LabFolder;
import io.github.platenwire.lab.LabTemplate;
import io.github.platenwire.lab.PrivateKeys;
import io.github.platenwire.lab.Register;
import io.github.platenwire.lab.RegisterCheck;
import io.github.platenwire.lab.RegisterLine;
import io.github.platenwire.quantity.UnitSystem;
import io.github.platenwire.reading.Quality;
import io.github.platenwire.reading.SystemClocks;
import io.github.platenwire.record.Digests;
import io.github.platenwire.record.DiskFolder;
import io.github.platenwire.record.RawFileReader;
import io.github.platenwire.record.RawRow;
import io.github.platenwire.recorder.LabRecovery;
import io.github.platenwire.recorder.SummaryCheck;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Records made by the demo's own path, and what can be done with them afterwards. */
@Timeout(300)
class ClosedRecordsTest {
  private static final String RIG = "frame-1";
  private static final ZoneId ZONE = ZoneId.of("Europe/Vienna");
  private static final Instant START = Instant.parse("2026-11-25T07:00:00Z");

  @TempDir Path folder;
  private PrivateKeys keys;

  @BeforeEach
  void keepKeysAside() {
    keys = new PrivateKeys(folder.resolve("keys"));
  }

  private static EmulatedIndicator faulty() {
    return DemoTest.indicator().withFaults(new Faults(0.002, 0.01, 0.01, 0.01, 0.0002, 1.5));
  }

  /** A lab with some of a seed's specimens broken. */
  private LabFolder lab(long seed, int specimens, EmulatedIndicator indicator) throws Exception {
    DemoScenario scenario = new DemoScenario(START, ZONE, seed);
    Path root = folder.resolve("lab-" + seed);
    try (DemoBench bench = DemoBench.fast(START)) {
      LabTemplate template =
          LabTemplate.example("Alder Weir demo lab", ZONE, UnitSystem.SI)
              .withRigs(Map.of(RIG, scenario.rigText(RIG, bench.port(), DemoTest.DEVICE)))
              .withSpecimens(scenario.specimensText())
              .withStudy(scenario.studyText())
              .withFile(
                  "calibrations/" + DemoScenario.CALIBRATION_NAME + ".toml",
                  scenario.calibrationText());
      LabFolder lab = LabFolder.create(root, template);
      Register register = Register.open(lab, RIG, keys, SystemClocks.wall());
      for (DemoSpecimen specimen : scenario.today().subList(0, specimens)) {
        new DemoTest(
                lab,
                register,
                scenario,
                specimen,
                Face.standard(UnitSystem.SI),
                /* watched= */ false)
            .run(bench, indicator);
      }
      return lab;
    }
  }

  private static List<RawRow> rows(Path raw) throws Exception {
    List<RawRow> rows = new ArrayList<>();
    try (RawFileReader reader = RawFileReader.open(raw)) {
      reader.readRows(rows::add);
    }
    return rows;
  }

  @Test
  void reduce_demoRecordsOfSeveralSeeds_isEqualDoubleForDouble() throws Exception {
    for (long seed = 1; seed <= 4; seed++) {
      for (Path raw : lab(seed, 1, DemoTest.indicator()).records()) {
        assertEqual(raw);
      }
    }
  }

  @Test
  void reduce_demoRecordsWithFaults_isEqualDoubleForDouble() throws Exception {
    int marked = 0;
    for (long seed = 11; seed <= 16; seed++) {
      for (Path raw : lab(seed, 1, faulty()).records()) {
        assertEqual(raw);
        marked += (int) rows(raw).stream().filter(row -> row.quality() != Quality.OK).count();
      }
    }
    assertThat(marked).isGreaterThan(100);
  }

  private static void assertEqual(Path raw) throws Exception {
    SummaryCheck check = SummaryCheck.of(raw);
    assertThat(check.rowDifferences()).isEmpty();
    assertThat(check.versions()).hasSize(1);
    assertThat(check.versions().get(0).differences()).isEmpty();
    assertThat(check.isEqual()).isTrue();
  }

  @Test
  void reduce_summaryChangedInOneDigit_namesPlaceAndBothValues() throws Exception {
    Path raw = lab(1, 1, DemoTest.indicator()).records().get(0);
    Path summary = LabFolder.summaryOf(raw);
    String text = Files.readString(summary);
    int value = text.indexOf("\"value\" : ", text.indexOf("\"strength\"")) + 10;
    char digit = text.charAt(value + 6);
    String changed =
        text.substring(0, value + 6) + (digit == '9' ? '8' : '9') + text.substring(value + 7);
    Files.writeString(summary, changed);
    SummaryCheck check = SummaryCheck.of(raw);
    assertThat(check.isEqual()).isFalse();
    assertThat(check.versions().get(0).differences())
        .singleElement()
        .satisfies(
            difference -> {
              assertThat(difference.where()).isEqualTo("results/strength/value");
              assertThat(difference.computed()).isEqualTo(number(text, value));
              assertThat(difference.closed()).isEqualTo(number(changed, value));
            });
    assertThat(execute("reduce", raw.toString())).isEqualTo(ExitCode.NOT_MET);
    Files.writeString(summary, text);
    assertThat(execute("reduce", raw.toString())).isEqualTo(ExitCode.FINE);
  }

  /** The number that begins at a place, as a double writes itself. */
  private static String number(String text, int at) {
    return Double.toString(Double.parseDouble(text.substring(at, text.indexOf(',', at))));
  }

  /** What a client holds: the raw file alone, in no lab folder; and one that was never closed. */
  @Test
  void explain_rawFileAlone_tellsTheSameAndWarnsOfOneThatWasNeverClosed() throws Exception {
    Path raw = lab(5, 1, DemoTest.indicator()).records().get(0);
    Path alone = Files.createDirectory(folder.resolve("alone")).resolve("a.raw.csv");
    Files.copy(raw, alone);
    Ran whole = Ran.of("explain", alone, "strength");
    assertThat(whole.exitCode()).as(whole.err()).isZero();
    assertThat(whole.out()).contains("P / A = ", " on").doesNotContain("CAUTION");
    byte[] bytes = Files.readAllBytes(raw);
    Files.write(alone, Arrays.copyOf(bytes, bytes.length / 2));
    Ran torn = Ran.of("explain", alone, "strength");
    assertThat(torn.exitCode()).isZero();
    assertThat(torn.out()).startsWith("CAUTION: this record was never closed; it ends after row ");
    Ran correct =
        Ran.of("reduce", alone, "--correct", "length_mm=200", "--who", "M. K.", "--why", "test");
    assertThat(correct.exitCode()).isEqualTo(ExitCode.USAGE);
    assertThat(correct.err()).contains("lies in no lab folder");
    Ran missing = Ran.of("explain", folder.resolve("alone/b.raw.csv"));
    assertThat(missing.exitCode()).isEqualTo(ExitCode.USAGE);
    assertThat(missing.err()).contains("there is no file", "b.raw.csv");
  }

  @Test
  void register_threeTests_holdsAndEachSummaryHasTheWitnessBefore() throws Exception {
    LabFolder lab = lab(2, 3, DemoTest.indicator());
    RegisterCheck check = RegisterCheck.of(lab, RIG);
    assertThat(check.findings()).isEmpty();
    assertThat(check.lines()).hasSize(3);
    String before = "0".repeat(16);
    for (int i = 0; i < 3; i++) {
      Path raw = lab.records().get(i);
      Path summary = LabFolder.summaryOf(raw);
      RegisterLine line = check.lines().get(i);
      assertThat(raw).hasFileName(line.test() + ".raw.csv");
      assertThat(line.rawSha256()).isEqualTo(Digests.sha256Hex(Files.readAllBytes(raw)));
      assertThat(line.summarySha256()).isEqualTo(Digests.sha256Hex(Files.readAllBytes(summary)));
      assertThat(Files.readString(summary)).contains("\"witness_before\" : \"" + before + "\"");
      before = line.witness();
    }
  }

  @Test
  void correct_diameter_isANewVersionBesideTheOld() throws Exception {
    LabFolder lab = lab(3, 1, DemoTest.indicator());
    Path raw = lab.records().get(0);
    byte[] old = Files.readAllBytes(LabFolder.summaryOf(raw));
    byte[] rawBytes = Files.readAllBytes(raw);
    String[] command = {
      "reduce",
      raw.toString(),
      "--correct",
      "diameter_1_mm=101.25",
      "--keys",
      keys.folder().toString()
    };
    assertThat(execute(command)).as("no who and why").isEqualTo(ExitCode.USAGE);
    assertThat(execute(with(command, "--who", "M. K.", "--why", "misread")))
        .isEqualTo(ExitCode.FINE);
    assertThat(LabFolder.summaryOf(raw)).hasBinaryContent(old);
    assertThat(raw).hasBinaryContent(rawBytes);
    Path second = LabFolder.newestSummaryOf(raw).orElseThrow();
    assertThat(second.getFileName().toString()).endsWith(".summary-2.json");
    assertThat(Files.readString(second))
        .contains("\"who\" : \"M. K.\"", "\"why\" : \"misread\"", "diameter_1_mm", "101.25")
        .contains(Digests.sha256Hex(old));
    assertThat(SummaryCheck.of(raw).isEqual()).isTrue();
    command[3] = "length_mm=201.5";
    assertThat(execute(with(command, "--who", "M. K.", "--why", "again"))).isEqualTo(ExitCode.FINE);
    SummaryCheck check = SummaryCheck.of(raw);
    assertThat(check.versions()).hasSize(3);
    assertThat(check.isEqual()).isTrue();
    RegisterCheck register = RegisterCheck.of(lab, RIG);
    assertThat(register.findings()).isEmpty();
    assertThat(register.lines())
        .extracting(RegisterLine::kind)
        .containsExactly(
            RegisterLine.Kind.CLOSE, RegisterLine.Kind.CORRECTION, RegisterLine.Kind.CORRECTION);
  }

  @Test
  void correct_whatCannotBe_isRefusedAndWritesNothing() throws Exception {
    Path raw = lab(3, 1, DemoTest.indicator()).records().get(0);
    for (String wrong :
        List.of("width_mm=3", "diameter_3_mm=100", "length_mm=-1", "length_mm=10")) {
      assertThat(
              execute(
                  "reduce",
                  raw.toString(),
                  "--correct",
                  wrong,
                  "--who",
                  "x",
                  "--why",
                  "y",
                  "--keys",
                  keys.folder().toString()))
          .as(wrong)
          .isEqualTo(ExitCode.USAGE);
    }
    assertThat(LabFolder.summariesOf(raw)).hasSize(1);
  }

  @Test
  void explain_strength_namesTheVeryRowOfThePeak() throws Exception {
    Path raw = lab(4, 1, DemoTest.indicator()).records().get(0);
    List<RawRow> rows = rows(raw);
    RawRow greatest = null;
    for (RawRow row : rows) {
      boolean usable = !row.isEvent() && row.quality() == Quality.OK;
      if (usable && (greatest == null || row.value() > greatest.value())) {
        greatest = row;
      }
    }
    assertThat(greatest).isNotNull();
    Explanation explanation = Explanation.of(raw, LabFolder.newestSummaryOf(raw), UnitSystem.SI);
    String text = String.join("\n", explanation.figure("strength").orElseThrow());
    assertThat(text)
        .contains("row " + greatest.seq() + " (line " + greatest.line() + " of the file)")
        .contains(io.github.platenwire.reading.EscapedBytes.encode(greatest.received()))
        .containsPattern("> row " + greatest.seq() + " ")
        .contains("Decoded", "Calibrated", "Zero", "Measured", "Stress", "Rounding")
        .contains("ASTM C39/C39M, section", "MPa", "psi", "kN", "lbf", "strength-mpa = 0.1");
    assertThat(Files.readAllLines(raw).get((int) greatest.line() - 1))
        .startsWith(greatest.seq() + ",");
    for (String name : explanation.names()) {
      assertThat(explanation.figure(name).orElseThrow()).as(name).hasSizeGreaterThan(3);
    }
    assertThat(explanation.figure("none")).isEmpty();
    assertThat(execute("explain", raw.toString())).isEqualTo(ExitCode.FINE);
    assertThat(execute("explain", raw.toString(), "none")).isEqualTo(ExitCode.USAGE);
  }

  @Test
  void recover_summaryAndLineMissing_makesBothFromTheRawFile() throws Exception {
    LabFolder lab = lab(5, 2, DemoTest.indicator());
    Path raw = lab.records().get(1);
    Path register = Register.file(lab, RIG);
    String closed = Files.readString(LabFolder.summaryOf(raw));
    Files.writeString(register, Files.readAllLines(register).get(0) + "\n");
    Files.delete(LabFolder.summaryOf(raw));
    assertThat(recovery(lab).halfDone()).containsExactly(raw);
    assertThat(recovery(lab).all()).singleElement().matches(LabRecovery.Report::done);
    assertEqual(raw);
    assertThat(Files.readString(LabFolder.summaryOf(raw)))
        .as("all but what the operator saw, which no raw file holds")
        .isEqualTo(
            closed
                .replace("\"made_by\" : \"close\"", "\"made_by\" : \"recover\"")
                .replaceAll(
                    "(\"(?:fracture_type|fracture_words|aggregate)\" : )\"[^\"]*\"", "$1null"));
    assertThat(recovery(lab).halfDone()).isEmpty();
    RegisterCheck check = RegisterCheck.of(lab, RIG);
    assertThat(check.findings()).isEmpty();
    assertThat(check.lines().get(1).kind()).isEqualTo(RegisterLine.Kind.RECOVERED);
  }

  @Test
  void recover_unregisteredSummaryThatDoesNotFollow_isNotSigned() throws Exception {
    LabFolder lab = lab(6, 1, DemoTest.indicator());
    Path raw = lab.records().get(0);
    Files.delete(Register.file(lab, RIG));
    Path summary = LabFolder.summaryOf(raw);
    String good = Files.readString(summary);
    Files.writeString(summary, good.replaceFirst("\"met\" : true", "\"met\" : false"));
    assertThat(recovery(lab).all())
        .singleElement()
        .matches(report -> !report.done() && report.words().contains("not signed"));
    assertThat(RegisterCheck.of(lab, RIG).lines()).isEmpty();
    Files.writeString(summary, good);
    assertThat(recovery(lab).all()).singleElement().matches(LabRecovery.Report::done);
    assertThat(RegisterCheck.of(lab, RIG).lines()).hasSize(1);
  }

  @Test
  void recover_rawCutInMidTest_isClosedMarkedAndRegistered() throws Exception {
    LabFolder lab = lab(7, 1, faulty());
    Path raw = lab.records().get(0);
    Files.delete(LabFolder.summaryOf(raw));
    Files.delete(Register.file(lab, RIG));
    byte[] whole = Files.readAllBytes(raw);
    Files.write(raw, java.util.Arrays.copyOf(whole, whole.length * 2 / 3 + 5));
    assertThat(
            execute("recover", "--lab", lab.root().toString(), "--keys", keys.folder().toString()))
        .isEqualTo(ExitCode.FINE);
    assertEqual(raw);
    assertThat(Files.readString(LabFolder.summaryOf(raw)))
        .contains("\"made_by\" : \"recover\"", "interrupted and closed afterwards")
        .contains("\"reason\" : \"interrupted\"");
    assertThat(RegisterCheck.of(lab, RIG).findings()).isEmpty();
    assertThat(RegisterCheck.of(lab, RIG).lines()).hasSize(1);
  }

  private LabRecovery recovery(LabFolder lab) {
    return new LabRecovery(lab, keys, SystemClocks.wall(), new DiskFolder(), Set.of());
  }

  private static String[] with(String[] command, String... more) {
    List<String> all = new ArrayList<>(List.of(command));
    all.addAll(List.of(more));
    return all.toArray(String[]::new);
  }

  private static int execute(String... command) {
    return Platenwire.commandLine().execute(command);
  }
}
