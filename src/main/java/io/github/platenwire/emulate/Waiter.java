package io.github.platenwire.emulate;

import java.util.concurrent.locks.LockSupport;

/** Lets the calling thread wait; a test puts its own in. */
@FunctionalInterface
public interface Waiter {
  /**
   * Waits for about a time, or shorter: the caller looks at its clock and asks again.
   *
   * @param nanos how long, positive
   */
  void waitNanos(long nanos);

  /** Waits by parking the thread. Ends at once while the thread's interrupt flag is up. */
  static Waiter parking() {
    return LockSupport::parkNanos;
  }
}
