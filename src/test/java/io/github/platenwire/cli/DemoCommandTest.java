package io.github.platenwire.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assumptions.assumeThat;

import io.github.platenwire.lab.LabFolder;
import io.github.platenwire.method.MethodResult;
import io.github.platenwire.record.CloseReason;
import io.github.platenwire.record.RawFileEnd;
import io.github.platenwire.record.RawFileReader;
import io.github.platenwire.study.AgeTrend;
import io.github.platenwire.study.ClosedTest;
import io.github.platenwire.study.CrackRatio;
import io.github.platenwire.study.StudyComparison;
import io.github.platenwire.study.StudyComparison.CrackComparison;
import io.github.platenwire.study.StudyData;
import io.github.platenwire.study.StudyQuestion;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.TestInstance.Lifecycle;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

@Timeout(120)
@TestInstance(Lifecycle.PER_CLASS)
class DemoCommandTest {
  private Path folder;
  private Program demo;
  private Path lab;

  @BeforeAll
  void runDemo(@TempDir Path temporary) throws Exception {
    folder = temporary;
    lab = folder.resolve("demo");
    demo = Program.run("demo", "--lab", lab);
    assertThat(demo.awaitExit()).as(demo.err() + demo.out()).isZero();
  }

  @AfterAll
  void endDemo() {
    demo.close();
  }

  @Test
  void demo_newFolder_leavesClosedRecordsWithSummaries() throws Exception {
    List<Path> raws = files(".raw.csv");
    assertThat(raws).as("twelve cylinders and six split beams").hasSize(18);
    assertThat(files(".summary.json")).hasSize(18);
    for (Path raw : raws) {
      try (RawFileReader reader = RawFileReader.open(raw)) {
        RawFileEnd end = reader.readRows(row -> {});
        assertThat(end.closing().orElseThrow().reason())
            .isIn(CloseReason.BREAK, CloseReason.RANGE, CloseReason.OPERATOR);
        assertThat(end.closing().orElseThrow().lost()).isZero();
      }
    }
    assertThat(demo.out())
        .contains("RA-S-07-1", "RA-S-07-2", "RA-S-07-3", "measured", "limit 10.6 %: within")
        .contains("Every strength agrees with its truth");
  }

  /** JCGM 100: no strength, width or load at a width without its budget, line by line. */
  @Test
  void demo_everyStrengthWidthAndLoadAtWidth_hasABudget() throws Exception {
    int seen = 0;
    for (ClosedTest test : StudyData.read(LabFolder.open(lab)).tests()) {
      for (MethodResult.Figure figure : test.summary().result().figures()) {
        if (figure.name().matches("strength.*|peak-load|(width|load)-at-.*|first-crack-.*")) {
          assertThat(figure.uncertainty()).as(test.specimen() + " " + figure.name()).isPresent();
          assertThat(figure.uncertainty().orElseThrow().lines()).hasSizeGreaterThan(1);
          seen++;
        }
      }
    }
    assertThat(seen).isGreaterThan(50);
  }

  /** The truth of the demo's cylinders and beams: known, since they are emulated. */
  @Test
  void compare_demoLab_findsTheTruth() throws Exception {
    StudyComparison comparison =
        StudyComparison.of(StudyData.read(LabFolder.open(lab)), StudyQuestion.WHOLE);
    assertThat(comparison.sets()).hasSize(4).allMatch(set -> set.statistics().n() == 3);
    assertThat(comparison.trends().get(0).trend().verdict()).isInstanceOf(AgeTrend.Gains.class);
    assertThat(comparison.trends().get(1).trend().verdict())
        .isInstanceOf(AgeTrend.NoGainShown.class);
    // The means of the truth of which DemoScenario draws: 25.5 and 33.5, 25.8 and 42.5 MPa.
    assertThat(comparison.ages().get(0).series().get(0).ratio().set().contains(25.5 / 33.5))
        .isTrue();
    assertThat(comparison.ages().get(1).series().get(0).ratio().set().contains(25.8 / 42.5))
        .isTrue();
    CrackComparison crack = comparison.cracks().get(0);
    assertThat(crack.series()).isEqualTo("NA-CB");
    CrackRatio.At last = crack.atLoads().get(crack.atLoads().size() - 1);
    assertThat(((CrackRatio.Found) last.outcome()).interval().contains(10)).isTrue();
    assertThat(comparison.observations())
        .extracting(StudyComparison.Observation::sentence)
        .contains("At 7 days: 3 of 3 of RA-S through the aggregate, against 0 of 3 of NA-T.");
  }

