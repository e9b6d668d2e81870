package io.github.platenwire.cli;

import io.github.platenwire.commission.Prober;
import io.github.platenwire.reading.MonotonicClock;
import java.util.concurrent.TimeUnit;

/**
 * Says what is being tried once it has taken longer than a second: on a terminal in one line that
 * is written over, else every ten seconds. Confined to one thread.
 */
final class ProbeProgress implements Prober.Progress, AutoCloseable {
  private static final long PATIENCE_NANOS = TimeUnit.SECONDS.toNanos(1);
  private static final long PLAIN_NANOS = TimeUnit.SECONDS.toNanos(10);

  private final Face face;
  private final String port;
  private final MonotonicClock clock;
  private final long begunNanos;
  private long saidNanos;
  private boolean said;

  ProbeProgress(Face face, String port, MonotonicClock clock) {
    this.face = face;
    this.port = port;
    this.clock = clock;
    this.begunNanos = clock.nanos();
    this.saidNanos = begunNanos;
  }

  @Override
  public void step(int step, int steps, String words) {
    long now = clock.nanos();
    boolean due =
        now - begunNanos >= PATIENCE_NANOS
            && (face.redraws() || !said || now - saidNanos >= PLAIN_NANOS);
    if (due) {
      saidNanos = now;
      said = true;
      face.over(port + ": " + step + " of at most " + steps + ", " + words + " …");
    }
  }

  @Override
  public void close() {
    if (said) {
      face.over("");
    }
  }
}
