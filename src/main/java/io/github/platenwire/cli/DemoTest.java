package io.github.platenwire.cli;

import io.github.platenwire.emulate.DemoScenario;
import io.github.platenwire.emulate.DemoSpecimen;
import io.github.platenwire.emulate.EmulatedCylinder;
import io.github.platenwire.emulate.EmulatedFrame;
import io.github.platenwire.emulate.EmulatedIndicator;
import io.github.platenwire.emulate.LineLayout;
import io.github.platenwire.emulate.Pacer;
import io.github.platenwire.emulate.TruthSummary;
import io.github.platenwire.lab.LabException;
import io.github.platenwire.lab.LabFolder;
import io.github.platenwire.lab.Register;
import io.github.platenwire.method.AggregateBreak;
import io.github.platenwire.method.BreakPosition;
import io.github.platenwire.method.FractureType;
import io.github.platenwire.record.Observations;
import io.github.platenwire.recorder.ChecklistItem;
import io.github.platenwire.recorder.LabTest;
import io.github.platenwire.recorder.Progress;
import io.github.platenwire.recorder.RecordedTest;
import io.github.platenwire.recorder.Recording;
import io.github.platenwire.recorder.TestClose;
import io.github.platenwire.toml.TomlException;
import java.io.IOException;
import java.math.BigDecimal;
import java.time.Duration;
import java.util.List;
import java.util.Optional;

/**
 * One cylinder of the demo, through the same steps as a real test. Confined to the command's
 * thread.
 */
final class DemoTest {
  /** The shipped definition of the emulated indicator's lines. */
  static final String DEVICE = "signed-line-kn";

  private static final String METHOD = "compression-cylinder-c39";
  private static final Duration PATIENCE = Duration.ofSeconds(20);

  /** Before this moment the frame stands idle, and the checklist has its readings. */
  private static final long HOLD_NANOS = 3_000_000_000L;

  private final LabFolder lab;
  private final Register register;
  private final String rig;
  private final DemoScenario scenario;
  private final DemoSpecimen specimen;
  private final Face face;
  private final boolean watched;

  DemoTest(
      LabFolder lab,
      Register register,
      DemoScenario scenario,
      DemoSpecimen specimen,
      Face face,
      boolean watched) {
    this.watched = watched;
    this.lab = lab;
    this.register = register;
    this.rig = register.rig();
    this.scenario = scenario;
    this.specimen = specimen;
    this.face = face;
  }

  DemoResult run(DemoBench bench)
      throws LabException, TomlException, IOException, InterruptedException, CommandException {
    return run(bench, indicator());
  }

  /** The same with another indicator. */
  DemoResult run(DemoBench bench, EmulatedIndicator indicator)
      throws LabException, TomlException, IOException, InterruptedException, CommandException {
    EmulatedFrame frame = scenario.test(specimen, indicator);
    HeldStream stream = new HeldStream(frame, HOLD_NANOS);
    try (LabTest test =
        LabTest.open(lab, rig, specimen.name(), METHOD, bench.openers(), bench.clocks())) {
      Pacer pacer = bench.send(stream);
      try {
        return record(test, stream, frame);
      } finally {
        pacer.stop();
        stream.release();
        bench.endTest();
      }
    }
  }

  private DemoResult record(LabTest test, HeldStream stream, EmulatedFrame frame)
      throws LabException, TomlException, IOException, CommandException {
    List<ChecklistItem> checklist = test.check(/* attended= */ false, Optional.empty(), PATIENCE);
    if (!LabTest.mayStart(checklist)) {
      face.checklist(checklist);
      throw new CommandException(ExitCode.NOT_MET, "the demo's own checklist failed");
    }
    try (RunningView live = new RunningView(face, test, Duration.ofSeconds(10))) {
      Recording recording =
          test.start(
              checklist,
              Optional.empty(),
              Optional.of("demo"),
              Optional.of(PATIENCE),
              Version.text(),
              progress -> show(live, progress));
      stream.release();
      try (OrderlyEnd end = new OrderlyEnd(recording)) {
        RecordedTest recorded = recording.await();
        live.close();
        if (recorded.failure().isPresent() || end.wasOrdered()) {
          throw new CommandException(
              recorded.failure().isPresent() ? ExitCode.DEVICE : ExitCode.INTERRUPTED,
              recorded
                  .failure()
                  .map(RecordedTest.Failure::words)
                  .orElse("the demo was ended; its record is closed"));
        }
        TestClose.Closed closed =
            new TestClose(lab, register).close(test.method(), recorded, seen());
        closed.notices().forEach(face::line);
        return new DemoResult(specimen, closed.summary(), TruthSummary.of(frame), closed.line());
      }
    }
  }

  /** What the demo's operator writes down. */
  private Observations seen() {
    boolean brittle =
        specimen.cylinder().orElseThrow().breakKind() == EmulatedCylinder.BreakKind.BRITTLE;
    FractureType fracture = brittle ? FractureType.TYPE_3 : FractureType.TYPE_2;
    AggregateBreak aggregate =
        specimen.breaksThroughAggregate() ? AggregateBreak.THROUGH : AggregateBreak.AROUND;
    return new Observations(
        Optional.of(Integer.toString(fracture.number())),
        Optional.of(fracture.words()),
        Optional.of(aggregate.key()),
        Optional.empty(),
        BreakPosition.NOT_RECORDED);
  }

  /** On an emulated clock a test is over within a blink: there is nothing to watch. */
  private void show(RunningView live, Progress progress) {
    if (watched) {
      live.show(progress);
    }
  }

  static EmulatedIndicator indicator() {
    return EmulatedIndicator.perfect(LineLayout.KILONEWTONS, new BigDecimal("0.01"), 1_500_000, 50)
        .withNoiseAndZero(15, 60)
        .withJitterAndBursts(0.1, EmulatedIndicator.ADAPTER_BURST_NANOS);
  }
}
