package io.github.platenwire.recorder;

import io.github.platenwire.port.Chunk.Part;
import io.github.platenwire.reading.Quality;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.TimeUnit;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The one thread that takes what the links bring: before the start it looks and holds, from the
 * start on it records. Nobody interrupts it; it is ended by a flag that it sees within a few
 * milliseconds.
 *
 * <p>Its public face ({@link #preview}, {@link #record}, {@link #end}) may be called by any thread.
 */
final class RecorderThread {
  private static final Logger LOG = LoggerFactory.getLogger(RecorderThread.class);
  private static final long POLL_NANOS = TimeUnit.MILLISECONDS.toNanos(20);
  private static final int MOST_EVENTS_AT_ONCE = 16;

  private final List<ChannelSetup> channels;
  private final List<Source> sources;
  private final BlockingQueue<LinkEvent> queue;
  private final RecorderClocks clocks;
  private final List<LinkEvent> taken = new ArrayList<>();
  private final HeldEvents held = new HeldEvents();
  private final List<PreviewCounter> counters;
  private final Thread thread = new Thread(this::run, "platenwire-recorder");
  private final Object previewChanged = new Object();
  private volatile Preview preview;
  private volatile @Nullable StartOrder order;
  private volatile boolean ended;

  /** What the caller of {@link #record} wants, and where it waits for the answer. */
  private record StartOrder(
      RecordingPlan plan, RecordingListener listener, CompletableFuture<ActiveTest> started) {}

  RecorderThread(
      List<ChannelSetup> channels,
      List<Source> sources,
      BlockingQueue<LinkEvent> queue,
      RecorderClocks clocks) {
    this.channels = List.copyOf(channels);
    this.sources = sources;
    this.queue = queue;
    this.clocks = clocks;
    this.counters = channels.stream().map(channel -> new PreviewCounter()).toList();
    this.preview = snapshot();
    thread.setDaemon(true);
  }

  void start() {
    thread.start();
  }

  Preview preview() {
    return preview;
  }

  Preview awaitPreview(Predicate<Preview> enough, long atMostNanos) {
    long until = clocks.stopwatch().nanos() + atMostNanos;
    synchronized (previewChanged) {
      long left = atMostNanos;
      while (!enough.test(preview) && left > 0) {
        try {
          TimeUnit.NANOSECONDS.timedWait(previewChanged, left);
        } catch (InterruptedException e) {
          LOG.debug("a wait for readings was cut short", e);
          return preview;
        }
        left = until - clocks.stopwatch().nanos();
      }
      return preview;
    }
  }

  Recording record(RecordingPlan plan, RecordingListener listener) throws IOException {
    StartOrder mine = new StartOrder(plan, listener, new CompletableFuture<>());
    synchronized (this) {
      if (order != null || ended) {
        throw new IllegalStateException("a connection records one test");
      }
      order = mine;
    }
    try {
      return mine.started.join();
    } catch (CompletionException e) {
      if (e.getCause() instanceof IOException io) {
        throw io;
      }
      throw e;
    }
  }

  /** Ends whatever runs, in order, and waits for it. */
  void end() {
    ended = true;
    while (thread.isAlive()) {
      try {
        thread.join();
      } catch (InterruptedException e) {
        LOG.debug("a wait for the recorder was cut short; waiting on", e);
      }
    }
  }

  private void run() {
    StartOrder now = look();
    if (now == null) {
      return;
    }
    ActiveTest test;
    try {
      test = ActiveTest.start(now.plan, now.listener, channels, sources, clocks, held);
    } catch (IOException | RuntimeException e) {
      now.started.completeExceptionally(e);
      return;
    }
    now.started.complete(test);
    record(test);
  }

  /** Looks and holds until a test is ordered; null if ended before. */
  private @Nullable StartOrder look() {
    while (!ended) {
      StartOrder now = order;
      if (now != null) {
        return now;
      }
      take();
      for (LinkEvent event : taken) {
        held.add(event);
        preview(event);
      }
      if (!taken.isEmpty()) {
        publishPreview();
      }
    }
    return null;
  }

  private void record(ActiveTest test) {
    try {
      boolean stopping = false;
      int leftBeforeStop = 0;
      while (!test.isOver()) {
        if (ended) {
          test.stop();
        }
        // The clock is read before the queue is emptied: whatever came up to that time has then
        // been seen.
        long nowNanos = clocks.monotonic().nanos();
        if (test.isStopOrdered() && !stopping) {
          stopping = true;
          leftBeforeStop = queue.size();
        }
        take();
        leftBeforeStop -= stopping ? taken.size() : 0;
        // A stop waits for what had come when it was ordered, so that no reading is left behind;
        // not for more, or a device that floods could never be stopped.
        boolean mayStop = stopping && leftBeforeStop <= 0;
        test.step(taken, seenUpTo(nowNanos), mayStop);
      }
    } catch (RuntimeException e) {
      LOG.error("the recorder failed", e);
      test.fail(e);
    }
  }

  /**
   * While the queue holds more than could be taken at once, no later than the last of what was
   * taken: silence must not be read into a backlog.
   */
  private long seenUpTo(long nowNanos) {
    return taken.size() < MOST_EVENTS_AT_ONCE
        ? nowNanos
        : Math.min(nowNanos, taken.get(taken.size() - 1).atNanos());
  }

  private void take() {
    taken.clear();
    try {
      LinkEvent first = queue.poll(POLL_NANOS, TimeUnit.NANOSECONDS);
      if (first != null) {
        taken.add(first);
        queue.drainTo(taken, MOST_EVENTS_AT_ONCE - 1);
      }
    } catch (InterruptedException e) {
      throw new IllegalStateException("nobody interrupts the recorder's thread", e);
    }
  }

  private void preview(LinkEvent event) {
    Source source = sources.get(event.source());
    if (event instanceof LinkEvent.Bytes bytes) {
      if (bytes.chunk().part() == Part.IDENTITY) {
        source.identify(bytes.chunk());
      }
      source.decode(bytes.chunk(), this::countPreview);
    } else {
      boolean up = !(event instanceof LinkEvent.Lost);
      source.channels().forEach(channel -> counters.get(channel).link(up));
      source.join();
    }
  }

  private void countPreview(
      int channel, byte[] frame, int from, int length, long nanos, double value, Quality quality) {
    counters.get(channel).count(frame, from, length, value, quality);
  }

  private void publishPreview() {
    synchronized (previewChanged) {
      preview = snapshot();
      previewChanged.notifyAll();
    }
  }

  private Preview snapshot() {
    return new Preview(counters.stream().map(PreviewCounter::snapshot).toList());
  }
}
