package io.github.platenwire.emulate;

import io.github.platenwire.reading.MonotonicClock;
import io.github.platenwire.reading.WallClock;
import java.time.Instant;
import java.util.concurrent.atomic.AtomicLong;

/**
 * A clock that stands still until it is told how late it is, and never goes back.
 *
 * <p>Contract between sender and reader: bytes are handed over first, then the clock is advanced to
 * their stamp. Who reads the clock first and then finds its queue empty has seen everything up to
 * the time it read.
 *
 * <p>Safe for any number of threads.
 */
public final class EmulatedClock implements MonotonicClock, WallClock {
  private final Instant start;
  private final AtomicLong nanos = new AtomicLong();

  /**
   * Stops a clock at a time of day, with zero elapsed.
   *
   * @param start the time of day at zero
   */
  public EmulatedClock(Instant start) {
    this.start = start;
  }

  /** Nanoseconds since the start. */
  @Override
  public long nanos() {
    return nanos.get();
  }

  /** The time of day: the start and what has elapsed since. */
  @Override
  public Instant now() {
    return start.plusNanos(nanos());
  }

  /**
   * Moves forward; a time already passed changes nothing.
   *
   * @param toNanos nanoseconds since the start
   */
  public void advanceTo(long toNanos) {
    nanos.accumulateAndGet(toNanos, Math::max);
  }
}
