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
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicReference;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BooleanSupplier;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** A recorder in a process of its own, killed without warning while it records. */
@Timeout(240)
class KilledRecorderTest {
  private static final String RIG = "frame-1";

  @TempDir Path folder;

  @Test
  void record_killed_isRecoveredWithEverythingThatWasWritten() throws Exception {
    DemoScenario scenario =
        new DemoScenario(SystemClocks.wall().now(), ZoneId.of("UTC"), /* seed= */ 5);
    try (TcpOutlet outlet = TcpOutlet.listen(0)) {
      LabFolder lab = lab(scenario, "tcp://" + outlet.address());
      Pacer pacer = send(scenario, outlet);
      for (int kill = 0; kill < 3; kill++) {
        String specimen = scenario.today().get(kill).name();
        Process child = record(lab, specimen);
        Path raw = awaitRaw(lab, specimen, /* moreThanBytes= */ 15_000 + 4_000 * kill);
        if (kill == 0) {
          assertSecondIsRefused(lab, child);
        }
        child.destroyForcibly();
        assertThat(child.waitFor(20, TimeUnit.SECONDS)).isTrue();
        assertThat(child.exitValue()).isNotZero();
        assertThat(RigLock.isTaken(lab, RIG)).as("the rig is free again").isFalse();
        byte[] left = Files.readAllBytes(raw);
        assertThat(
                Platenwire.commandLine()
                    .execute("recover", "--lab", lab.root().toString(), "--keys", keys()))
            .isEqualTo(ExitCode.FINE);
        assertRecovered(raw, left);
        RegisterCheck register = RegisterCheck.of(lab, RIG);
        assertThat(register.findings()).isEmpty();
        assertThat(register.lines()).hasSize(kill + 1);
      }
      pacer.stop();
    }
  }

  private static void assertSecondIsRefused(LabFolder lab, Process child) throws Exception {
    assertThatThrownBy(() -> RigLock.take(lab, RIG, "me"))
        .isInstanceOf(LabException.class)
        .hasMessageContaining("process " + child.pid())
        .hasMessageContaining("since ");
  }

  private static void assertRecovered(Path raw, byte[] left) throws Exception {
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
                pacer.atTruePace(
                    scenario.test(scenario.today().get(0), DemoTest.indicator()),
                    SystemClocks.monotonic(),
                    Waiter.parking());
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
    command.add("-cp");
    command.add(
        System.getProperty("surefire.test.class.path", System.getProperty("java.class.path")));
    command.add(Platenwire.class.getName());
    command.addAll(List.of("record", specimen, "--unattended", "--reason", "a drill"));
    command.addAll(List.of("--lab", lab.root().toString(), "--keys", keys()));
    return new ProcessBuilder(command)
        .redirectErrorStream(true)
        .redirectOutput(folder.resolve(specimen + ".txt").toFile())
        .start();
  }

  private Path awaitRaw(LabFolder lab, String specimen, long moreThanBytes) throws Exception {
    List<Path> found = new ArrayList<>();
    awaitTrue(
        specimen,
        () -> {
          found.clear();
          try {
            for (Path raw : lab.records()) {
              if (raw.toString().contains(specimen) && Files.size(raw) > moreThanBytes) {
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
