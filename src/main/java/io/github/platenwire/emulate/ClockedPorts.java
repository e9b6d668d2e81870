package io.github.platenwire.emulate;

import io.github.platenwire.port.Chunk;
import io.github.platenwire.port.Port;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.Condition;
import java.util.concurrent.locks.ReentrantLock;
import org.jspecify.annotations.Nullable;

/**
 * Several ports in memory on one emulated clock. Each has its own stream; whatever the number of
 * readers, chunks are handed on one after another in the order of their times, and the clock
 * reaches a chunk's time only when the reader that took it comes back for more: so whoever looks at
 * the clock and then at what the readers have handed on misses nothing of any port up to that time.
 *
 * <p>Safe for any number of threads, one reader a port.
 */
public final class ClockedPorts {
  private static final int NOBODY = -1;
  private static final long WAIT_NANOS = TimeUnit.MILLISECONDS.toNanos(50);

  private final EmulatedClock clock;
  private final List<Iterator<TimedBytes>> streams;
  private final @Nullable TimedBytes[] heads;
  private final boolean[] closed;
  private final ReentrantLock lock = new ReentrantLock();
  private final Condition changed = lock.newCondition();
  private final long startNanos;
  private Optional<Runnable> atEnd = Optional.empty();
  private int handedOnTo = NOBODY;
  private long handedOnNanos;
  private long holdNanos = Long.MAX_VALUE;
  private boolean endTold;

  /**
   * Prepares ports, one for each stream, whose zero is where the clock stands now.
   *
   * @param clock moved along
   * @param streams what each port's device sends
   */
  public ClockedPorts(EmulatedClock clock, List<Iterator<TimedBytes>> streams) {
    this.clock = clock;
    this.streams = List.copyOf(streams);
    heads = new TimedBytes[streams.size()];
    closed = new boolean[streams.size()];
    startNanos = clock.nanos();
  }

  /** Nothing from this moment of the streams on is handed on before {@link #release}. */
  public void holdAt(long nanos) {
    locked(() -> holdNanos = nanos);
  }

  /**
   * Lets the streams go on.
   *
   * @param whenOver run once, on a reader's thread, when everything was handed on
   */
  public void release(Runnable whenOver) {
    locked(
        () -> {
          holdNanos = Long.MAX_VALUE;
          atEnd = Optional.of(whenOver);
        });
  }

  private void locked(Runnable change) {
    lock.lock();
    try {
      change.run();
      changed.signalAll();
    } finally {
      lock.unlock();
    }
  }

  /** The ports, by stream. */
  public List<Port> ports(List<String> addresses) {
    List<Port> ports = new ArrayList<>();
    for (int i = 0; i < streams.size(); i++) {
      ports.add(new Mine(i, addresses.get(i)));
    }
    return ports;
  }

  private Optional<Chunk> read(int port) throws IOException {
    Optional<Runnable> over = Optional.empty();
    lock.lock();
    try {
      comeBack(port);
      long left = WAIT_NANOS;
      while (left > 0 && !closed[port]) {
        int next = next();
        if (next == port && handedOnTo == NOBODY) {
          return Optional.of(handOn(port));
        }
        if (next == NOBODY && isOver() && !endTold && atEnd.isPresent()) {
          endTold = true;
          over = atEnd;
          break;
        }
        left = changed.awaitNanos(left);
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IOException("interrupted while waiting for an emulated device", e);
    } finally {
      lock.unlock();
    }
    over.ifPresent(Runnable::run);
    return Optional.empty();
  }

  private void comeBack(int port) {
    if (handedOnTo == port) {
      clock.advanceTo(handedOnNanos);
      handedOnTo = NOBODY;
      changed.signalAll();
    }
  }

  /** Index of the stream whose head is the earliest; nobody if all are over or held. */
  private int next() {
    int earliest = NOBODY;
    long nanos = Long.MAX_VALUE;
    for (int i = 0; i < heads.length; i++) {
      TimedBytes head = head(i);
      if (head != null && head.nanos() < nanos && head.nanos() < holdNanos) {
        earliest = i;
        nanos = head.nanos();
      }
    }
    return earliest;
  }

  private @Nullable TimedBytes head(int port) {
    if (closed[port]) {
      return null;
    }
    if (heads[port] == null && streams.get(port).hasNext()) {
      heads[port] = streams.get(port).next();
    }
    return heads[port];
  }

  private boolean isOver() {
    boolean over = handedOnTo == NOBODY;
    for (int i = 0; i < heads.length; i++) {
      over &= head(i) == null;
    }
    return over;
  }

  private Chunk handOn(int port) {
    TimedBytes head = heads[port];
    if (head == null) {
      throw new IllegalStateException("nothing to hand on, port=" + port);
    }
    heads[port] = null;
    handedOnTo = port;
    handedOnNanos = startNanos + head.nanos();
    return new Chunk(head.bytes(), handedOnNanos);
  }

  private void close(int port) {
    locked(
        () -> {
          closed[port] = true;
          comeBack(port);
        });
  }

  /** One of the ports. */
  private final class Mine implements Port {
    private final int index;
    private final String address;

    Mine(int index, String address) {
      this.index = index;
      this.address = address;
    }

    @Override
    public String address() {
      return address;
    }

    @Override
    public Optional<Chunk> read() throws IOException {
      return ClockedPorts.this.read(index);
    }

    @Override
    public void write(byte[] bytes) throws IOException {
      throw new IOException(address + " is an emulated device that only sends");
    }

    @Override
    public void close() {
      ClockedPorts.this.close(index);
    }
  }
}
