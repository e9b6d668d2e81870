package io.github.platenwire.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assumptions.assumeThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import io.github.platenwire.emulate.PseudoTerminal;
import io.github.platenwire.record.CloseReason;
import io.github.platenwire.record.RawFileEnd;
import io.github.platenwire.record.RawFileReader;
import io.github.platenwire.record.RawRow;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

@Timeout(180)
@EnabledOnOs(OS.LINUX)
class RecordCommandTest {
  private static final Pattern SEQ = Pattern.compile("\\bseq (\\d+)");

  @TempDir Path folder;

  @Test
  void record_linesFromAnotherProgram_givesPeakStrengthAndRowsAsSent() throws Exception {
    List<Integer> sent = Feeder.cylinder(50_000, 700, 100);
    JsonNode summary;
    Path lab;
    try (PseudoTerminal line = PseudoTerminal.open()) {
      lab = TestLab.make(folder.resolve("lab"), line.path());
      try (Program program =
          Program.start("record", TestLab.SPECIMEN, "--lab", lab, "--unattended", "--json")) {
        program.awaitLine(text -> text.startsWith("Waiting for readings"));
        Feeder.feed(line, sent, 200);
        assertThat(program.awaitExit()).as(program.err()).isZero();
        summary = new ObjectMapper().readTree(program.out());
      }
    }
    // ASTM C39 (from memory): 50 000 lbf on 4 in is 3978.87 psi, printed to 10 psi.
    assertThat(result(summary, "strength").path("inch_pound").path("rounded").asText())
        .isEqualTo("3980");
    double peakPounds = pounds(result(summary, "peak-load"));
    double zeroPounds = pounds(result(summary, "zero"));
    assertThat(peakPounds + zeroPounds)
        .isCloseTo(Collections.max(sent), org.assertj.core.data.Offset.offset(1e-6));
    assertThat(summary.path("channels").get(0).path("readings").asInt()).isEqualTo(sent.size());
    assertThat(summary.path("raw").path("reason").asText()).isEqualTo("break");
    assertThat(valuesIn(TestLab.only(lab, ".raw.csv")))
        .isEqualTo(sent.stream().map(Integer::doubleValue).toList());
    assertThat(schema().validate(summary)).isEmpty();
    assertThat(new ObjectMapper().readTree(TestLab.only(lab, ".summary.json").toFile()))
        .isEqualTo(summary);
  }

