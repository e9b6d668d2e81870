package io.github.platenwire.recorder;

import io.github.platenwire.reading.MonotonicClock;
import io.github.platenwire.reading.SystemClocks;
import io.github.platenwire.reading.WallClock;

/**
 * The clocks of one recording. Immutable.
 *
 * @param monotonic stamps readings; the ports must use the same one
 * @param wall tells the time of day
 * @param stopwatch measures how long the disk takes; the machine's own clock even where the other
 *     two are emulated
 */
public record RecorderClocks(MonotonicClock monotonic, WallClock wall, MonotonicClock stopwatch) {
  /** The machine's own clocks. */
  public static RecorderClocks system() {
    return new RecorderClocks(
        SystemClocks.monotonic(), SystemClocks.wall(), SystemClocks.monotonic());
  }
}
