package io.github.platenwire.cli;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.platenwire.audit.Finding;
import io.github.platenwire.emulate.DemoScenario;
import io.github.platenwire.emulate.EmulatedIndicator;
import io.github.platenwire.emulate.LineLayout;
import io.github.platenwire.faults.Death;
import io.github.platenwire.faults.FaultyDisk;
import io.github.platenwire.lab.LabFolder;
import io.github.platenwire.lab.LabTemplate;
import io.github.platenwire.lab.PrivateKeys;
import io.github.platenwire.lab.Register;
import io.github.platenwire.lab.RegisterCheck;
import io.github.platenwire.lab.RigLock;
import io.github.platenwire.quantity.UnitSystem;
import io.github.platenwire.reading.SystemClocks;
import io.github.platenwire.record.DiskFolder;
import io.github.platenwire.recorder.LabRecovery;
import io.github.platenwire.recorder.SummaryCheck;
import java.io.File;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * The process of a test ends without a word at each point of its close: between the raw file's last
 * row, its last line, the summary under its draft's name, the summary in its place, and the line in
 * the register. What comes next, {@code recover} or another {@code record}, brings all three to a
 * whole, and the audit says what it knows of it, and not more.
 */
@Timeout(300)
class KilledCloseTest {
  private static final String RAW = ".raw.csv";
  private static final String LAST_LINE = "# closed seq=";
  private static final String DRAFT = ".summary.json.draft";
  private static final String SUMMARY = ".summary.json";
  private static final String REGISTER = ".jsonl";

  private static final boolean ALL = "all".equals(System.getProperty("platenwire.faults"));
  private static final Set<String> WHOLE = Set.of();

  /** What is true of a test that was closed, but entered into the register by somebody else. */
  private static final Set<String> ENTERED = Set.of("entered-afterwards");

  /** What is true of a test whose raw file lacked its last line; that it came late goes with it. */
  private static final Set<String> CUT = Set.of("interrupted");

  @TempDir private Path folder;
  private Path keys;
  private Instant start;

  /** A point of the close, and the checks that an audit names afterwards. */
  private record Point(String name, Death death, Set<String> findings) {}

  /** All points; those of the usual run first. */
  private static final List<Point> POINTS =
      List.of(
          new Point("last row written", new Death("WRITE", RAW, LAST_LINE, 0), CUT),
          new Point(
              "half of the last line written",
              new Death("WRITE", RAW, LAST_LINE, 0.5),
              Set.of("interrupted", "torn-file")),
          new Point("last line forced", new Death("FORCE", RAW, LAST_LINE, 1), ENTERED),
          new Point("summary drafted", new Death("FORCE", DRAFT, "", 1), ENTERED),
          new Point("summary in its place", new Death("MOVE", SUMMARY, "", 1), ENTERED),
          new Point("register line torn", new Death("WRITE", REGISTER, "", 0.5), ENTERED),
          new Point("register line forced", new Death("FORCE", REGISTER, "{", 1), WHOLE),
          new Point("last line written", new Death("WRITE", RAW, LAST_LINE, 1), ENTERED),
          new Point("summary half drafted", new Death("WRITE", DRAFT, "", 0.5), ENTERED),
          new Point("register line written", new Death("WRITE", REGISTER, "", 1), WHOLE));

  private static final int USUAL_POINTS = 7;

  @BeforeEach
  void chooseStart() {
    keys = folder.resolve("keys");
    Instant now = SystemClocks.wall().now().truncatedTo(ChronoUnit.SECONDS);
    start = now.minus(DemoBench.BETWEEN_TESTS.multipliedBy(6));
  }

  @Test
  void close_killedAtEachPoint_isWholeAfterTheNextCommand() throws Exception {
    List<Point> points = POINTS.subList(0, ALL ? POINTS.size() : USUAL_POINTS);
    List<Process> children = new ArrayList<>();
    List<LabFolder> labs = new ArrayList<>();
    for (int i = 0; i < points.size(); i++) {
      labs.add(newLab(i));
      children.add(child(labs.get(i), i));
      if (i % 2 == 1) {
        awaitDeath(children, points);
      }
    }
    awaitDeath(children, points);
    for (int i = 0; i < points.size(); i++) {
      boolean byNextRecord = points.get(i).name().contains("torn") || i % 4 == 1;
      if (byNextRecord) {
        recordNext(labs.get(i));
      } else {
        assertThat(
                Platenwire.commandLine()
                    .execute(
                        "recover",
                        "--lab",
                        labs.get(i).root().toString(),
                        "--keys",
                        keys.toString()))
            .as(points.get(i).name())
            .isEqualTo(ExitCode.FINE);
      }
      assertWhole(labs.get(i), points.get(i), byNextRecord ? 2 : 1);
    }
  }

