package io.github.platenwire.port;

import java.util.concurrent.TimeUnit;

/** How long to wait before the next attempt: 0.1 s, doubling up to 2 s. Not thread-safe. */
final class BackOff {
  private static final long FIRST_NANOS = TimeUnit.MILLISECONDS.toNanos(100);
  private static final long LONGEST_NANOS = TimeUnit.SECONDS.toNanos(2);

  private long nextNanos = FIRST_NANOS;

  long nextNanos() {
    long now = nextNanos;
    nextNanos = Math.min(2 * now, LONGEST_NANOS);
    return now;
  }

  void reset() {
    nextNanos = FIRST_NANOS;
  }
}
