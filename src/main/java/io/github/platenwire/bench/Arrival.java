package io.github.platenwire.bench;

import io.github.platenwire.recorder.Progress;
import io.github.platenwire.recorder.RecordingListener;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;

/**
 * Waits until so many readings have been shown. Told on the recorder thread, waited for on another.
 */
final class Arrival implements RecordingListener {
  private static final long PATIENCE_SECONDS = 120;

  private final AtomicLong shown = new AtomicLong();
  private volatile Goal goal = new Goal(Long.MAX_VALUE, new CountDownLatch(1));

  private record Goal(long readings, CountDownLatch reached) {}

  @Override
  public void written(Progress progress) {
    shown.set(progress.readings());
    tell();
  }

  /** How many have been shown so far. */
  long shown() {
    return shown.get();
  }

  /**
   * Waits for so many in all.
   *
   * @throws BenchException if they do not come
   */
  void await(long readings) throws BenchException, InterruptedException {
    Goal wanted = new Goal(readings, new CountDownLatch(1));
    goal = wanted;
    tell();
    if (!wanted.reached().await(PATIENCE_SECONDS, TimeUnit.SECONDS)) {
      throw new BenchException(
          "only "
              + shown.get()
              + " of "
              + readings
              + " readings came within "
              + PATIENCE_SECONDS
              + " s");
    }
  }

  private void tell() {
    Goal wanted = goal;
    if (shown.get() >= wanted.readings()) {
      wanted.reached().countDown();
    }
  }
}
