package io.github.platenwire.reading;

import java.time.Instant;

/**
 * Tells the time of day; may be stepped by whoever sets the machine's clock. Safe for use by any
 * thread.
 */
@FunctionalInterface
public interface WallClock {
  /** The time now. */
  Instant now();
}
