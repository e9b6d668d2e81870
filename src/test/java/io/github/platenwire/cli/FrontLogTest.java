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
import io.github.platenwire.record.RawFileReader;
import io.github.platenwire.record.RawRow;
import io.github.platenwire.recorder.SummaryCheck;
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

  private Program record(Object... more) throws Exception {
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
    return Program.start(args.toArray());
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
    try (Program program = record()) {
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
    try (Program program = record("--operator", "Technician")) {
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
    try (Program program = record("--entries", table)) {
      assertThat(program.awaitExit()).as(program.err()).isZero();
    }
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
    try (Program program = record()) {
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
    Program recover = Program.run("recover", "--lab", lab, "--keys", keys);
    assertThat(recover.awaitExit()).as(recover.err()).isZero();
    assertThat(SummaryCheck.of(TestLab.only(lab, ".raw.csv")).isEqual()).isTrue();
  }

  @Test
  void record_tableOfDepths_isTakenInAndKeptBesideTheRecord() throws Exception {
    String text = "time_min;depth_mm\n0;0\n30;10,5\n60;14,6\n120;20,9\n240;29,8\n360;36,1\n";
    Path table = Files.writeString(folder.resolve("depths.csv"), text);
    JsonNode summary;
    try (Program program = record("--entries", table)) {
      assertThat(program.awaitExit()).as(program.err()).isZero();
      summary = JSON.readTree(program.out());
    }
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
    Program draw = Program.run("chart", raw, "--out", chart);
    assertThat(draw.awaitExit()).as(draw.err()).isZero();
    assertThat(Files.readString(chart)).contains("readings that count", "line in the root of time");
    assertThat(schema().validate(summary)).isEmpty();
  }

  @Test
  void record_wrongTable_saysWhereAndRecordsNothing() throws Exception {
    Path table = Files.writeString(folder.resolve("depths.csv"), "time_min,depth_mm\n0,deep\n");
    try (Program program = record("--entries", table)) {
      assertThat(program.awaitExit()).isEqualTo(2);
      assertThat(program.err()).contains("depths.csv, row 2, column depth_mm");
    }
    try (var files = Files.walk(lab.resolve("records"))) {
      assertThat(files.filter(file -> file.toString().endsWith(".raw.csv"))).isEmpty();
    }
  }

  @Test
  void observe_closedRecord_addsASignedVersionAndKeepsThePhotograph() throws Exception {
    Path table = Files.writeString(folder.resolve("d.csv"), "time_min,depth_mm\n0,0\n9,9\n18,18\n");
    try (Program program = record("--entries", table)) {
      assertThat(program.awaitExit()).as(program.err()).isZero();
    }
    Path raw = TestLab.only(lab, ".raw.csv");
    Path first = TestLab.only(lab, ".summary.json");
    byte[] before = Files.readAllBytes(first);
    Path photo = Files.write(folder.resolve("Front 1.JPG"), new byte[] {1, 2, 3});
    Program observe =
        Program.run(
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
    assertThat(observe.awaitExit()).as(observe.err()).isZero();
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
    Program audit = Program.run("audit", "--lab", lab, "--json", "--fail-on", "fault");
    assertThat(audit.awaitExit()).as(audit.out()).isZero();
    assertThat(JSON.readTree(audit.out()).path("findings"))
        .as("what is true of a scale without a certificate, and nothing else")
        .allMatch(finding -> finding.path("check").asText().startsWith("calibration"));
  }

  @Test
  void observe_nothingOrNonsense_exits2AndWritesNothing() throws Exception {
    Program nothing = Program.run("observe", "X", "--lab", lab, "--by", "Technician");
    assertThat(nothing.awaitExit()).isEqualTo(2);
    assertThat(nothing.err()).contains("nothing to add");
    Program nonsense =
        Program.run("observe", "X", "--lab", lab, "--by", "T", "--aggregate", "over");
    assertThat(nonsense.awaitExit()).isEqualTo(2);
    assertThat(nonsense.err()).contains("through, around, mixed, not-seen");
  }
}
