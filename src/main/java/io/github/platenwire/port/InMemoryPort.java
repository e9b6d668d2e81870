package io.github.platenwire.port;

import java.io.IOException;
import java.util.ArrayDeque;
import java.util.Optional;
import java.util.Queue;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.Condition;
import java.util.concurrent.locks.ReentrantLock;

/**
 * A port whose bytes another thread hands over, with the arrival times which that thread gives. The
 * handing side ({@link #offer}, {@link #end}) may be any thread; the reading side is a port's.
 */
public final class InMemoryPort implements Port {
  private static final long READ_NANOS = TimeUnit.MILLISECONDS.toNanos(100);

  /** Takes what is written to the port; called by the reading thread. */
  @FunctionalInterface
  public interface Device {
    /**
     * Bytes were sent to the device. It may answer with {@link InMemoryPort#offer}, which it must
     * do from another thread if the port may be full.
     *
     * @throws IOException if it cannot take them
     */
    void sent(byte[] bytes) throws IOException;
  }

  private final String address;
  private final int capacity;
  private final Device device;
  private final ReentrantLock lock = new ReentrantLock();
  private final Condition roomMade = lock.newCondition();
  private final Condition filled = lock.newCondition();
  private final Queue<Chunk> chunks = new ArrayDeque<>();
  private boolean ended;
  private boolean closed;

  /**
   * A port to a device that only talks.
   *
   * @param address what it is called
   * @param capacity most chunks that wait to be read, at least 1
   */
  public InMemoryPort(String address, int capacity) {
    this(
        address,
        capacity,
        bytes -> {
          throw new IOException(address + ": the device takes no bytes");
        });
  }

  /**
   * A port to a device that also listens.
   *
   * @param address what it is called
   * @param capacity most chunks that wait to be read, at least 1
   * @param device takes what is written
   */
  public InMemoryPort(String address, int capacity, Device device) {
    if (capacity < 1) {
      throw new IllegalArgumentException("capacity must be at least 1, capacity=" + capacity);
    }
    this.address = address;
    this.capacity = capacity;
    this.device = device;
  }

  /**
   * Hands over bytes; waits while the port is full.
   *
   * @return false if the port was closed or ended, and the chunk not taken
   * @throws InterruptedException if the waiting thread was interrupted; the chunk is not taken
   */
  public boolean offer(Chunk chunk) throws InterruptedException {
    lock.lockInterruptibly();
    try {
      while (chunks.size() >= capacity && !closed && !ended) {
        roomMade.await();
      }
      if (closed || ended) {
        return false;
      }
      chunks.add(chunk);
      filled.signal();
      return true;
    } finally {
      lock.unlock();
    }
  }

  /** The device is gone: once everything is read, {@link #read} says that the link is lost. */
  public void end() {
    lock.lock();
    try {
      ended = true;
      roomMade.signalAll();
      filled.signalAll();
    } finally {
      lock.unlock();
    }
  }

  @Override
  public String address() {
    return address;
  }

  @Override
  public Optional<Chunk> read() throws IOException {
    lock.lock();
    try {
      awaitFilled();
      if (closed) {
        throw new LinkLostException(address + ": closed by this program");
      }
      if (chunks.isEmpty() && ended) {
        throw new LinkLostException(address + ": the device has gone");
      }
      Optional<Chunk> next = Optional.ofNullable(chunks.poll());
      roomMade.signal();
      return next;
    } finally {
      lock.unlock();
    }
  }

  @Override
  public boolean hasBytes() {
    lock.lock();
    try {
      return !chunks.isEmpty();
    } finally {
      lock.unlock();
    }
  }

  private void awaitFilled() {
    long left = READ_NANOS;
    try {
      while (chunks.isEmpty() && !ended && !closed && left > 0) {
        left = filled.awaitNanos(left);
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  @Override
  public void write(byte[] bytes) throws IOException {
    device.sent(bytes);
  }

  @Override
  public void close() {
    lock.lock();
    try {
      closed = true;
      chunks.clear();
      roomMade.signalAll();
      filled.signalAll();
    } finally {
      lock.unlock();
    }
  }
}
