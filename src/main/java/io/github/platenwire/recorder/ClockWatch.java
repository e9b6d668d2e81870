package io.github.platenwire.recorder;

import io.github.platenwire.reading.MonotonicClock;
import io.github.platenwire.reading.WallClock;
import java.time.Duration;
import java.time.Instant;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.TimeUnit;

/** Notices when somebody sets the time of day while a test runs. Not thread-safe. */
final class ClockWatch {
  private static final long LOOK_EVERY_NANOS = TimeUnit.SECONDS.toNanos(1);

  /** Slow steering of a clock by a time service stays far below this in a second. */
  private static final double STEP_SECONDS = 0.5;

  private final WallClock wall;
  private final MonotonicClock monotonic;
  private Instant lastWall;
  private long lastNanos;

  ClockWatch(WallClock wall, MonotonicClock monotonic) {
    this.wall = wall;
    this.monotonic = monotonic;
    this.lastNanos = monotonic.nanos();
    this.lastWall = wall.now();
  }

  /** The text of a {@code clock step} event, if the clock was stepped since the last look. */
  Optional<String> look() {
    long before = monotonic.nanos();
    if (before - lastNanos < LOOK_EVERY_NANOS) {
      return Optional.empty();
    }
    Instant now = wall.now();
    // The two clocks cannot be read at one moment: what passed between the readings is no step.
    double between = (monotonic.nanos() - before) / 1e9;
    double step = Duration.between(lastWall, now).toNanos() / 1e9 - (before - lastNanos) / 1e9;
    lastWall = now;
    lastNanos = before;
    return Math.abs(step) < STEP_SECONDS + between
        ? Optional.empty()
        : Optional.of(String.format(Locale.ROOT, "clock step %.1f s", step));
  }
}
