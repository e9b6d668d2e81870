package io.github.platenwire.recorder;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;

/**
 * Keeps what came before the start, so that a test's record begins with the readings that its
 * checklist saw. The oldest are let go after ten seconds or four mebibytes. Not thread-safe.
 */
final class HeldEvents {
  private static final long LONGEST_NANOS = TimeUnit.SECONDS.toNanos(10);
  private static final long MOST_BYTES = 4L << 20;

  private final Deque<LinkEvent> events = new ArrayDeque<>();
  private long bytes;

  void add(LinkEvent event) {
    events.addLast(event);
    bytes += size(event);
    LinkEvent oldest = events.peekFirst();
    while (oldest != null
        && (bytes > MOST_BYTES || event.atNanos() - oldest.atNanos() > LONGEST_NANOS)) {
      events.removeFirst();
      bytes -= size(oldest);
      oldest = events.peekFirst();
    }
  }

  private static long size(LinkEvent event) {
    return event instanceof LinkEvent.Bytes chunk ? chunk.chunk().bytes().length : 0;
  }

  /** The oldest still kept. */
  @Nullable LinkEvent oldest() {
    return events.peekFirst();
  }

  /** Takes the oldest out; null when there is none left. */
  @Nullable LinkEvent take() {
    return events.pollFirst();
  }
}
