package io.github.platenwire.port;

import io.github.platenwire.reading.SystemClocks;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;

/** Waits for what another thread or the system is about to do, at most 10 s. */
final class Eventually {
  private static final long LIMIT_NANOS = TimeUnit.SECONDS.toNanos(10);

  private Eventually() {}

  static void holds(BooleanSupplier condition) {
    long begunNanos = SystemClocks.monotonic().nanos();
    while (!condition.getAsBoolean()) {
      if (SystemClocks.monotonic().nanos() - begunNanos > LIMIT_NANOS) {
        throw new AssertionError("did not come true within 10 s");
      }
      Thread.onSpinWait();
    }
  }
}