  @Test
  void demo_emulatedClock_neverSeesAStepOrASilence() throws Exception {
    for (Path raw : files(".raw.csv")) {
      assertThat(Files.readString(raw)).doesNotContain("clock step", ",late\n", "link lost");
    }
  }

  @Test
  void demo_folderThatHoldsSomething_isRefusedAndLeftAlone() throws Exception {
    Path taken = Files.createDirectory(folder.resolve("taken"));
    Files.writeString(taken.resolve("thesis.txt"), "mine");
    Ran refused = Ran.of("demo", "--lab", taken);
    assertThat(refused.exitCode()).isEqualTo(2);
    assertThat(refused.err()).contains("is not empty").contains("--lab");
    try (Stream<Path> left = Files.list(taken)) {
      assertThat(left).containsExactly(taken.resolve("thesis.txt"));
    }
  }

  @Test
  void readRaw_pandas_seesEveryRowAndSeal() throws Exception {
    Optional<String> python =
        firstThatRuns(List.of("python3", "/usr/bin/python3"), "-c", "import pandas");
    assumeThat(python).as("needs Python with pandas").isPresent();
    String text =
        output(python.orElseThrow(), "src/docs/read_raw.py", files(".raw.csv").get(0).toString());
    assertThat(text).contains(rowCount() + " rows, every seal agrees").contains("load");
  }

  @Test
  void readRaw_r_seesEveryRow() throws Exception {
    assumeThat(firstThatRuns(List.of("Rscript"), "--version")).as("needs R").isPresent();
    String text = output("Rscript", "src/docs/read_raw.R", files(".raw.csv").get(0).toString());
    assertThat(text)
        .contains(rowCount() + " rows,")
        .contains("reason=break")
        .contains("load count");
  }

  @Test
  void checkLine_shellTools_agree() throws Exception {
    assumeThat(firstThatRuns(List.of("sha256sum"), "--version")).as("needs sha256sum").isPresent();
    Path raw = files(".raw.csv").get(0);
    String text = Files.readString(raw);
    int at = text.indexOf("# check ");
    String line = text.substring(at, text.indexOf('\n', at));
    int bytes = text.substring(0, at).getBytes(StandardCharsets.UTF_8).length;
    String sum = output("sh", "-c", "head -c " + bytes + " '" + raw + "' | sha256sum");
    assertThat(line).endsWith("sha256=" + sum.substring(0, 64));
  }

  private long rowCount() throws Exception {
    try (RawFileReader reader = RawFileReader.open(files(".raw.csv").get(0))) {
      return reader.readRows(row -> {}).lastSeq();
    }
  }

  private List<Path> files(String ending) throws IOException {
    try (Stream<Path> files = Files.walk(lab.resolve("records"))) {
      return files.filter(file -> file.toString().endsWith(ending)).sorted().toList();
    }
  }

  private static Optional<String> firstThatRuns(List<String> programs, String... args)
      throws InterruptedException {
    for (String program : programs) {
      if (runs(Stream.concat(Stream.of(program), Stream.of(args)).toList())) {
        return Optional.of(program);
      }
    }
    return Optional.empty();
  }

  private static boolean runs(List<String> command) throws InterruptedException {
    try {
      return new ProcessBuilder(command).redirectErrorStream(true).start().waitFor() == 0;
    } catch (IOException notThere) {
      return false;
    }
  }

  private static String output(String... command) throws Exception {
    Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
    String text = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertThat(process.waitFor()).as(text).isZero();
    return text;
  }
}
