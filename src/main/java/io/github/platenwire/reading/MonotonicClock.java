package io.github.platenwire.reading;

/** Measures elapsed time; its zero has no meaning. Safe for use by any thread. */
@FunctionalInterface
public interface MonotonicClock {
  /** Nanoseconds since an arbitrary origin, never falling. */
  long nanos();
}
