package io.github.platenwire.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import io.github.platenwire.audit.Audit;
import io.github.platenwire.audit.Finding;
import io.github.platenwire.audit.Scope;
import io.github.platenwire.audit.Severity;
import io.github.platenwire.chart.FrontTrace;
import io.github.platenwire.lab.LabFolder;
import io.github.platenwire.lab.LabTemplate;
import io.github.platenwire.lab.RegisterCheck;
import io.github.platenwire.method.FrontPart;
import io.github.platenwire.quantity.UnitSystem;
import io.github.platenwire.reading.SystemClocks;
import io.github.platenwire.record.Digests;
import io.github.platenwire.record.RawFileReader;
import io.github.platenwire.record.RawRow;
import io.github.platenwire.recorder.SummaryCheck;
import io.github.platenwire.report.ReportSetting;
import io.github.platenwire.report.TestReport;
import java.io.InputStream;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Logs of typed readings, and what is added to closed records, by the program itself. */
@Timeout(180)
class FrontLogTest {
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final String CERTIFICATE =
      """
      format = "platenwire-calibration 1"
      name = "scale"
      certificate = "C-1"
      laboratory = "invented"
      date = 2026-01-15
      due = 2126-01-15
      class = "1"
      expanded-uncertainty-percent = 0.5
      """;

  @TempDir Path folder;
  private Path lab;
  private Path keys;

  @BeforeEach
  void makeLab() throws Exception {
    String rig = Files.readString(Path.of("config/rigs/log-typed.toml"));
    String specimens = "specimen,series,shape,diameter_1_mm\nNA-F-1,NA-F,disc,100.0\n";
    LabTemplate template =
        LabTemplate.example("Test lab", ZoneOffset.UTC, UnitSystem.SI)
            .withRigs(Map.of("log-typed", rig))
            .withSpecimens(specimens);
    lab = LabFolder.create(folder.resolve("lab"), template).root();
    keys = folder.resolve("keys");
  }

  private Program recordTyped(Object... more) throws Exception {
    return Program.start(words(more));
  }

  /** With everything in a table: nobody has to type. */
  private Ran record(String option, Path table) {
    return Ran.of(words(option, table));
  }

  private Object[] words(Object... more) {
    List<Object> args =
        new ArrayList<>(
            List.of(
                "record",
                "NA-F-1",
                "--lab",
                lab,
                "--keys",
                keys,
                "--method",
                "front-advance",
                "--unattended",
                "--json"));
    args.addAll(List.of(more));
    return args.toArray();
  }

  private static JsonNode result(JsonNode summary, String name) {
    for (JsonNode one : summary.path("results")) {
      if (one.path("name").asText().equals(name)) {
        return one;
      }
    }
    throw new AssertionError(name + " is not in " + summary.path("results"));
  }