  @Test
  void record_killedAtAnyMoment_hasEveryReadingThatItShowed() throws Exception {
    Random random = new Random(20261125);
    for (int kill = 0; kill < 4; kill++) {
      try (PseudoTerminal line = PseudoTerminal.open()) {
        Path lab = TestLab.make(folder.resolve("kill-" + kill), line.path());
        try (Program program =
            Program.start(
                "record",
                TestLab.SPECIMEN,
                "--lab",
                lab,
                "--unattended",
                "--lines-every",
                "0.01")) {
          Feeder.start(line, Feeder.cylinder(60_000, 20_000, 100), 500);
          program.awaitLine(text -> SEQ.matcher(text).find());
          LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(random.nextInt(700)));
          program.process().destroyForcibly();
          program.awaitExit();
          long shown = lastShown(program.outLines());
          assertThat(shown).isPositive();
          Path file = TestLab.only(lab, ".raw.csv");
          try (RawFileReader reader = RawFileReader.open(file)) {
            RawFileEnd end = reader.readRows(row -> {});
            assertThat(end.lastSeq()).isGreaterThanOrEqualTo(shown);
            assertThat(end.closing()).isEmpty();
            assertThat(end.wholeBytes() + end.tornBytes()).isEqualTo(Files.size(file));
          }
        }
      }
    }
  }

  @Test
  void record_interrupted_closesInOrderAndSaysSo() throws Exception {
    try (PseudoTerminal line = PseudoTerminal.open()) {
      Path lab = TestLab.make(folder.resolve("lab"), line.path());
      try (Program program =
          Program.start("record", TestLab.SPECIMEN, "--lab", lab, "--unattended")) {
        Feeder.start(line, Feeder.cylinder(60_000, 20_000, 100), 200);
        program.awaitLine(text -> text.contains("loading"));
        new ProcessBuilder("kill", "-INT", Long.toString(program.process().pid()))
            .start()
            .waitFor();
        assertThat(program.awaitExit()).isEqualTo(130);
        try (RawFileReader reader = RawFileReader.open(TestLab.only(lab, ".raw.csv"))) {
          RawFileEnd end = reader.readRows(row -> {});
          assertThat(end.closing().orElseThrow().reason()).isEqualTo(CloseReason.OPERATOR);
        }
        assertThat(TestLab.only(lab, ".summary.json")).exists();
      }
    }
  }

  @Test
  void record_cablePulledAndPutBack_goesOn() throws Exception {
    Path link = folder.resolve("cable");
    List<Integer> quiet = Collections.nCopies(180, 0);
    Path lab;
    try (PseudoTerminal first = PseudoTerminal.openAlone();
        PseudoTerminal second = PseudoTerminal.open()) {
      Files.createSymbolicLink(link, Path.of(first.path()));
      lab = TestLab.make(folder.resolve("lab"), link.toString());
      try (Program program =
          Program.start("record", TestLab.SPECIMEN, "--lab", lab, "--unattended")) {
        program.awaitLine(text -> text.startsWith("Waiting for readings"));
        Feeder.feed(first, quiet, 100);
        program.awaitLine(text -> text.contains("ready to load"));
        Files.delete(link);
        Files.createSymbolicLink(link, Path.of(second.path()));
        first.close();
        program.awaitLine(text -> text.contains("link back load"));
        Feeder.feed(second, Feeder.cylinder(50_000, 600, 300), 200);
        assertThat(program.awaitExit()).as(program.err()).isZero();
      }
    }
    List<String> events = eventsIn(TestLab.only(lab, ".raw.csv"));
    assertThat(events).anyMatch(event -> event.startsWith("link lost load ("));
    assertThat(events).contains("link back load", "stop break");
    JsonNode summary = new ObjectMapper().readTree(TestLab.only(lab, ".summary.json").toFile());
    assertThat(result(summary, "strength").path("inch_pound").path("rounded").asText())
        .isEqualTo("3980");
    assertThat(summary.path("departures").toString()).contains("The link of load was lost");
  }

  @Test
  void record_diskFullInMidTest_closesWhatItHasAndExitsWith4() throws Exception {
    assumeThat(ProcessHandle.current().info().user().orElse(""))
        .as("only root can mount a small disk")
        .isEqualTo("root");
    Path disk = Files.createDirectory(folder.resolve("disk"));
    assumeThat(mount("mount", "-t", "tmpfs", "-o", "size=24m", "tmpfs", disk.toString()))
        .as("this machine lets nobody mount a tmpfs")
        .isZero();
    try (PseudoTerminal line = PseudoTerminal.open()) {
      Path lab = TestLab.make(disk.resolve("lab"), line.path());
      try (Program program =
          Program.start("record", TestLab.SPECIMEN, "--lab", lab, "--unattended")) {
        Feeder.start(line, Feeder.cylinder(60_000, 60_000, 100), 2000);
        program.awaitLine(text -> text.contains("loading"));
        fill(disk.resolve("filler"));
        assertThat(program.awaitExit()).isEqualTo(4);
        assertThat(program.err()).contains("the disk failed").doesNotContain("\tat ");
        try (RawFileReader reader = RawFileReader.open(TestLab.only(lab, ".raw.csv"))) {
          RawFileEnd end = reader.readRows(row -> {});
          assertThat(end.tornBytes()).isZero();
          assertThat(end.closing().orElseThrow().reason()).isEqualTo(CloseReason.INTERRUPTED);
        }
      }
    } finally {
      mount("umount", disk.toString());
    }
  }

  @Test
  void record_rigInUse_isRefusedWithWhoHasIt() throws Exception {
    try (PseudoTerminal line = PseudoTerminal.open()) {
      Path lab = TestLab.make(folder.resolve("lab"), line.path());
      try (Program first =
          Program.start("record", TestLab.SPECIMEN, "--lab", lab, "--unattended")) {
        Feeder.start(line, Feeder.cylinder(60_000, 20_000, 100), 200);
        first.awaitLine(text -> text.contains("loading"));
        Ran second = Ran.of("record", TestLab.SPECIMEN, "--lab", lab, "--unattended");
        assertThat(second.exitCode()).isEqualTo(2);
        assertThat(second.err())
            .contains("rig 'frame' is in use", "process " + first.process().pid())
            .doesNotContain("\tat ");
      }
    }
  }

  @Test
  void record_folderReadOnly_saysWhereAndExitsWith4() throws Exception {
    assumeThat(ProcessHandle.current().info().user().orElse(""))
        .as("only root can mount a read-only disk")
        .isEqualTo("root");
    Path disk = Files.createDirectory(folder.resolve("disk"));
    assumeThat(mount("mount", "-t", "tmpfs", "-o", "size=8m", "tmpfs", disk.toString()))
        .as("this machine lets nobody mount a tmpfs")
        .isZero();
    try (PseudoTerminal line = PseudoTerminal.open()) {
      Path lab = TestLab.make(disk.resolve("lab"), line.path());
      mount("mount", "-o", "remount,ro", disk.toString());
      Ran program = Ran.of("record", TestLab.SPECIMEN, "--lab", lab, "--unattended");
      assertThat(program.exitCode()).isEqualTo(4);
      assertThat(program.err())
          .contains(lab.toString(), "Read-only file system")
          .doesNotContain("\tat ");
    } finally {
      mount("umount", disk.toString());
    }
  }

  @Test
  void record_portMissing_saysWhatToDoAndExitsWith3() throws Exception {
    Path lab = TestLab.make(folder.resolve("lab"), "/dev/ttyUSB77");
    Ran program = Ran.of("record", TestLab.SPECIMEN, "--lab", lab, "--unattended");
    assertThat(program.exitCode()).isEqualTo(3);
    assertThat(program.err())
        .startsWith("platenwire: ")
        .contains("/dev/ttyUSB77")
        .doesNotContain("\tat ");
    assertThat(program.err().lines()).hasSize(1);
  }

  @Test
  void record_unknownSpecimen_suggestsAndExitsWith2() throws Exception {
    Path lab = TestLab.make(folder.resolve("lab"), "/dev/ttyUSB77");
    Ran program = Ran.of("record", "T-07-2", "--lab", lab);
    assertThat(program.exitCode()).isEqualTo(2);
    assertThat(program.err()).contains("T-07-2").contains("T-07-1");
  }

  @Test
  void record_noReadings_failsTheChecklistWithRemedyAndRecordsNothing() throws Exception {
    try (PseudoTerminal line = PseudoTerminal.open()) {
      Path lab = TestLab.make(folder.resolve("lab"), line.path());
      Ran program =
          Ran.of("record", TestLab.SPECIMEN, "--lab", lab, "--unattended", "--wait", "0.2");
      assertThat(program.exitCode()).isEqualTo(1);
      assertThat(program.out()).contains("nothing came from").contains("platenwire listen");
      assertThat(Files.exists(lab.resolve("records/2026-11"))).isFalse();
    }
  }

  private static double pounds(JsonNode result) {
    assertThat(result.path("unit").asText()).isEqualTo("kN");
    return result.path("value").asDouble() * 1000 / 4.4482216152605;
  }

  private static JsonNode result(JsonNode summary, String name) {
    for (JsonNode result : summary.path("results")) {
      if (result.path("name").asText().equals(name)) {
        return result;
      }
    }
    throw new AssertionError("no result '" + name + "' in " + summary);
  }

  private static JsonSchema schema() throws Exception {
    try (InputStream in =
        RecordCommandTest.class.getResourceAsStream("/schema/summary-1.schema.json")) {
      return JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012).getSchema(in);
    }
  }

  private static List<Double> valuesIn(Path file) throws Exception {
    List<Double> values = new ArrayList<>();
    for (RawRow row : rows(file)) {
      if (!row.isEvent() && row.received().length > 0) {
        values.add(row.value());
      }
    }
    return values;
  }

  private static List<String> eventsIn(Path file) throws Exception {
    return rows(file).stream()
        .filter(RawRow::isEvent)
        .map(row -> new String(row.received(), java.nio.charset.StandardCharsets.UTF_8))
        .toList();
  }

  private static List<RawRow> rows(Path file) throws Exception {
    List<RawRow> rows = new ArrayList<>();
    try (RawFileReader reader = RawFileReader.open(file)) {
      reader.readRows(rows::add);
    }
    return rows;
  }

  private static long lastShown(List<String> lines) {
    long shown = 0;
    for (String line : lines) {
      Matcher matcher = SEQ.matcher(line);
      if (matcher.find()) {
        shown = Math.max(shown, Long.parseLong(matcher.group(1)));
      }
    }
    return shown;
  }

  private static int mount(String... command) throws Exception {
    return new ProcessBuilder(command).start().waitFor();
  }

  private static void fill(Path file) throws Exception {
    new ProcessBuilder("dd", "if=/dev/zero", "of=" + file, "bs=4k").start().waitFor();
  }
}
