package io.github.platenwire.cli;

import io.github.platenwire.port.Ports;
import io.github.platenwire.recorder.Recording;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;

/**
 * Ends a recording in order when the program is told to end (Ctrl-C, a termination signal): stops
 * it with reason {@code operator} and holds the process until its summary is written, at most ten
 * seconds.
 */
final class OrderlyEnd implements AutoCloseable {
  private static final long PATIENCE_SECONDS = 9;

  private final CountDownLatch written = new CountDownLatch(1);
  private final Thread ending;
  private volatile boolean ordered;

  OrderlyEnd(Recording recording) {
    this.ending = new Thread(() -> end(recording), "platenwire-end");
    Ports.beforeSerialShutdown(ending);
  }

  private void end(Recording recording) {
    ordered = true;
    recording.stop();
    try {
      if (!written.await(PATIENCE_SECONDS, TimeUnit.SECONDS)) {
        System.err.println(
            "platenwire: the record could not be closed in time; it will be recovered");
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  /** Whether the program was told to end. */
  boolean wasOrdered() {
    return ordered;
  }

  /** All is written: the process may end. */
  @Override
  public void close() {
    written.countDown();
    if (!ordered) {
      Ports.forgetSerialShutdown(ending);
    }
  }
}
