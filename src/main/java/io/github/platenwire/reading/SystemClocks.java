package io.github.platenwire.reading;

import java.time.Instant;

/** The machine's own clocks; the only place that asks the system for the time. Stateless. */
public final class SystemClocks {
  private SystemClocks() {}

  /** The machine's monotonic clock. */
  public static MonotonicClock monotonic() {
    return System::nanoTime;
  }

  /** The machine's time of day. */
  public static WallClock wall() {
    return Instant::now;
  }
}
