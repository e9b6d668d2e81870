package io.github.platenwire.cli;

import io.github.platenwire.emulate.DemoScenario;
import io.github.platenwire.emulate.DemoSpecimen;
import io.github.platenwire.emulate.EmulatedFrame;
import io.github.platenwire.emulate.EmulatedIndicator;
import io.github.platenwire.emulate.LineLayout;
import io.github.platenwire.emulate.Pacer;
import io.github.platenwire.emulate.TruthSummary;
import io.github.platenwire.lab.LabException;
import io.github.platenwire.lab.LabFolder;
import io.github.platenwire.method.BreakPosition;
import io.github.platenwire.record.Observations;
import io.github.platenwire.record.Summary;
import io.github.platenwire.recorder.ChecklistItem;
import io.github.platenwire.recorder.LabTest;
import io.github.platenwire.recorder.RecordedTest;
import io.github.platenwire.recorder.Recording;
import io.github.platenwire.recorder.TestSummary;
import io.github.platenwire.terminal.LiveFace;
import io.github.platenwire.terminal.TestFacts;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Path;
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
  private final String rig;
  private final DemoScenario scenario;
  private final DemoSpecimen specimen;
  private final Face face;

  DemoTest(LabFolder lab, String rig, DemoScenario scenario, DemoSpecimen specimen, Face face) {
    this.lab = lab;
    this.rig = rig;
    this.scenario = scenario;
    this.specimen = specimen;
    this.face = face;
  }

  DemoResult run(DemoBench bench)
      throws LabException, IOException, InterruptedException, CommandException {
    EmulatedFrame frame = scenario.test(specimen, indicator());
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
      throws LabException, IOException, CommandException {
    List<ChecklistItem> checklist = test.check(/* attended= */ false, Optional.empty(), PATIENCE);
    if (!LabTest.mayStart(checklist)) {
      face.checklist(checklist);
      throw new CommandException(ExitCode.NOT_MET, "the demo's own checklist failed");
    }
    TestFacts facts = new TestFacts(specimen.name(), specimen.series(), rig, "");
    try (LiveFace live = face.live(facts, Duration.ofSeconds(10))) {
      Recording recording =
          test.start(
              checklist,
              Optional.empty(),
              Optional.of("demo"),
              Optional.of(PATIENCE),
              Version.text(),
              progress -> live.show(Face.frame(progress)));
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
        Summary summary =
            TestSummary.write(test, recorded, Observations.NONE, BreakPosition.NOT_RECORDED);
        Path name = recorded.file();
        return new DemoResult(specimen.name(), summary, TruthSummary.of(frame), name);
      }
    }
  }

  private static EmulatedIndicator indicator() {
    return EmulatedIndicator.perfect(LineLayout.KILONEWTONS, new BigDecimal("0.01"), 1_500_000, 50)
        .withNoiseAndZero(15, 60)
        .withJitterAndBursts(0.1, EmulatedIndicator.ADAPTER_BURST_NANOS);
  }
}
