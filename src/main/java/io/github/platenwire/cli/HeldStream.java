package io.github.platenwire.cli;

import io.github.platenwire.emulate.TimedBytes;
import java.util.Iterator;
import java.util.concurrent.CountDownLatch;

/**
 * Holds an emulated test back at a moment until the recording has started: an operator does not
 * load before that either. On an emulated clock nothing else would keep the test from being over by
 * then.
 */
final class HeldStream implements Iterator<TimedBytes> {
  private final Iterator<TimedBytes> stream;
  private final long holdNanos;
  private final CountDownLatch released = new CountDownLatch(1);
  private boolean held;

  HeldStream(Iterator<TimedBytes> stream, long holdNanos) {
    this.stream = stream;
    this.holdNanos = holdNanos;
  }

  /** Lets it go on. Any thread. */
  void release() {
    released.countDown();
  }

  @Override
  public boolean hasNext() {
    return stream.hasNext();
  }

  @Override
  public TimedBytes next() {
    TimedBytes next = stream.next();
    if (!held && next.nanos() >= holdNanos) {
      held = true;
      try {
        released.await();
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
      }
    }
    return next;
  }
}
