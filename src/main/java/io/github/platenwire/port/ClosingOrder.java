package io.github.platenwire.port;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Sees to it that records are closed before ports at the end of the program. Safe for use by any
 * thread.
 *
 * <p>The JVM starts all shutdown hooks together, and the serial library's own hook closes its ports
 * within milliseconds. So the closings run in one hook of ours, and the library is given a thread
 * that waits for it, which the library runs to its end before it closes anything.
 */
final class ClosingOrder {
  private static final Logger LOG = LoggerFactory.getLogger(ClosingOrder.class);
  private static final long LIMIT_SECONDS = 10;
  private static final Set<Thread> CLOSINGS = new LinkedHashSet<>();
  private static final CountDownLatch DONE = new CountDownLatch(1);
  private static boolean hooked;

  private ClosingOrder() {}

  static synchronized void add(Thread closing) {
    if (!hooked) {
      Runtime.getRuntime().addShutdownHook(new Thread(ClosingOrder::run, "closing"));
      hooked = true;
    }
    CLOSINGS.add(closing);
  }

  static synchronized boolean remove(Thread closing) {
    return CLOSINGS.remove(closing);
  }

  /** What the serial library must run to its end before it closes ports. */
  static Thread beforePorts() {
    return new Thread(ClosingOrder::awaitDone, "closing-before-ports");
  }

  private static synchronized List<Thread> started() {
    CLOSINGS.forEach(Thread::start);
    return List.copyOf(CLOSINGS);
  }

  private static void run() {
    try {
      for (Thread closing : started()) {
        closing.join(TimeUnit.SECONDS.toMillis(LIMIT_SECONDS));
      }
    } catch (InterruptedException e) {
      LOG.warn("the closing of records was interrupted", e);
    } finally {
      DONE.countDown();
    }
  }

  private static synchronized boolean isHooked() {
    return hooked;
  }

  private static void awaitDone() {
    try {
      if (isHooked() && !DONE.await(LIMIT_SECONDS, TimeUnit.SECONDS)) {
        LOG.warn("records were not closed within {} s; serial ports are closed now", LIMIT_SECONDS);
      }
    } catch (InterruptedException e) {
      LOG.warn("serial ports are closed before all records were", e);
    }
  }
}
