package io.github.platenwire.cli;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.platenwire.audit.Audit;
import io.github.platenwire.audit.AuditReport;
import io.github.platenwire.audit.Finding;
import io.github.platenwire.audit.Scope;
import io.github.platenwire.audit.Severity;
import io.github.platenwire.emulate.DemoScenario;
import io.github.platenwire.emulate.EmulatedIndicator;
import io.github.platenwire.emulate.LineLayout;
import io.github.platenwire.faults.FaultyDisk;
import io.github.platenwire.lab.LabException;
import io.github.platenwire.lab.LabFolder;
import io.github.platenwire.lab.LabTemplate;
import io.github.platenwire.lab.PrivateKeys;
import io.github.platenwire.lab.Register;
import io.github.platenwire.lab.RegisterCheck;
import io.github.platenwire.quantity.UnitSystem;
import io.github.platenwire.reading.SystemClocks;
import io.github.platenwire.record.DiskFolder;
import io.github.platenwire.recorder.LabRecovery;
import io.github.platenwire.recorder.SummaryCheck;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * A whole test, from its checklist to its line in the register, on a disk that fails at any one of
 * its steps, or that forgets whatever was not forced, file names included. The usual run tries
 * every step at the beginning and at the end and some in between; {@code -Dplatenwire.faults=all}
 * tries each.
 */
@Timeout(1200)
class StorageFaultsTest {
  private static final boolean ALL = "all".equals(System.getProperty("platenwire.faults"));
  private static final Instant START = Instant.parse("2026-11-25T07:00:00Z");
  private static final String RIG = "frame-1";
  private static final int FIRST_STEPS = 14;
  private static final int LAST_STEPS = 20;

  @TempDir private Path folder;
  private PrivateKeys keys;
  private int labs;

  @BeforeEach
  void keepKeysAside() {
    keys = new PrivateKeys(folder.resolve("keys"));
  }

  /** Five readings a second are enough to see what the disk does. */
  private static EmulatedIndicator slowIndicator() {
    return EmulatedIndicator.perfect(LineLayout.KILONEWTONS, new BigDecimal("0.01"), 1_500_000, 5)
        .withNoiseAndZero(15, 60);
  }

  private static DemoScenario scenario() {
    return new DemoScenario(START, ZoneOffset.UTC, 3);
  }

  private FaultyDisk newLab() throws Exception {
    DemoScenario scenario = scenario();
    Path root = folder.resolve("lab-" + labs++);
    try (DemoBench bench = DemoBench.fast(START)) {
      LabFolder.create(
          root,
          LabTemplate.example("Weir lab", ZoneOffset.UTC, UnitSystem.SI)
              .withRigs(Map.of(RIG, scenario.rigText(RIG, bench.port(), DemoTest.DEVICE)))
              .withSpecimens(scenario.specimensText())
              .withStudy(scenario.studyText())
              .withFile(
                  "calibrations/" + DemoScenario.CALIBRATION_NAME + ".toml",
                  scenario.calibrationText()));
    }
    Register.open(LabFolder.open(root), RIG, keys, SystemClocks.wall());
    return new FaultyDisk(root);
  }

  /** Runs one test; whether it went through. */
  private boolean test(FaultyDisk disk) throws Exception {
    try (DemoBench bench = DemoBench.fast(START)) {
      LabFolder lab = LabFolder.open(disk.root());
      Register register = Register.open(lab, RIG, keys, SystemClocks.wall());
      new DemoTest(
              lab,
              register,
              scenario(),
              scenario().today().get(0),
              Face.standard(UnitSystem.SI),
              /* watched= */ false)
          .run(bench, slowIndicator());
      return true;
    } catch (CommandException | IOException | LabException e) {
      assertThat(e.getMessage()).as("what the operator is told").isNotBlank();
      return false;
    }
  }

  private void recover(LabFolder lab, String what) throws Exception {
    List<LabRecovery.Report> reports =
        new LabRecovery(lab, keys, SystemClocks.wall(), new DiskFolder(), Set.of()).all();
    assertThat(reports).as(what).allMatch(LabRecovery.Report::done);
  }