  private static void awaitDeath(List<Process> children, List<Point> points) throws Exception {
    for (int i = 0; i < children.size(); i++) {
      assertThat(children.get(i).waitFor(60, TimeUnit.SECONDS)).isTrue();
      assertThat(children.get(i).exitValue())
          .as("killed, not ended: " + points.get(i).name())
          .isEqualTo(Death.EXIT_CODE);
    }
  }

  private void assertWhole(LabFolder lab, Point point, int tests) throws Exception {
    String what = point.name();
    List<Path> raws = lab.records();
    assertThat(raws).as(what).hasSize(tests);
    for (Path raw : raws) {
      assertThat(SummaryCheck.of(raw).isEqual()).as(what).isTrue();
    }
    RegisterCheck register = RegisterCheck.of(lab, AuditLab.RIG);
    assertThat(register.findings()).as(what).isEmpty();
    assertThat(register.lines()).as(what).hasSize(tests);
    List<Finding> findings = new AuditLab(lab.root(), keys).audit().findings();
    assertThat(findings)
        .as(what)
        .extracting(finding -> finding.check().id())
        .containsExactlyInAnyOrderElementsOf(point.findings());
    try (Stream<Path> files = Files.walk(lab.root())) {
      assertThat(files.filter(file -> file.toString().endsWith(".draft"))).as(what).isEmpty();
    }
  }

  /** What {@code record} does before and while it records the next specimen. */
  private void recordNext(LabFolder lab) throws Exception {
    PrivateKeys held = new PrivateKeys(keys);
    try (RigLock lock = RigLock.take(lab, AuditLab.RIG, "the next test")) {
      List<LabRecovery.Report> reports =
          new LabRecovery(lab, held, SystemClocks.wall(), new DiskFolder(), Set.of(lock.rig()))
              .all();
      assertThat(reports).allMatch(LabRecovery.Report::done);
    }
    test(lab, start.plus(DemoBench.BETWEEN_TESTS), keys, 1);
  }

  private LabFolder newLab(int number) throws Exception {
    DemoScenario scenario = scenario(start);
    Path root = folder.resolve("lab-" + number);
    try (DemoBench bench = DemoBench.fast(start)) {
      LabFolder.create(
          root,
          LabTemplate.example("Weir lab", ZoneOffset.UTC, UnitSystem.SI)
              .withRigs(
                  Map.of(
                      AuditLab.RIG, scenario.rigText(AuditLab.RIG, bench.port(), DemoTest.DEVICE)))
              .withSpecimens(scenario.specimensText())
              .withStudy(scenario.studyText())
              .withFile(
                  "calibrations/" + DemoScenario.CALIBRATION_NAME + ".toml",
                  scenario.calibrationText()));
    }
    LabFolder lab = LabFolder.open(root);
    Register.open(lab, AuditLab.RIG, new PrivateKeys(keys), SystemClocks.wall());
    return lab;
  }

  private static DemoScenario scenario(Instant start) {
    return new DemoScenario(start, ZoneOffset.UTC, 3);
  }

  /** Records one specimen of the demo and closes the test, ten readings a second. */
  private static void test(LabFolder lab, Instant at, Path keys, int specimen) throws Exception {
    EmulatedIndicator indicator =
        EmulatedIndicator.perfect(LineLayout.KILONEWTONS, new BigDecimal("0.01"), 1_500_000, 10)
            .withNoiseAndZero(15, 60);
    try (DemoBench bench = DemoBench.fast(at)) {
      Register register =
          Register.open(lab, AuditLab.RIG, new PrivateKeys(keys), SystemClocks.wall());
      DemoScenario scenario = scenario(at);
      new DemoTest(
              lab,
              register,
              scenario,
              scenario.today().get(specimen),
              Face.standard(UnitSystem.SI),
              /* watched= */ false)
          .run(bench, indicator);
    }
  }

  private Process child(LabFolder lab, int point) throws Exception {
    File said = folder.resolve("child-" + point + ".txt").toFile();
    return new ProcessBuilder(
            Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            "-XX:TieredStopAtLevel=1",
            "-XX:+UseSerialGC",
            "-cp",
            System.getProperty("surefire.test.class.path", System.getProperty("java.class.path")),
            Child.class.getName(),
            lab.root().toString(),
            keys.toString(),
            start.toString(),
            String.valueOf(point))
        .redirectErrorStream(true)
        .redirectOutput(said)
        .start();
  }

  /** The process that dies. */
  static final class Child {
    private Child() {}

    /** Takes lab, keys, start and number of the point. */
    public static void main(String[] args) throws Exception {
      FaultyDisk disk = new FaultyDisk(Path.of(args[0]));
      disk.dieAt(POINTS.get(Integer.parseInt(args[3])).death());
      test(LabFolder.open(disk.root()), Instant.parse(args[2]), Path.of(args[1]), 0);
    }
  }
}
