package io.github.platenwire.emulate;

import io.github.platenwire.reading.MonotonicClock;
import java.io.IOException;

/**
 * Lets an emulated device answer whoever asks it, over an outlet that stays open. Confined to one
 * thread; only {@link #stop} may be called from another.
 */
public final class Answerer {
  private final TwoWayOutlet outlet;
  private volatile boolean stopped;

  /**
   * Answers over an outlet.
   *
   * @param outlet where questions come from and answers go
   */
  public Answerer(TwoWayOutlet outlet) {
    this.outlet = outlet;
  }

  /**
   * Answers until the test is over. The test begins with the first bytes that come.
   *
   * @param frame the device
   * @param clock the time
   * @param begins told when the test begins
   * @return whether it went on to the end; otherwise it was stopped
   * @throws IOException if the outlet fails
   */
  public boolean answer(AskedFrame frame, MonotonicClock clock, Runnable begins)
      throws IOException {
    byte[] heard = outlet.receive();
    while (heard.length == 0 && !isStopped()) {
      heard = outlet.receive();
    }
    long start = clock.nanos();
    if (heard.length > 0) {
      begins.run();
    }
    long now = 0;
    while (now < frame.endNanos() && !isStopped()) {
      byte[] said = frame.hear(heard, now);
      if (said.length > 0) {
        outlet.send(said, 0, said.length, start + now);
      }
      heard = outlet.receive();
      now = clock.nanos() - start;
    }
    return !isStopped();
  }

  /** Ends the answering within about 0.1 s. Safe from any thread. */
  public void stop() {
    stopped = true;
  }

  private boolean isStopped() {
    return stopped || Thread.currentThread().isInterrupted();
  }
}
