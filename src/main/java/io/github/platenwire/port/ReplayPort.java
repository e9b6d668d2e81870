package io.github.platenwire.port;

import io.github.platenwire.reading.MonotonicClock;
import java.io.IOException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import org.jspecify.annotations.Nullable;

/**
 * Plays a byte log again: the same chunks, stamped with the opening time plus the time in the log.
 * At its end the link is lost. As thread-safe as a port is.
 */
public final class ReplayPort implements Port {
  private static final long READ_NANOS = TimeUnit.MILLISECONDS.toNanos(100);

  /** When a chunk is handed over. */
  public enum Pace {
    /** As soon as it is asked for; its stamp may lie ahead of the clock. */
    AT_ONCE,
    /** Not before the clock has reached its stamp. */
    AS_RECORDED
  }

  private final String address;
  private final ByteLogReader log;
  private final Pace pace;
  private final MonotonicClock clock;
  private final long originNanos;
  private final CountDownLatch closing = new CountDownLatch(1);
  private @Nullable Chunk waiting;

  private ReplayPort(String address, ByteLogReader log, Pace pace, MonotonicClock clock) {
    this.address = address;
    this.log = log;
    this.pace = pace;
    this.clock = clock;
    originNanos = clock.nanos();
  }

  /**
   * Opens a log after reading all of it once, so that a fault in it shows before anything is
   * played.
   *
   * @param file the log
   * @param pace when a chunk is handed over
   * @param clock gives the opening time, and the pace
   * @throws PortException if the file is missing, cannot be read or is no sound byte log; then the
   *     message names file and line
   */
  public static ReplayPort open(Path file, Pace pace, MonotonicClock clock) throws PortException {
    return open(file, "replay:" + file, pace, clock);
  }

  private static ReplayPort open(Path file, String address, Pace pace, MonotonicClock clock)
      throws PortException {
    try {
      ByteLogReader.check(file);
      return new ReplayPort(address, ByteLogReader.open(file), pace, clock);
    } catch (NoSuchFileException e) {
      throw new PortException(
          PortException.Reason.MISSING, address + ": there is no such file; check its name");
    } catch (IOException e) {
      throw new PortException(
          PortException.Reason.UNUSABLE, address + ": cannot be played: " + e.getMessage());
    }
  }

  /** Opens the log the first time only: a link that takes it up again must not double bytes. */
  static PortOpener onceOnly(Path file, String address, Pace pace, MonotonicClock clock) {
    AtomicBoolean played = new AtomicBoolean();
    return () -> {
      if (played.get()) {
        throw new PortException(
            PortException.Reason.MISSING, address + ": the log has been played to its end");
      }
      ReplayPort port = open(file, address, pace, clock);
      played.set(true);
      return port;
    };
  }

  @Override
  public String address() {
    return address;
  }

  @Override
  public Optional<Chunk> read() throws IOException {
    if (closing.getCount() == 0) {
      throw new LinkLostException(address + ": closed by this program");
    }
    Chunk next = waiting == null ? fetch() : waiting;
    waiting = next;
    if (pace == Pace.AS_RECORDED && !isDue(next)) {
      return Optional.empty();
    }
    waiting = null;
    return Optional.of(next);
  }

  private Chunk fetch() throws IOException {
    Chunk chunk =
        log.next()
            .orElseThrow(() -> new LinkLostException(address + ": the log has come to its end"));
    return new Chunk(chunk.bytes(), originNanos + chunk.arrivalNanos());
  }

  /** Whether the clock has reached the chunk's stamp, after waiting a short while for it. */
  private boolean isDue(Chunk chunk) {
    long early = chunk.arrivalNanos() - clock.nanos();
    if (early <= 0) {
      return true;
    }
    try {
      if (closing.await(Math.min(early, READ_NANOS), TimeUnit.NANOSECONDS)) {
        return false;
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    return chunk.arrivalNanos() - clock.nanos() <= 0;
  }

  /** Sends nothing: nobody is there to take it. */
  @Override
  public void write(byte[] bytes) throws IOException {
    throw new IOException(address + ": a log that is played again takes no bytes");
  }

  @Override
  public void close() {
    closing.countDown();
    try {
      log.close();
    } catch (IOException e) {
      // only read from; nothing can be lost
    }
  }
}
