package io.github.platenwire.cli;

import io.github.platenwire.lab.LabException;
import io.github.platenwire.method.GhostCurve;
import io.github.platenwire.recorder.GhostFinder;
import io.github.platenwire.recorder.LabTest;
import io.github.platenwire.recorder.Progress;
import io.github.platenwire.terminal.LiveFace;
import io.github.platenwire.terminal.TestFacts;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * The running test on the screen; begins with the first progress, which names the file. Called by
 * the recorder thread; {@link #close} by any.
 */
final class RunningView implements AutoCloseable {
  private final Face face;
  private final LabTest test;
  private final Duration lineEvery;
  private final Optional<GhostCurve> ghost;
  private @Nullable LiveFace shown;

  RunningView(Face face, LabTest test, Duration lineEvery) throws LabException, IOException {
    this.face = face;
    this.test = test;
    this.lineEvery = lineEvery;
    this.ghost = GhostFinder.of(test.lab(), test.specimen(), test.method().name());
  }

  synchronized void show(Progress progress) {
    if (shown == null) {
      Path name = progress.file().getFileName();
      shown =
          face.live(
              new TestFacts(
                  test.specimen().name(),
                  test.specimen().series(),
                  test.rig().name(),
                  name == null ? "" : name.toString()),
              lineEvery,
              progress.view().front().isPresent());
    }
    shown.show(Face.frame(progress, ghost));
  }

  @Override
  public synchronized void close() {
    if (shown != null) {
      shown.close();
    }
  }
}