  /** After a recovery: every record closed, summarised and signed, and no fault anywhere. */
  private void assertInOrder(LabFolder lab, String what) throws Exception {
    Audit.Settings settings =
        new Audit.Settings(
            Scope.ARCHIVE, 1, Set.of(), List.of(), "test", SystemClocks.wall().now());
    AuditReport report = Audit.of(lab, settings, (read, of) -> {});
    List<Finding> faults =
        report.findings().stream().filter(f -> f.severity() == Severity.FAULT).toList();
    assertThat(faults).as(what).isEmpty();
    assertThat(RegisterCheck.of(lab, RIG).findings()).as(what).isEmpty();
    List<Path> records = lab.records();
    assertThat(RegisterCheck.of(lab, RIG).lines()).as(what).hasSize(records.size());
    for (Path raw : records) {
      assertThat(SummaryCheck.of(raw).isEqual()).as(what).isTrue();
    }
  }

  private int stepsOfAWholeTest() throws Exception {
    FaultyDisk disk = newLab();
    disk.failOnceAt(Integer.MAX_VALUE, "never");
    assertThat(test(disk)).isTrue();
    return disk.steps().size();
  }

  private static boolean isTried(int step, int steps) {
    return ALL || step <= FIRST_STEPS || step > steps - LAST_STEPS || step % 23 == 0;
  }

  @Test
  void record_diskFailsOnceAtAnyStep_isInOrderAfterRecovery() throws Exception {
    int steps = stepsOfAWholeTest();
    for (int step = 1; step <= steps + 2; step++) {
      if (isTried(step, steps)) {
        FaultyDisk disk = newLab();
        disk.failOnceAt(step, "Input/output error");
        test(disk);
        String what = "step " + step + " of " + steps + ": " + disk.steps();
        disk.heal();
        LabFolder lab = LabFolder.open(disk.root());
        recover(lab, what);
        assertInOrder(lab, what);
      }
    }
  }

  @Test
  void record_diskFailsForEverFromAnyStep_isInOrderOnceItIsMended() throws Exception {
    int steps = stepsOfAWholeTest();
    for (int step = 1; step <= steps; step++) {
      if (isTried(step, steps)) {
        FaultyDisk disk = newLab();
        disk.failFrom(step, "No space left on device");
        boolean through = test(disk);
        String what = "from step " + step + " of " + steps + ": " + disk.steps();
        assertThat(through && disk.steps().size() > step + 3).as(what).isFalse();
        disk.heal();
        LabFolder lab = LabFolder.open(disk.root());
        recover(lab, what);
        assertInOrder(lab, what);
      }
    }
  }

  @Test
  void record_powerCutBeforeAnyStep_keepsTheRecordByNameAndRecovers() throws Exception {
    FaultyDisk disk = newLab();
    Path cuts = Files.createDirectory(folder.resolve("cuts"));
    disk.cutBeforeEachStepInto(cuts);
    assertThat(test(disk)).isTrue();
    List<String> steps = disk.steps();
    boolean rowsWritten = false;
    for (int step = 1; step <= steps.size(); step++) {
      rowsWritten |= step > 1 && isWriteAfterForce(steps, step - 2);
      if (!isTried(step, steps.size())) {
        continue;
      }
      LabFolder lab = LabFolder.open(cuts.resolve(String.valueOf(step)));
      String what = "before step " + step + ": " + steps.subList(0, step);
      if (rowsWritten) {
        assertThat(lab.records()).as("the raw file's name is kept, " + what).hasSize(1);
        assertThat(Files.size(lab.records().get(0))).as("its head is kept").isPositive();
      }
      recover(lab, what);
      assertInOrder(lab, what);
    }
    assertThat(steps).anyMatch(one -> one.contains(".summary.json"));
    assertThat(steps).anyMatch(one -> one.contains(RIG + ".jsonl"));
  }

  /** Whether a step writes to a raw file whose head was forced before: rows. */
  private static boolean isWriteAfterForce(List<String> steps, int index) {
    String step = steps.get(index);
    return step.startsWith("WRITE ")
        && step.endsWith(".raw.csv")
        && steps.subList(0, index).contains("FORCE" + step.substring("WRITE".length()));
  }
}
