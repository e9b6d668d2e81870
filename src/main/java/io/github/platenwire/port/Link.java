package io.github.platenwire.port;

import io.github.platenwire.reading.MonotonicClock;
import java.io.IOException;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Owns the one thread that reads one port, and takes the port up again when it is lost.
 *
 * <p>After a loss the port is closed and opened anew after 0.1 s, then after twice as long each
 * time up to 2 s, until it is there; the waits begin anew once bytes have come. The port is closed
 * by the thread that reads it. A listener that throws is logged and stays. {@link #close} may be
 * called by any thread.
 */
public final class Link implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(Link.class);
  private static final long JOIN_MILLIS = 1_000;

  /** Whether a port that cannot be opened at the start is an error. */
  public enum FirstOpen {
    /** It is. */
    MUST_SUCCEED,
    /** It is told to the listener as a loss, and tried again. */
    MAY_COME_LATER
  }

  /** Waits between two attempts to open a port. */
  @FunctionalInterface
  public interface Pause {
    /** Waits in real time. */
    Pause REAL = (nanos, closing) -> closing.await(nanos, TimeUnit.NANOSECONDS);

    /**
     * Waits.
     *
     * @param nanos how long
     * @param closing when it reaches zero, the wait ends at once
     * @return ignored
     * @throws InterruptedException if interrupted; the link goes on
     */
    boolean pause(long nanos, CountDownLatch closing) throws InterruptedException;
  }

  private final PortOpener opener;
  private final GuardedListener listener;
  private final MonotonicClock clock;
  private final Pause pause;
  private final BackOff backOff = new BackOff();
  private final CountDownLatch closing = new CountDownLatch(1);
  private final String name;
  private volatile @Nullable Port current;
  private String lastFailure = "";
  private @Nullable Thread thread;

  private Link(
      String name, PortOpener opener, LinkListener listener, MonotonicClock clock, Pause pause) {
    this.name = name;
    this.opener = opener;
    this.listener = new GuardedListener(name, listener);
    this.clock = clock;
    this.pause = pause;
  }

  /**
   * Opens the port, which must succeed, and begins to read it.
   *
   * @param name names the thread and stands in log lines
   * @param opener opens the port, now and after each loss
   * @param listener told everything, by the link's thread
   * @param clock stamps losses and returns
   * @throws PortException with the remedy, if the port cannot be opened
   * @throws IOException for any other failure to open it
   */
  public static Link open(
      String name, PortOpener opener, LinkListener listener, MonotonicClock clock)
      throws IOException {
    return open(name, opener, listener, clock, FirstOpen.MUST_SUCCEED, Pause.REAL);
  }

  /**
   * Begins to read a port.
   *
   * @param name names the thread and stands in log lines
   * @param opener opens the port, now and after each loss
   * @param listener told everything, by the link's thread
   * @param clock stamps losses and returns
   * @param firstOpen whether a port that is not there now is an error
   * @param pause waits between two attempts to open
   * @throws PortException with the remedy, if the port cannot be opened and must be
   * @throws IOException for any other failure to open it
   */
  public static Link open(
      String name,
      PortOpener opener,
      LinkListener listener,
      MonotonicClock clock,
      FirstOpen firstOpen,
      Pause pause)
      throws IOException {
    Link link = new Link(name, opener, listener, clock, pause);
    if (firstOpen == FirstOpen.MUST_SUCCEED) {
      link.current = opener.open();
    }
    link.start();
    return link;
  }

  private void start() {
    Thread reader = new Thread(this::run, "link-" + name);
    reader.setDaemon(true);
    thread = reader;
    reader.start();
  }

  private void run() {
    try {
      Port port = current == null ? firstLate() : current;
      while (port != null) {
        String why = pump(port);
        port.close();
        current = null;
        if (isClosing()) {
          return;
        }
        lost(why);
        port = reopened();
      }
    } finally {
      Port left = current;
      if (left != null) {
        left.close();
      }
    }
  }

  /** Opens a port that need not be there; null if the link is closed before it is. */
  private @Nullable Port firstLate() {
    try {
      Port port = opener.open();
      current = port;
      return port;
    } catch (IOException | RuntimeException e) {
      lost(said(e));
      return reopened();
    }
  }

  /** Reads until the port is lost or the link closed; what was seen. */
  private String pump(Port port) {
    try {
      while (!isClosing()) {
        port.read().ifPresent(this::bytes);
      }
      return "closed by this program";
    } catch (IOException | RuntimeException e) {
      return said(e);
    }
  }

  private void bytes(Chunk chunk) {
    backOff.reset();
    listener.bytes(chunk);
  }

  private void lost(String why) {
    LOG.warn("link {} lost: {}", name, why);
    lastFailure = why;
    listener.lost(clock.nanos(), why);
  }

  /** Tries until the port is there; null if the link is closed before. */
  private @Nullable Port reopened() {
    while (!isClosing()) {
      await(backOff.nextNanos());
      if (isClosing()) {
        return null;
      }
      try {
        Port port = opener.open();
        current = port;
        LOG.info("link {} is back", name);
        listener.back(clock.nanos());
        return port;
      } catch (IOException | RuntimeException e) {
        notYet(said(e));
      }
    }
    return null;
  }

  private void await(long nanos) {
    try {
      pause.pause(nanos, closing);
    } catch (InterruptedException e) {
      LOG.debug("link {}: a wait was cut short", name, e);
    }
  }

  /** Logs a failure once as long as it stays the same. */
  private void notYet(String why) {
    if (!why.equals(lastFailure)) {
      lastFailure = why;
      LOG.warn("link {} is not back yet: {}", name, why);
    }
  }

  private static String said(Exception e) {
    String message = e.getMessage();
    return e instanceof IOException && message != null ? message : e.toString();
  }

  private boolean isClosing() {
    return closing.getCount() == 0;
  }

  /**
   * Ends the thread, which closes the port; waits up to 2 s for it. A listener that still blocks
   * after that is left to itself. May be called twice, and by the listener.
   */
  @Override
  public void close() {
    closing.countDown();
    Thread reader = thread;
    if (reader == null || reader == Thread.currentThread()) {
      return;
    }
    try {
      reader.join(JOIN_MILLIS);
      Port stuck = current;
      if (reader.isAlive() && stuck != null) {
        stuck.close();
        reader.join(JOIN_MILLIS);
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    if (reader.isAlive()) {
      LOG.warn("link {}: its thread has not ended yet", name);
    }
  }
}
