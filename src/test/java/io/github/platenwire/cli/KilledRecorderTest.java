package io.github.platenwire.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.github.platenwire.emulate.DemoScenario;
import io.github.platenwire.emulate.Pacer;
import io.github.platenwire.emulate.TcpOutlet;
import io.github.platenwire.emulate.Waiter;
import io.github.platenwire.lab.LabException;
import io.github.platenwire.lab.LabFolder;
import io.github.platenwire.lab.LabTemplate;
import io.github.platenwire.lab.RegisterCheck;
import io.github.platenwire.lab.RigLock;
import io.github.platenwire.quantity.UnitSystem;
import io.github.platenwire.reading.SystemClocks;
import io.github.platenwire.record.CloseReason;
import io.github.platenwire.record.RawFileEnd;
import io.github.platenwire.record.RawFileReader;
import io.github.platenwire.recorder.SummaryCheck;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicReference;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BooleanSupplier;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * A recorder in a process of its own, killed without warning ({@code kill -9}) while it records.
 */
@Timeout(3600)
class KilledRecorderTest {
  private static final String RIG = "frame-1";
  private static final Pattern SHOWN = Pattern.compile("\\bseq (\\d+)");
  private static final Pattern ROW = Pattern.compile("(?m)^(\\d+),.*\\n");

  /** 20 in the usual run; the full table is made with {@code -Dplatenwire.kills=200}. */
  private static final int KILLS = Integer.getInteger("platenwire.kills", 20);

  private static final long SEED = Long.getLong("platenwire.kills.seed", 20261125);

  /** The head has some 14000 bytes; a second of readings and seals has about 3500. */
  private static final int MOST_BYTES = 22_000;

  /**
   * What an audit may say of tests that were cut short at any moment, of cylinders that were tested
   * again and again while the frame went on loading: none of it is a fault.
   */
  private static final Set<String> OF_A_CUT_TEST =
      Set.of(
          "interrupted",
          "overridden",
          "torn-file",
          "zero-outside",
          "rate-outside",
          "method-not-met");

  @TempDir Path folder;

  @Test
  void record_killedAtRandomMoments_isRecoveredWithEverythingThatItShowed() throws Exception {
    DemoScenario scenario =
        new DemoScenario(SystemClocks.wall().now(), ZoneId.of("UTC"), /* seed= */ 5);
    System.out.println("kills: " + KILLS + ", seed " + SEED);
    Random random = new Random(SEED);
    try (TcpOutlet outlet = TcpOutlet.listen(0)) {
      LabFolder lab = lab(scenario, "tcp://" + outlet.address());
      Pacer pacer = send(scenario, outlet);
      for (int kill = 0; kill < KILLS; kill++) {
        String specimen = scenario.today().get(kill % scenario.today().size()).name();
        killOne(lab, specimen, kill, random);
      }
      pacer.stop();
      assertThat(recover(lab)).isEqualTo(ExitCode.FINE);
      assertThat(lab.records()).isNotEmpty();
      for (Path raw : lab.records()) {
        assertThat(SummaryCheck.of(raw).isEqual()).as(raw.toString()).isTrue();
      }
      RegisterCheck register = RegisterCheck.of(lab, RIG);
      assertThat(register.findings()).isEmpty();
      assertThat(register.lines()).hasSize(lab.records().size());
      assertAuditKnowsOfNothingElse(lab);
    }
  }

  /** Each test was cut short, against a warning, and the audit says that and no more. */
  private void assertAuditKnowsOfNothingElse(LabFolder lab) throws Exception {
    Set<String> ids =
        new AuditLab(lab.root(), Path.of(keys()))
            .audit().findings().stream()
                .map(finding -> finding.check().id())
                .collect(Collectors.toSet());
    System.out.println("the audit of the killed recorder's archive names: " + ids);
    assertThat(ids).contains("interrupted", "overridden").isSubsetOf(OF_A_CUT_TEST);
  }

  /**
   * Records until a random moment between the making of the file and some seconds of readings, then
   * kills. Every other record is left for the next {@code record} to recover.
   */
  private void killOne(LabFolder lab, String specimen, int kill, Random random) throws Exception {
    Set<Path> before = Set.copyOf(lab.records());
    Process child = record(lab, specimen);
    Path raw = awaitRaw(lab, specimen, before, random.nextInt(MOST_BYTES));
    LockSupport.parkNanos(random.nextInt(30_000_000));
    if (kill == 0) {
      assertSecondIsRefused(lab, child);
    }
    child.destroyForcibly();
    assertThat(child.waitFor(20, TimeUnit.SECONDS)).isTrue();
    assertThat(child.exitValue()).isNotZero();
    assertThat(RigLock.isTaken(lab, RIG)).as("the rig is free again").isFalse();
    byte[] left = Files.readAllBytes(raw);
    assertThat(lastSeq(left))
        .as("kill " + kill + ": everything that was shown is in the file")
        .isGreaterThanOrEqualTo(lastShown(specimen));
    if (kill % 2 == 0) {
      assertThat(recover(lab)).isEqualTo(ExitCode.FINE);
      assertRecovered(raw, left);
    }
  }

