package io.github.platenwire.recorder;

import io.github.platenwire.reading.MonotonicClock;
import io.github.platenwire.record.RawFileWriter;
import java.io.IOException;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Forces a raw file to the disk at most a quarter of a second apart, on a thread of its own, so
 * that a slow disk never holds up the writing. The first failure ends it and is kept: a failed
 * force is never tried again as if nothing had happened.
 */
final class Forcer implements AutoCloseable {
  private static final long EVERY_NANOS = TimeUnit.MILLISECONDS.toNanos(200);

  private static final Logger LOG = LoggerFactory.getLogger(Forcer.class);

  private final RawFileWriter writer;
  private final MonotonicClock stopwatch;
  private final Thread thread;
  private volatile boolean ended;
  private volatile boolean news;
  private volatile @Nullable IOException failure;
  private volatile long slowestNanos;

  private Forcer(RawFileWriter writer, MonotonicClock stopwatch) {
    this.writer = writer;
    this.stopwatch = stopwatch;
    this.thread = new Thread(this::run, "platenwire-force");
    thread.setDaemon(true);
  }

  static Forcer start(RawFileWriter writer, MonotonicClock stopwatch) {
    Forcer forcer = new Forcer(writer, stopwatch);
    forcer.thread.start();
    return forcer;
  }

  private void run() {
    while (!ended && failure == null) {
      LockSupport.parkNanos(this, EVERY_NANOS);
      if (news && !ended) {
        news = false;
        force();
      }
    }
  }

  private void force() {
    long from = stopwatch.nanos();
    try {
      writer.force();
    } catch (IOException e) {
      failure = e;
    }
    slowestNanos = Math.max(slowestNanos, stopwatch.nanos() - from);
  }

  /** Something was written since. */
  void written() {
    news = true;
  }

  /** The failure that ended it, if there was one. */
  Optional<IOException> failure() {
    return Optional.ofNullable(failure);
  }

  /** The slowest force since last asked, in nanoseconds. */
  long takeSlowestNanos() {
    long slowest = slowestNanos;
    slowestNanos = 0;
    return slowest;
  }

  /** Ends the thread and waits until it is out of the file. */
  @Override
  public void close() {
    ended = true;
    LockSupport.unpark(thread);
    while (thread.isAlive()) {
      try {
        thread.join();
      } catch (InterruptedException e) {
        LOG.debug("a wait for the disk was cut short; waiting on", e);
      }
    }
  }
}
