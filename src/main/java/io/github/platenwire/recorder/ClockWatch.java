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

  /**
   * What may pass between the readings of the two clocks for them to count as read at one moment.
   */
  private static final long AT_ONCE_NANOS = TimeUnit.MILLISECONDS.toNanos(100);

  private final WallClock wall;
  private final MonotonicClock monotonic;
  private Optional<Look> last;

  /** Both clocks as they were at one moment. */
  private record Look(long nanos, Instant wall) {}

  ClockWatch(WallClock wall, MonotonicClock monotonic) {
    this.wall = wall;
    this.monotonic = monotonic;
    this.last = bothNow();
  }

  /** The text of a {@code clock step} event, if the clock was stepped since the last look. */
  Optional<String> look() {
    if (last.isPresent() && monotonic.nanos() - last.get().nanos() < LOOK_EVERY_NANOS) {
      return Optional.empty();
    }
    Optional<Look> now = bothNow();
    if (now.isEmpty()) {
      return Optional.empty();
    }
    Optional<String> step =
        last.map(before -> stepSeconds(before, now.get()))
            .filter(seconds -> Math.abs(seconds) >= STEP_SECONDS)
            .map(seconds -> String.format(Locale.ROOT, "clock step %.1f s", seconds));
    last = now;
    return step;
  }

  /**
   * Empty if the program was held up between the two readings: then they tell nothing, and the next
   * look must.
   */
  private Optional<Look> bothNow() {
    long nanos = monotonic.nanos();
    Instant time = wall.now();
    return monotonic.nanos() - nanos > AT_ONCE_NANOS
        ? Optional.empty()
        : Optional.of(new Look(nanos, time));
  }

  private static double stepSeconds(Look before, Look now) {
    return Duration.between(before.wall(), now.wall()).toNanos() / 1e9
        - (now.nanos() - before.nanos()) / 1e9;
  }
}
