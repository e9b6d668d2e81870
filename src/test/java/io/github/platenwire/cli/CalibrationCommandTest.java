package io.github.platenwire.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.github.platenwire.lab.LabFolder;
import io.github.platenwire.lab.LabTemplate;
import io.github.platenwire.quantity.UnitSystem;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;

class CalibrationCommandTest {
  /** Errors of 0.4 % at each step, 1.2 % at the least. */
  private static final String TEXT =
      """
      format = "platenwire-calibration 1"
      name = "cell-1"
      certificate = "C-0001"
      laboratory = "invented"
      date = 2026-03-02
      due = 2027-03-02
      class = "1"
      unit = "kN"
      resolution = 0.1
      [[run]]
      direction = "ascending"
      rows = [[50, 50.6], [200, 200.8], [400, 401.6], [600, 602.4], [800, 803.2]]
      zero-after = 0.1
      """;

  @TempDir Path dir;
  private final PrintStream out = System.out;
  private final ByteArrayOutputStream console = new ByteArrayOutputStream();
  private final StringWriter errors = new StringWriter();

  @BeforeEach
  void listen() {
    System.setOut(new PrintStream(console, true, StandardCharsets.UTF_8));
  }

  @AfterEach
  void giveBack() {
    Logging.stop();
    System.setOut(out);
  }

  private int run(Object command, String... args) {
    CommandLine line = new CommandLine(command);
    line.setExecutionExceptionHandler(Failures::handle);
    line.setErr(new PrintWriter(errors, true));
    return line.execute(args);
  }

  private String shown() {
    return console.toString(StandardCharsets.UTF_8);
  }

  private Path file(String text) throws Exception {
    return Files.writeString(dir.resolve("cell-1.toml"), text);
  }

  @Test
  void check_oneStepBeyondItsClass_endsWith1AndSaysWhere() throws Exception {
    int exit = run(new CalibrationCheckCommand(), file(TEXT).toString());
    assertThat(exit).isEqualTo(ExitCode.NOT_MET);
    assertThat(shown().replaceAll("\\s+", " "))
        .contains("The stated class 1 is not met: at 50 kN: error 1.2 % is beyond 1 %.")
        .contains("class 0.5 from 200.00 kN (44962 lbf) to 800.00 kN (179847 lbf)")
        .contains("class 2 from 50.00 kN (11240 lbf)");
  }

  @Test
  void check_statedFromWhereItHolds_endsWith0AndDraws() throws Exception {
    Path chart = dir.resolve("errors.svg");
    String text = TEXT.replace("class = \"1\"", "class = \"1\"\nclass-from = 200");
    int exit =
        run(new CalibrationCheckCommand(), file(text).toString(), "--chart", chart.toString());
    assertThat(exit).isEqualTo(ExitCode.FINE);
    assertThat(shown()).contains("The stated class 1 from 200 kN up is met.");
    assertThat(chart).content(StandardCharsets.UTF_8).contains("class 1, stated");
  }

  @Test
  void check_json_holdsEveryStep() throws Exception {
    int exit = run(new CalibrationCheckCommand(), file(TEXT).toString(), "--json");
    JsonNode root = new ObjectMapper().readTree(shown());
    assertThat(exit).isEqualTo(ExitCode.NOT_MET);
    assertThat(root.path("steps")).hasSize(5);
    assertThat(root.path("steps").get(1).path("class").asText()).isEqualTo("0.5");
    assertThat(root.path("met").asBoolean(true)).isFalse();
    assertThat(root.path("failures").get(0).asText())
        .isEqualTo("at 50 kN: error 1.2 % is beyond 1 %");
  }

  @Test
  void check_scaleChosen_isJudgedAfterIt() throws Exception {
    int exit = run(new CalibrationCheckCommand(), file(TEXT).toString(), "--correction", "scale");
    assertThat(exit).isEqualTo(ExitCode.FINE);
    // by hand: (1.004 x 1 200 000 + 50 x 50.6) / (1.004^2 x 1 200 000 + 50.6^2)
    assertThat(shown()).contains("after the correction: scale, times 0.9959993");
  }

  @Test
  void check_classThatTheStandardHasNot_isWrongUsage() throws Exception {
    int exit = run(new CalibrationCheckCommand(), file(TEXT.replace("\"1\"", "\"A\"")).toString());
    assertThat(exit).isEqualTo(ExitCode.USAGE);
    assertThat(errors.toString())
        .contains("the stated class 'A' is none of ISO 7500-1, which has: 0.5, 1, 2, 3");
  }

  @Test
  void check_chartOfAnotherKind_isRefusedBeforeAnything() throws Exception {
    int exit = run(new CalibrationCheckCommand(), "nowhere.toml", "--chart", "a.jpg");
    assertThat(exit).isEqualTo(ExitCode.USAGE);
    assertThat(errors.toString()).contains("a chart's name must end in .png or .svg, not: a.jpg");
  }

  @Test
  void list_dayBeforeAndAfterDue_saysSo() throws Exception {
    LabFolder lab =
        LabFolder.create(
            dir.resolve("lab"), LabTemplate.example("Weir", ZoneId.of("UTC"), UnitSystem.SI));
    Files.writeString(lab.root().resolve("calibrations/cell-1.toml"), TEXT);
    Path rig = lab.root().resolve("rigs/frame-1.toml");
    Files.writeString(rig, Files.readString(rig) + "\ncalibration = \"cell-1\"\n");
    String folder = lab.root().toString();
    // the due day itself is still in date
    assertThat(list("2027-03-02T23:59:59Z", folder)).isEqualTo(ExitCode.FINE);
    assertThat(shown()).contains("2027-03-02").contains("in date").contains("frame-1 load");
    assertThat(list("2027-03-03T00:00:00Z", folder)).isEqualTo(ExitCode.NOT_MET);
    assertThat(shown().replaceAll("\\s+", " ")).contains("out of date").contains(" -1 ");
  }

  private int list(String now, String folder) {
    return run(new CalibrationListCommand(() -> Instant.parse(now)), "--lab", folder);
  }

  @Test
  void chart_fileThatIsNoRecord_saysSo() throws Exception {
    Path file = Files.writeString(dir.resolve("a.raw.csv"), "nothing\n");
    int exit = run(new ChartCommand(), file.toString(), "--out", dir.resolve("a.png").toString());
    assertThat(exit).isEqualTo(ExitCode.NOT_MET);
    assertThat(errors.toString()).contains("a.raw.csv");
    assertThat(dir.resolve("a.png")).doesNotExist();
  }
}
