package io.github.platenwire.recorder;

import io.github.platenwire.port.Chunk;
import io.github.platenwire.port.LinkListener;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.function.ToIntFunction;

/**
 * Puts what one link says into the recorder's bounded queue. A full queue first holds the link
 * back; only when it stays full for the given patience are bytes dropped, and then they are counted
 * and the loss itself goes into the queue before anything that came after it.
 *
 * <p>Confined to the link's thread, except {@link #end}.
 */
final class Intake implements LinkListener {
  /** How often a waiting thread looks whether there is still somebody to wait for. */
  private static final long SLICE_NANOS = TimeUnit.MILLISECONDS.toNanos(50);

  private final int source;
  private final BlockingQueue<LinkEvent> queue;
  private final ToIntFunction<byte[]> frameCounter;
  private final long patienceSlices;
  private long droppedSinceNanos;
  private long droppedBytes;
  private long droppedFrames;
  private volatile boolean ended;

  /**
   * Makes an intake.
   *
   * @param source index of the source
   * @param queue where everything goes
   * @param frameCounter tells how many frames ended in dropped bytes
   * @param patienceNanos how long a full queue holds the link back before bytes are dropped
   */
  Intake(
      int source,
      BlockingQueue<LinkEvent> queue,
      ToIntFunction<byte[]> frameCounter,
      long patienceNanos) {
    this.source = source;
    this.queue = queue;
    this.frameCounter = frameCounter;
    this.patienceSlices = Math.max(1, patienceNanos / SLICE_NANOS);
  }

  @Override
  public void bytes(Chunk chunk) {
    if (ended) {
      return;
    }
    if (!reportDrops() || !put(new LinkEvent.Bytes(source, chunk), patienceSlices)) {
      drop(chunk);
    }
  }

  private void drop(Chunk chunk) {
    if (droppedBytes == 0) {
      droppedSinceNanos = chunk.arrivalNanos();
    }
    droppedBytes += chunk.bytes().length;
    droppedFrames += frameCounter.applyAsInt(chunk.bytes());
  }

  @Override
  public void lost(long atNanos, String why) {
    mustPut(new LinkEvent.Lost(source, atNanos, why));
  }

  @Override
  public void back(long atNanos) {
    mustPut(new LinkEvent.Back(source, atNanos));
  }

  /** Nobody takes from the queue any more: whatever comes is let go. Any thread. */
  void end() {
    ended = true;
  }

  /** True when there is no unreported loss left. */
  private boolean reportDrops() {
    if (droppedBytes == 0) {
      return true;
    }
    var dropped = new LinkEvent.Dropped(source, droppedSinceNanos, droppedBytes, droppedFrames);
    if (!put(dropped, /* slices= */ 1)) {
      return false;
    }
    droppedBytes = 0;
    droppedFrames = 0;
    return true;
  }

  /** A link's state is never dropped: its thread has nothing better to do than to wait. */
  private void mustPut(LinkEvent event) {
    boolean done = false;
    while (!done && !ended) {
      done = reportDrops() && put(event, /* slices= */ 1);
    }
  }

  private boolean put(LinkEvent event, long slices) {
    try {
      for (long slice = 0; slice < slices && !ended; slice++) {
        if (queue.offer(event, SLICE_NANOS, TimeUnit.NANOSECONDS)) {
          return true;
        }
      }
      return false;
    } catch (InterruptedException e) {
      throw new IllegalStateException("nobody interrupts a link's thread", e);
    }
  }
}