  private static JsonSchema schema() throws Exception {
    try (InputStream in = FrontLogTest.class.getResourceAsStream("/schema/summary-1.schema.json")) {
      return JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012).getSchema(in);
    }
  }

  @Test
  void record_typedEntriesWithACorrection_keepsEachLineAndComputesAgainAlike() throws Exception {
    JsonNode summary;
    try (Program program = recordTyped()) {
      program.awaitLine(text -> text.startsWith("Type what you read"));
      try (Writer typed = program.process().outputWriter(StandardCharsets.UTF_8)) {
        typed.write("0\n10 after 10 min\n200 after 20 min\nnot a number\n20 for 4\n");
        typed.write("note the tank was topped up\n30 after 30 min\nend\n");
      }
      assertThat(program.awaitExit()).as(program.err()).isZero();
      assertThat(program.err()).contains("'not a number' is no entry");
      summary = JSON.readTree(program.out());
    }
    assertThat(result(summary, "rate-in-time").path("value").asDouble()).isEqualTo(1.0);
    assertThat(result(summary, "readings").path("value").asInt()).isEqualTo(4);
    assertThat(summary.path("raw").path("reason").asText()).isEqualTo("operator");
    assertThat(schema().validate(summary)).isEmpty();
    Path raw = TestLab.only(lab, ".raw.csv");
    assertThat(received(raw))
        .containsExactly(
            "start",
            ">0 mm;",
            ">10 mm; after 600 s",
            ">200 mm; after 1200 s",
            ">20 mm; for 4",
            ">30 mm; after 1800 s",
            "note the tank was topped up",
            "stop operator");
    assertThat(SummaryCheck.of(raw).isEqual()).isTrue();
    assertThat(audit())
        .filteredOn(finding -> finding.check().id().startsWith("entry"))
        .singleElement()
        .satisfies(
            finding -> {
              assertThat(finding.check().id()).isEqualTo("entry-corrected");
              assertThat(finding.severity()).isEqualTo(Severity.NOTE);
              assertThat(finding.expected()).contains("entry 4 as it was: 200.0 mm at 2");
              assertThat(finding.seen()).contains("20.0 mm at 2", ", by entry 5, typed at 2");
              assertThat(finding.seen()).endsWith("by somebody who is not named");
              assertThat(line(raw, finding.location().line().orElseThrow())).contains("for 4");
            });
  }

  private static String line(Path raw, long number) throws Exception {
    return Files.readAllLines(raw).get((int) number - 1);
  }

  private List<Finding> audit() throws Exception {
    Audit.Settings settings =
        new Audit.Settings(
            Scope.ARCHIVE, 1, Set.of(), List.of(), "test", SystemClocks.wall().now());
    return Audit.of(LabFolder.open(lab), settings, (read, of) -> {}).findings();
  }

  private static String clock(Instant now, int minutesBefore) {
    return now.minus(Duration.ofMinutes(minutesBefore))
        .atOffset(ZoneOffset.UTC)
        .format(DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm"));
  }

  @Test
  void audit_entriesOutOfOrderAndTypedLongAfter_areStatedWithTheirRows() throws Exception {
    Instant now = SystemClocks.wall().now();
    try (Program program = recordTyped("--operator", "Technician")) {
      program.awaitLine(text -> text.startsWith("Type what you read"));
      try (Writer typed = program.process().outputWriter(StandardCharsets.UTF_8)) {
        typed.write("0 at " + clock(now, 200) + "\n5 at " + clock(now, 100) + "\n");
        typed.write("4 at " + clock(now, 150) + "\n6 at " + clock(now, 20) + "\n");
        typed.write("6.5\n6.1 at " + clock(now, 190) + " for 5\nend\n");
      }
      assertThat(program.awaitExit()).as(program.err()).isZero();
    }
    Path raw = TestLab.only(lab, ".raw.csv");
    List<Finding> entries =
        audit().stream().filter(f -> f.check().id().startsWith("entry")).toList();
    assertThat(entries)
        .extracting(
            finding ->
                finding.check().id()
                    + " "
                    + line(raw, finding.location().line().orElseThrow()).replaceFirst(",.*", ""))
        .containsExactlyInAnyOrder(
            "entry-typed-late 2",
            "entry-typed-late 3",
            "entry-typed-late 4",
            "entry-time-backward 4",
            "entry-corrected 7",
            "entry-time-backward 7");
    assertThat(entries).anyMatch(finding -> finding.seen().endsWith(" by Technician"));
  }

  /** A scale with a certificate, and a table in order: there is nothing to be said of it. */
  @Test
  void audit_cleanLogWithACertificate_findsNothing() throws Exception {
    Path rig = lab.resolve("rigs/log-typed.toml");
    Files.writeString(rig, Files.readString(rig) + "calibration = \"scale\"\n");
    Files.createDirectories(lab.resolve("calibrations"));
    Files.writeString(lab.resolve("calibrations/scale.toml"), CERTIFICATE);
    Path table = Files.writeString(folder.resolve("d.csv"), "time_min,depth_mm\n0,0\n9,9\n18,17\n");
    Ran program = record("--entries", table);
    assertThat(program.exitCode()).as(program.err()).isZero();
    assertThat(audit()).isEmpty();
  }

  private static List<String> received(Path raw) throws Exception {
    List<String> received = new ArrayList<>();
    List<String> notes = new ArrayList<>();
    try (RawFileReader reader = RawFileReader.open(raw)) {
      reader.readRows(
          (RawRow row) -> {
            String text = new String(row.received(), StandardCharsets.UTF_8);
            (text.startsWith("note ") ? notes : received).add(text);
          });
    }
    received.addAll(received.size() - 1, notes);
    return received;
  }

  @Test
  void record_killedInALog_hasEveryEntryThatItShowed() throws Exception {
    try (Program program = recordTyped()) {
      program.awaitLine(text -> text.startsWith("Type what you read"));
      try (Writer typed = program.process().outputWriter(StandardCharsets.UTF_8)) {
        typed.write("0\n12.5 after 10 min\n");
        typed.flush();
        program.awaitLine(text -> text.contains("00:10:00") && text.contains("12.50 mm"));
        program.process().destroyForcibly();
        program.awaitExit();
      }
    }
    List<String> rows = received(TestLab.only(lab, ".raw.csv"));
    assertThat(rows).contains(">0 mm;", ">12.5 mm; after 600 s");
    Ran recover = Ran.of("recover", "--lab", lab, "--keys", keys);
    assertThat(recover.exitCode()).as(recover.err()).isZero();
    assertThat(SummaryCheck.of(TestLab.only(lab, ".raw.csv")).isEqual()).isTrue();
  }

  @Test
  void record_tableOfDepths_isTakenInAndKeptBesideTheRecord() throws Exception {
    String text = "time_min;depth_mm\n0;0\n30;10,5\n60;14,6\n120;20,9\n240;29,8\n360;36,1\n";
    Path table = Files.writeString(folder.resolve("depths.csv"), text);
    JsonNode summary;
    Ran program = record("--entries", table);
    assertThat(program.exitCode()).as(program.err()).isZero();
    summary = JSON.readTree(program.out());
    assertThat(result(summary, "readings").path("value").asInt()).isEqualTo(6);
    assertThat(summary.path("checks").get(0).path("words").asText()).contains("root of time");
    JsonNode enclosure = summary.path("observations").path("enclosures").get(0);
    assertThat(enclosure.path("came_from").asText()).isEqualTo("depths.csv");
    Path kept = TestLab.only(lab, ".enclosure-1.csv");
    assertThat(Files.readString(kept)).isEqualTo(text);
    Path raw = TestLab.only(lab, ".raw.csv");
    FrontTrace trace = FrontTrace.read(raw).orElseThrow();
    assertThat(trace.front().readings())
        .extracting(FrontPart.Reading::seconds)
        .containsExactly(0.0, 1800.0, 3600.0, 7200.0, 14400.0, 21600.0);
    Path chart = folder.resolve("front.svg");
    Ran draw = Ran.of("chart", raw, "--out", chart);
    assertThat(draw.exitCode()).as(draw.err()).isZero();
    assertThat(Files.readString(chart)).contains("readings that count", "line in the root of time");
    assertThat(schema().validate(summary)).isEmpty();
    // 6 mm/√min by construction: 30.0 mm after (5 min^½)² = 25 min, so 25 mm after about 17 min
    String page =
        TestReport.of(
                new ReportSetting(
                    LabFolder.open(lab), folder, "test", Instant.parse("2026-11-28T12:00:00Z")),
                raw)
            .xhtml();
    assertThat(page)
        .contains("NA-F-1: depth of the front over time", "line in the root of time")
        .contains("The front advances in proportion to the square root of time (residual")
        .containsPattern(
            "The front reaches 25\\.0 mm \\(0\\.984 in\\.\\) after 17[0-9]\\.[0-9]+ min")
        .contains("<p class=\"label\">Advance along the line in the root of time</p>")
        .contains(
            "36.10 mm (1.421 in)",
            "depths.csv",
            Digests.sha256Hex(text.getBytes(StandardCharsets.UTF_8)))
        .doesNotContain("Load over time");
  }

  /** 0.0012 mm/√s on 7854 mm²: 9.4248e-3 g/√s. */
  @Test
  void report_absorption_drawsItOverTheRootOfTimeWithItsRates() throws Exception {
    String rig =
        Files.readString(Path.of("config/rigs/log-typed.toml"))
            .replace("\"log-typed\"", "\"balance\"")
            .replace("\"length\"", "\"mass\"")
            .replace("\"mm\"", "\"g\"")
            .replace("typed-length", "typed-mass")
            .replace("[0, 1000]", "[0, 3000]");
    Files.writeString(lab.resolve("rigs").resolve("balance.toml"), rig);
    StringBuilder rows = new StringBuilder("time_min,mass_g\n0,900.00\n");
    for (int minutes : new int[] {1, 5, 10, 20, 30, 60, 120, 240, 360}) {
      double grams = 900 + Math.PI * 2500 * 0.0012 * Math.sqrt(minutes * 60.0) / 1000;
      rows.append(minutes).append(',').append(Math.round(grams * 1e4) / 1e4).append('\n');
    }
    Path table = Files.writeString(folder.resolve("masses.csv"), rows);
    Ran program =
        Ran.of(
            "record",
            "NA-F-1",
            "--lab",
            lab,
            "--keys",
            keys,
            "--rig",
            "balance",
            "--method",
            "absorption-c1585",
            "--unattended",
            "--entries",
            table);
    assertThat(program.exitCode()).as(program.err()).isZero();
    String page =
        TestReport.of(
                new ReportSetting(
                    LabFolder.open(lab), folder, "test", Instant.parse("2026-11-28T12:00:00Z")),
                TestLab.only(lab, ".raw.csv"))
            .xhtml();
    assertThat(page)
        .contains("NA-F-1: absorption over the root of time", "mass over time")
        .contains("initial absorption, 0.00120 mm/√s (0.0000472 in/√s)")
        .contains("<p class=\"label\">Rate of initial absorption</p>")
        .doesNotContain("secondary absorption, 0");
  }

  @Test
  void record_wrongTable_saysWhereAndRecordsNothing() throws Exception {
    Path table = Files.writeString(folder.resolve("depths.csv"), "time_min,depth_mm\n0,deep\n");
    Ran program = record("--entries", table);
    assertThat(program.exitCode()).isEqualTo(2);
    assertThat(program.err()).contains("depths.csv, row 2, column depth_mm");
    try (var files = Files.walk(lab.resolve("records"))) {
      assertThat(files.filter(file -> file.toString().endsWith(".raw.csv"))).isEmpty();
    }
  }

  @Test
  void observe_closedRecord_addsASignedVersionAndKeepsThePhotograph() throws Exception {
    Path table = Files.writeString(folder.resolve("d.csv"), "time_min,depth_mm\n0,0\n9,9\n18,18\n");
    Ran program = record("--entries", table);
    assertThat(program.exitCode()).as(program.err()).isZero();
    Path raw = TestLab.only(lab, ".raw.csv");
    Path first = TestLab.only(lab, ".summary.json");
    byte[] before = Files.readAllBytes(first);
    Path photo = Files.write(folder.resolve("Front 1.JPG"), new byte[] {1, 2, 3});
    Ran observe =
        Ran.of(
            "observe",
            raw,
            "--keys",
            keys,
            "--by",
            "Technician",
            "--voids",
            "one, 8 mm",
            "--note",
            "wet to the edge",
            "--photo",
            photo);
    assertThat(observe.exitCode()).as(observe.err()).isZero();
    JsonNode second = JSON.readTree(TestLab.only(lab, ".summary-2.json").toFile());
    assertThat(Files.readAllBytes(first)).isEqualTo(before);
    assertThat(second.path("made_by").asText()).isEqualTo("observe");
    assertThat(second.path("correction").path("who").asText()).isEqualTo("Technician");
    assertThat(second.path("observations").path("voids").asText()).isEqualTo("one, 8 mm");
    assertThat(second.path("observations").path("enclosures")).hasSize(2);
    assertThat(Files.readAllBytes(TestLab.only(lab, ".enclosure-2.jpg"))).containsExactly(1, 2, 3);
    assertThat(schema().validate(second)).isEmpty();
    assertThat(SummaryCheck.of(raw).isEqual()).isTrue();
    RegisterCheck check = RegisterCheck.of(LabFolder.open(lab), "log-typed");
    assertThat(check.findings()).isEmpty();
    assertThat(check.lines()).hasSize(2);
    assertThat(check.lines().get(1).kind().word()).isEqualTo("observation");
    Ran audit = Ran.of("audit", "--lab", lab, "--json", "--fail-on", "fault");
    assertThat(audit.exitCode()).as(audit.out()).isZero();
    assertThat(JSON.readTree(audit.out()).path("findings"))
        .as("what is true of a scale without a certificate, and nothing else")
        .allMatch(finding -> finding.path("check").asText().startsWith("calibration"));
  }

  @Test
  void observe_nothingOrNonsense_exits2AndWritesNothing() throws Exception {
    Ran nothing = Ran.of("observe", "X", "--lab", lab, "--by", "Technician");
    assertThat(nothing.exitCode()).isEqualTo(2);
    assertThat(nothing.err()).contains("nothing to add");
    Ran nonsense = Ran.of("observe", "X", "--lab", lab, "--by", "T", "--aggregate", "over");
    assertThat(nonsense.exitCode()).isEqualTo(2);
    assertThat(nonsense.err()).contains("through, around, mixed, not-seen");
  }
}
