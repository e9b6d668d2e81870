package io.github.platenwire.port;

import com.fazecast.jSerialComm.SerialPort;
import io.github.platenwire.reading.MonotonicClock;
import java.io.IOException;
import java.util.Arrays;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.concurrent.locks.ReentrantLock;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * An open serial port. As thread-safe as a port is.
 *
 * <p>The library gives the descriptor back before it forgets it, so a close during a read or write
 * could let that call hit whatever file got the same descriptor next. So the port is only closed
 * while no call is inside: by the thread inside as it comes out, or by the closing thread if there
 * is none.
 */
final class SerialLine implements Port {
  private static final Logger LOG = LoggerFactory.getLogger(SerialLine.class);
  private static final int BUFFER_BYTES = 1 << 16;
  private static final long CLOSE_MILLIS = 1_000;
  private static final long TOO_SOON_NANOS = TimeUnit.MILLISECONDS.toNanos(1);

  private final String address;
  private final SerialPort port;
  private final MonotonicClock clock;
  private final Runnable onGivenBack;
  private final byte[] buffer = new byte[BUFFER_BYTES];
  private final ReentrantLock inside = new ReentrantLock();
  private volatile boolean closing;
  private boolean givenBack;

  SerialLine(String address, SerialPort port, MonotonicClock clock, Runnable onGivenBack) {
    this.onGivenBack = onGivenBack;
    this.address = address;
    this.port = port;
    this.clock = clock;
  }

  @Override
  public String address() {
    return address;
  }

  @Override
  public Optional<Chunk> read() throws IOException {
    long begunNanos = clock.nanos();
    int count;
    enter();
    try {
      count = port.readBytes(buffer, buffer.length);
    } finally {
      leave();
    }
    long arrivalNanos = clock.nanos();
    if (count < 0) {
      throw lost("the line hung up: the cable or adapter was pulled, or the device is gone");
    }
    if (count == 0) {
      slowDown(arrivalNanos - begunNanos);
      return Optional.empty();
    }
    return Optional.of(new Chunk(Arrays.copyOf(buffer, count), arrivalNanos));
  }

  @Override
  public boolean hasBytes() throws IOException {
    enter();
    try {
      return port.bytesAvailable() > 0;
    } finally {
      leave();
    }
  }

  /** Some drivers forget the read time-out; then an idle line must not cost a processor core. */
  private static void slowDown(long tookNanos) {
    if (tookNanos < TOO_SOON_NANOS) {
      LockSupport.parkNanos(TOO_SOON_NANOS);
    }
  }

  @Override
  public void write(byte[] bytes) throws IOException {
    int count;
    enter();
    try {
      count = port.writeBytes(bytes, bytes.length);
    } finally {
      leave();
    }
    if (count != bytes.length) {
      throw lost("only " + Math.max(count, 0) + " of " + bytes.length + " bytes could be sent");
    }
  }

  private void enter() throws LinkLostException {
    inside.lock();
    if (closing) {
      leave();
      throw lost("");
    }
  }

  private void leave() {
    try {
      if (closing) {
        giveBack();
      }
    } finally {
      inside.unlock();
    }
  }

  private LinkLostException lost(String why) {
    return new LinkLostException(address + ": " + (closing ? "closed by this program" : why));
  }

  @Override
  public void close() {
    closing = true;
    if (entered()) {
      try {
        giveBack();
      } finally {
        inside.unlock();
      }
    } else {
      LOG.debug("{} is closed by the thread that is reading it", address);
    }
  }

  private boolean entered() {
    try {
      return inside.tryLock(CLOSE_MILLIS, TimeUnit.MILLISECONDS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return inside.tryLock();
    }
  }

  private void giveBack() {
    if (!givenBack) {
      givenBack = true;
      if (!port.closePort()) {
        LOG.warn("{} could not be closed", address);
      }
      onGivenBack.run();
    }
  }
}