  private int recover(LabFolder lab) {
    return Platenwire.commandLine()
        .execute("recover", "--lab", lab.root().toString(), "--keys", keys());
  }

  private long lastShown(String specimen) throws IOException {
    return last(SHOWN, Files.readString(folder.resolve(specimen + ".txt")));
  }

  private static long lastSeq(byte[] raw) {
    return last(ROW, new String(raw, StandardCharsets.ISO_8859_1));
  }

  private static long last(Pattern pattern, String text) {
    return pattern
        .matcher(text)
        .results()
        .mapToLong(found -> Long.parseLong(found.group(1)))
        .max()
        .orElse(0);
  }

  private static void assertSecondIsRefused(LabFolder lab, Process child) throws Exception {
    assertThatThrownBy(() -> RigLock.take(lab, RIG, "me"))
        .isInstanceOf(LabException.class)
        .hasMessageContaining("process " + child.pid())
        .hasMessageContaining("since ");
  }

  private static void assertRecovered(Path raw, byte[] left) throws Exception {
    if (!Files.exists(raw)) {
      assertThat(lastSeq(left)).as("only a file without a row is set aside whole").isZero();
      assertThat(raw.resolveSibling(raw.getFileName() + ".torn")).hasBinaryContent(left);
      return;
    }
    int whole = left.length;
    while (left[whole - 1] != '\n') {
      whole--;
    }
    byte[] closed = Files.readAllBytes(raw);
    assertThat(Arrays.copyOf(closed, whole)).isEqualTo(Arrays.copyOf(left, whole));
    Path torn = raw.resolveSibling(raw.getFileName() + ".torn");
    if (whole < left.length) {
      assertThat(torn).hasBinaryContent(Arrays.copyOfRange(left, whole, left.length));
    } else {
      assertThat(torn).doesNotExist();
    }
    try (RawFileReader reader = RawFileReader.open(raw)) {
      RawFileEnd end = reader.readRows(row -> {});
      assertThat(end.closing().orElseThrow().reason()).isEqualTo(CloseReason.INTERRUPTED);
    }
    assertThat(SummaryCheck.of(raw).isEqual()).isTrue();
  }

  private String keys() {
    return folder.resolve("keys").toString();
  }

  private LabFolder lab(DemoScenario scenario, String port) throws Exception {
    return LabFolder.create(
        folder.resolve("lab"),
        LabTemplate.example("Weir lab", ZoneId.of("UTC"), UnitSystem.SI)
            .withRigs(Map.of(RIG, scenario.rigText(RIG, port, DemoTest.DEVICE)))
            .withSpecimens(scenario.specimensText())
            .withStudy(scenario.studyText())
            .withFile(
                "calibrations/" + DemoScenario.CALIBRATION_NAME + ".toml",
                scenario.calibrationText()));
  }

  private static Pacer send(DemoScenario scenario, TcpOutlet outlet) {
    Pacer pacer = new Pacer(outlet);
    AtomicReference<IOException> closed = new AtomicReference<>();
    Thread thread =
        new Thread(
            () -> {
              try {
                for (int test = 0; test < 1 + KILLS; test++) {
                  pacer.atTruePace(
                      scenario.test(scenario.today().get(0), DemoTest.indicator()),
                      SystemClocks.monotonic(),
                      Waiter.parking());
                }
              } catch (IOException e) {
                closed.set(e);
              }
            },
            "test-frame");
    thread.setDaemon(true);
    thread.start();
    return pacer;
  }

  private Process record(LabFolder lab, String specimen) throws IOException {
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(List.of("-XX:TieredStopAtLevel=1", "-XX:+UseSerialGC", "-cp"));
    command.add(
        System.getProperty("surefire.test.class.path", System.getProperty("java.class.path")));
    command.add(Platenwire.class.getName());
    command.addAll(List.of("record", specimen, "--unattended", "--reason", "a drill"));
    command.addAll(List.of("--lines-every", "0.01"));
    command.addAll(List.of("--lab", lab.root().toString(), "--keys", keys()));
    return new ProcessBuilder(command)
        .redirectErrorStream(true)
        .redirectOutput(folder.resolve(specimen + ".txt").toFile())
        .start();
  }

  private Path awaitRaw(LabFolder lab, String specimen, Set<Path> before, long moreThanBytes)
      throws Exception {
    List<Path> found = new ArrayList<>();
    awaitTrue(
        specimen,
        () -> {
          found.clear();
          try {
            for (Path raw : lab.records()) {
              if (!before.contains(raw) && Files.size(raw) >= moreThanBytes) {
                found.add(raw);
              }
            }
          } catch (IOException e) {
            throw new UncheckedIOException(e);
          }
          return !found.isEmpty();
        });
    return found.get(0);
  }

  private void awaitTrue(String specimen, BooleanSupplier condition) throws IOException {
    long deadline = System.nanoTime() + TimeUnit.SECONDS.toNanos(60);
    while (!condition.getAsBoolean()) {
      if (System.nanoTime() > deadline) {
        throw new AssertionError(
            "waited too long; the recorder said: "
                + Files.readString(folder.resolve(specimen + ".txt")));
      }
      LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(2));
    }
  }
}
