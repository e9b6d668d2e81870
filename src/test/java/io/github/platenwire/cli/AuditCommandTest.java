package io.github.platenwire.cli;

import static io.github.platenwire.cli.AuditLab.edit;
import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
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
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

@Timeout(300)
@TestInstance(Lifecycle.PER_CLASS)
class AuditCommandTest {
  private AuditLab clean;
  private AuditLab noted;
  private AuditLab faulty;

  @BeforeAll
  void makeArchives(@TempDir Path temporary) throws Exception {
    clean = AuditLab.make(temporary.resolve("base"));
    noted = clean.copyTo(temporary.resolve("noted"));
    Files.writeString(noted.raw(0).resolveSibling("thesis.txt"), "mine");
    faulty = noted.copyTo(temporary.resolve("faulty"));
    edit(faulty.raw(0), t -> t.replaceFirst("\n9,", "\n9;"));
  }

  @Test
  void audit_cleanArchive_saysSoAndEndsWith0() throws Exception {
    Ran program = Ran.of("audit", "--lab", clean.root(), "--fail-on", "note");
    assertThat(program.exitCode()).as(program.err()).isZero();
    assertThat(program.out())
        .contains("Alder Weir demo lab: the whole archive", "3 records", "Nothing was found")
        .contains("Register frame-1: 3 lines, witness ");
    assertThat(program.err()).as("no bar where no terminal is").isEmpty();
  }

  @Test
  void audit_faultyArchive_namesPlaceExpectedSeenAndWhatToDo() throws Exception {
    Ran program = Ran.of("audit", "--lab", faulty.root());
    assertThat(program.exitCode()).isEqualTo(ExitCode.NOT_MET);
    assertThat(program.out())
        .contains("[row-damaged]", "[foreign-file]", "expected", "seen", "Put back a copy")
        .contains(faulty.test(0) + ".raw.csv:")
        .contains("2 faults", "1 note");
    assertThat(program.out().indexOf("[row-damaged]"))
        .as("the heaviest first")
        .isLessThan(program.out().indexOf("[foreign-file]"));
  }

  @ParameterizedTest
  @CsvSource({"note, 1", "doubt, 0", "fault, 0"})
  void audit_notesOnly_endsAsFailOnSays(String weight, int code) {
    assertThat(
            Platenwire.commandLine()
                .execute("audit", "--lab", noted.root().toString(), "--fail-on", weight))
        .isEqualTo(code);
  }

  @Test
  void json_faultyArchive_isOneDocumentWithEverything() throws Exception {
    Ran program = Ran.of("audit", "--lab", faulty.root(), "--json");
    assertThat(program.exitCode()).isEqualTo(ExitCode.NOT_MET);
    JsonNode root = new ObjectMapper().readTree(program.out());
    assertThat(root.path("format").asText()).isEqualTo("platenwire-audit 1");
    assertThat(root.path("records")).hasSize(3);
    assertThat(root.path("records").path(0).path("worst").asText()).isEqualTo("fault");
    assertThat(root.path("counts").path("note").asInt()).isEqualTo(1);
    JsonNode first = root.path("findings").path(1);
    assertThat(first.path("check").asText()).isEqualTo("row-damaged");
    assertThat(first.path("severity").asText()).isEqualTo("fault");
    assertThat(first.path("line").asLong()).isPositive();
    assertThat(first.path("test").asText()).isEqualTo(faulty.test(0));
    assertThat(first.path("advice").asText()).isNotEmpty();
  }

  @Test
  void csv_faultyArchive_isATableWithOneRowAFinding() throws Exception {
    Ran program = Ran.of("audit", "--lab", faulty.root(), "--csv");
    assertThat(program.exitCode()).isEqualTo(ExitCode.NOT_MET);
    List<CSVRecord> rows =
        CSVFormat.RFC4180
            .builder()
            .setHeader()
            .setSkipHeaderRecord(true)
            .get()
            .parse(new StringReader(program.out()))
            .getRecords();
    assertThat(rows).extracting(row -> row.get("check")).contains("row-damaged", "foreign-file");
    assertThat(rows.get(0).get("severity")).isEqualTo("fault");
  }

  @Test
  void audit_oneRecordByPathOrId_looksAtThatOnly() throws Exception {
    assertThat(run(faulty, faulty.raw(1).toString())).isZero();
    assertThat(run(faulty, faulty.test(1))).isZero();
    assertThat(run(faulty, "RA-S-07-1")).isEqualTo(ExitCode.NOT_MET);
    assertThat(run(faulty, faulty.raw(0).getParent().toString())).isEqualTo(ExitCode.NOT_MET);
    assertThat(run(faulty, "--study")).isEqualTo(ExitCode.NOT_MET);
    assertThat(run(faulty, "--series", "NA-T")).isZero();
    assertThat(run(faulty, "--to", "2001-01-01")).isZero();
  }

  @Test
  void audit_wrongWords_endWith2() throws Exception {
    assertThat(run(faulty, "--fail-on", "grave")).isEqualTo(ExitCode.USAGE);
    assertThat(run(faulty, "--witness", "12")).isEqualTo(ExitCode.USAGE);
    assertThat(run(faulty, "--key", "xyz")).isEqualTo(ExitCode.USAGE);
    assertThat(run(faulty, "--from", "2026-02-01", "--to", "2026-01-01")).isEqualTo(ExitCode.USAGE);
    assertThat(run(faulty, "--json", "--csv")).isEqualTo(ExitCode.USAGE);
    assertThat(run(faulty, "no-such-test")).isEqualTo(ExitCode.USAGE);
  }

  private static int run(AuditLab lab, String... more) {
    String[] all = new String[more.length + 3];
    all[0] = "audit";
    all[1] = "--lab";
    all[2] = lab.root().toString();
    System.arraycopy(more, 0, all, 3, more.length);
    return Platenwire.commandLine().execute(all);
  }
}
