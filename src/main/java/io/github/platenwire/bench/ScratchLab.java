package io.github.platenwire.bench;

import io.github.platenwire.emulate.DemoBeam;
import io.github.platenwire.emulate.DemoScenario;
import io.github.platenwire.lab.LabException;
import io.github.platenwire.lab.LabFolder;
import io.github.platenwire.lab.LabTemplate;
import io.github.platenwire.lab.PrivateKeys;
import io.github.platenwire.lab.Register;
import io.github.platenwire.quantity.UnitSystem;
import io.github.platenwire.reading.SystemClocks;
import io.github.platenwire.record.Observations;
import io.github.platenwire.recorder.ChecklistItem;
import io.github.platenwire.recorder.LabTest;
import io.github.platenwire.recorder.OpenerFactory;
import io.github.platenwire.recorder.RecordedTest;
import io.github.platenwire.recorder.RecorderClocks;
import io.github.platenwire.recorder.Recording;
import io.github.platenwire.recorder.RecordingListener;
import io.github.platenwire.recorder.TestClose;
import io.github.platenwire.toml.TomlException;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.ZoneId;
import java.util.Comparator;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * A lab folder to measure in, with a load frame of one channel and a beam frame of three. It is
 * taken away again in the end. Confined to one thread.
 */
final class ScratchLab implements AutoCloseable {
  static final String FRAME = "frame-1";
  static final String COMPRESSION = "compression-cylinder-c39";
  static final String SPLIT_BEAM = "split-beam";
  private static final String DEVICE = "signed-line-kn";
  private static final String PORT = "memory:bench";
  private static final Duration PATIENCE = Duration.ofSeconds(20);

  private final Path folder;
  private final LabFolder lab;
  private final PrivateKeys keys;
  private final DemoScenario scenario;
  private final String program;
  private int tests;

  private ScratchLab(
      Path folder, LabFolder lab, PrivateKeys keys, DemoScenario scenario, String program) {
    this.folder = folder;
    this.lab = lab;
    this.keys = keys;
    this.scenario = scenario;
    this.program = program;
  }

  /**
   * Makes one.
   *
   * @param parent where; what is measured is the disk below it
   * @param program name and version, for the records' heads
   */
  static ScratchLab make(Path parent, String program) throws IOException, LabException {
    Path folder = Files.createTempDirectory(parent, "platenwire-bench-");
    ZoneId zone = ZoneId.of("UTC");
    DemoScenario scenario = new DemoScenario(SystemClocks.wall().now(), zone, /* seed= */ 1);
    LabTemplate template =
        LabTemplate.example("Bench", zone, UnitSystem.SI)
            .withRigs(
                Map.of(
                    FRAME, scenario.rigText(FRAME, PORT, DEVICE), DemoBeam.RIG, DemoBeam.rigText()))
            .withSpecimens(scenario.specimensText())
            .withStudy(scenario.studyText());
    LabFolder lab = LabFolder.create(folder.resolve("lab"), template);
    for (Map.Entry<String, String> file : scenario.calibrationTexts().entrySet()) {
      Files.writeString(
          lab.root().resolve("calibrations").resolve(file.getKey() + ".toml"), file.getValue());
    }
    return new ScratchLab(folder, lab, new PrivateKeys(folder.resolve("keys")), scenario, program);
  }

  LabFolder lab() {
    return lab;
  }

  /** A file beside the lab folder, on the same disk. */
  Path file(String name) {
    return folder.resolve(name);
  }

  /** Opens the load frame with its next specimen. */
  LabTest openFrame(OpenerFactory openers, RecorderClocks clocks) throws LabException, IOException {
    String specimen = scenario.today().get(tests++ % scenario.today().size()).name();
    return LabTest.open(lab, FRAME, specimen, COMPRESSION, openers, clocks);
  }

  /** Opens the beam frame with its next beam. */
  LabTest openBeams(OpenerFactory openers) throws LabException, IOException {
    String beam = DemoBeam.ALL.get(tests++ % DemoBeam.ALL.size()).name();
    return LabTest.open(lab, DemoBeam.RIG, beam, SPLIT_BEAM, openers, RecorderClocks.system());
  }

  /** Goes through the checklist and starts to record. */
  Recording start(LabTest test, RecordingListener listener)
      throws LabException, IOException, BenchException {
    Optional<String> reason = Optional.of("measuring this machine");
    var checklist = test.check(/* attended= */ false, reason, PATIENCE);
    for (ChecklistItem item : checklist) {
      if (item.state() == ChecklistItem.State.FAILED) {
        throw new BenchException("the checklist failed: " + item.name() + ", " + item.seen());
      }
    }
    return test.start(
        checklist, reason, Optional.empty(), Optional.of(PATIENCE), program, listener);
  }

  /** Closes a test as every test is closed: summary, register line. */
  void close(LabTest test, RecordedTest recorded) throws LabException, TomlException, IOException {
    Register register = Register.open(lab, test.rig().name(), keys, SystemClocks.wall());
    new TestClose(lab, register).close(test.method(), recorded, Observations.NONE);
  }

  /** Takes everything away. */
  @Override
  public void close() throws IOException {
    try (Stream<Path> all = Files.walk(folder)) {
      all.sorted(Comparator.reverseOrder())
          .forEach(
              path -> {
                try {
                  Files.delete(path);
                } catch (IOException e) {
                  throw new UncheckedIOException(e);
                }
              });
    }
  }
}
