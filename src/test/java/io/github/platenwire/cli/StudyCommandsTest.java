package io.github.platenwire.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.github.platenwire.quantity.UnitSystem;
import io.github.platenwire.study.StudyLab;
import java.io.IOException;
import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.TestInstance.Lifecycle;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;

@TestInstance(Lifecycle.PER_CLASS)
class StudyCommandsTest {
  private Path lab;

  @BeforeAll
  void makeLab(@TempDir Path folder) throws Exception {
    lab =
        new StudyLab(folder.resolve("lab"), UnitSystem.SI, "NA-T", "[7, 28]")
            .series("NA-T")
            .series("RA-S")
            .cylinders("NA-T", 7, 34.1, 33.9, 35.2)
            .cylinders("RA-S", 7, "through", 24.1, 24.5, 25.2)
            .waiting("RA-S-28-1", "RA-S", 28, 240)
            .make()
            .root();
  }

  /** What a command printed, and its exit code in the last line. */
  private static List<String> run(Object... args) throws IOException, InterruptedException {
    Ran program = Ran.of(args);
    return List.of(program.out(), program.err(), Integer.toString(program.exitCode()));
  }

  private static JsonNode json(Object... args) throws IOException, InterruptedException {
    return new ObjectMapper().readTree(run(args).get(0));
  }

  @Test
  void compare_json_hasEveryFigureUnroundedWithItsRecord() throws Exception {
    JsonNode root = json("compare", "--lab", lab, "--json");
    JsonNode against = root.path("ages").path(0).path("series").path(0);
    assertThat(against.path("series").asText()).isEqualTo("RA-S");
    assertThat(against.path("ratio").asDouble()).isCloseTo(73.8 / 103.2, within(1e-15));
    assertThat(against.path("ratio_interval")).hasSize(2);
    assertThat(against.path("n").asInt()).isEqualTo(3);
    JsonNode specimen = root.path("sets").path(0).path("specimens").path(0);
    assertThat(specimen.path("record").asText()).endsWith("_NA-T-07-1.raw.csv");
    assertThat(Files.exists(lab.resolve(specimen.path("record").asText()))).isTrue();
    assertThat(specimen.path("rows").path(0).asInt()).isEqualTo(42);
    assertThat(specimen.path("expanded_uncertainty").asDouble()).isPositive();
    assertThat(root.path("sentences").path(0).asText()).startsWith("At 7 days RA-S is 0.71");
  }

  @Test
  void compare_csv_isReadBackByAStranger() throws Exception {
    String text = run("compare", "RA-S", "--lab", lab, "--csv").get(0);
    CSVFormat format = CSVFormat.RFC4180.builder().setHeader().setSkipHeaderRecord(true).get();
    try (StringReader reader = new StringReader(text)) {
      List<CSVRecord> rows = format.parse(reader).getRecords();
      assertThat(rows).allMatch(CSVRecord::isConsistent);
      CSVRecord ratio =
          rows.stream().filter(row -> row.get("kind").equals("ratio")).findFirst().orElseThrow();
      assertThat(Double.parseDouble(ratio.get("value")))
          .isBetween(Double.parseDouble(ratio.get("low")), Double.parseDouble(ratio.get("high")));
      assertThat(rows).extracting(row -> row.get("kind")).contains("specimen", "mean", "seen");
    }
  }

  @Test
  void compare_misuse_endsWith2AndSaysWhatToDo() throws Exception {
    List<String> unknown = run("compare", "RA-X", "--lab", lab);
    assertThat(unknown.get(1)).contains("there is no series 'RA-X', did you mean 'RA-S'?");
    assertThat(unknown.get(2)).isEqualTo("2");
    assertThat(run("compare", "--lab", lab, "--age", "-1").get(1)).contains("--age must be");
    List<String> both = run("compare", "--lab", lab, "--json", "--csv");
    assertThat(both.get(1)).contains("mutually exclusive");
    assertThat(both.get(2)).isEqualTo("2");
  }

  /** The clock is put after the tolerance of 20 h: overdue is a finding, exit code 1. */
  @Test
  void status_injectedClock_endsWith1OnceABreakIsOverdue() {
    assertThat(statusAt(17.9)).isEqualTo(ExitCode.FINE);
    assertThat(statusAt(18 + 20.0 / 24 + 0.01)).isEqualTo(ExitCode.NOT_MET);
  }

  private int statusAt(double daysLater) {
    CommandLine command =
        new CommandLine(
            new StudyStatusCommand(() -> StudyLab.DAY.plusSeconds(Math.round(daysLater * 86_400))));
    return command.execute("--lab", lab.toString(), "--json");
  }

  @Test
  void status_jsonAndCsv_listWhatIsDue() throws Exception {
    JsonNode root = json("study", "status", "--lab", lab, "--json");
    assertThat(root.path("due").path(0).path("specimen").asText()).isEqualTo("RA-S-28-1");
    assertThat(root.path("due").path(0).path("due").asText()).isEqualTo("2026-12-13T08:00:00Z");
    assertThat(root.path("due").path(0).path("tolerance_hours").asDouble()).isEqualTo(20);
    assertThat(root.path("progress")).hasSize(4);
    assertThat(run("study", "status", "--lab", lab, "--csv").get(0))
        .contains("RA-S-28-1,RA-S,28.0,2026-12-13T08:00:00Z,20.0,2026-12-12T12:00:00Z,");
  }
}
