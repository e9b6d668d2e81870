package io.github.platenwire.emulate;

import io.github.platenwire.reading.MonotonicClock;
import java.io.IOException;
import java.util.Iterator;

/**
 * Sends a stream of timed bytes at its true pace, or as fast as they are taken. Confined to one
 * thread; only {@link #stop} may be called from another.
 */
public final class Pacer {
  /** Longest single wait, so that a stop is heeded soon. */
  private static final long LONGEST_WAIT_NANOS = 50_000_000;

  private final ByteOutlet outlet;
  private volatile boolean stopped;

  /**
   * Sends to an outlet, which stays open.
   *
   * @param outlet where the bytes go
   */
  public Pacer(ByteOutlet outlet) {
    this.outlet = outlet;
  }

  /**
   * How a stream was sent.
   *
   * @param pieces pieces handed over
   * @param bytes bytes handed over
   * @param greatestLatenessNanos by how much the latest piece missed its time; 0 without pace
   * @param finished whether the whole stream was sent
   */
  public record Outcome(long pieces, long bytes, long greatestLatenessNanos, boolean finished) {}

  /**
   * Sends each piece at its time after now. A piece that is late does not delay those after it:
   * every time is reckoned from the start.
   *
   * @param stream what is sent
   * @param clock the time
   * @param waiter lets time pass
   * @throws IOException if the outlet fails
   */
  public Outcome atTruePace(Iterator<TimedBytes> stream, MonotonicClock clock, Waiter waiter)
      throws IOException {
    long start = clock.nanos();
    long pieces = 0;
    long sent = 0;
    long lateness = 0;
    while (stream.hasNext()) {
      TimedBytes piece = stream.next();
      long due = start + piece.nanos();
      if (!waitUntil(due, clock, waiter)) {
        return new Outcome(pieces, sent, lateness, false);
      }
      lateness = Math.max(lateness, clock.nanos() - due);
      outlet.send(piece.bytes(), 0, piece.bytes().length, due);
      pieces++;
      sent += piece.bytes().length;
    }
    return new Outcome(pieces, sent, lateness, true);
  }

  /**
   * Sends each piece as soon as the one before was taken, and after each advances the clock to its
   * time.
   *
   * @param stream what is sent
   * @param clock moved along; the stream's zero is where it stands now
   * @throws IOException if the outlet fails
   */
  public Outcome asFastAsTaken(Iterator<TimedBytes> stream, EmulatedClock clock)
      throws IOException {
    long start = clock.nanos();
    long pieces = 0;
    long sent = 0;
    while (stream.hasNext()) {
      if (isStopped()) {
        return new Outcome(pieces, sent, 0, false);
      }
      TimedBytes piece = stream.next();
      long stamp = start + piece.nanos();
      outlet.send(piece.bytes(), 0, piece.bytes().length, stamp);
      clock.advanceTo(stamp);
      pieces++;
      sent += piece.bytes().length;
    }
    return new Outcome(pieces, sent, 0, true);
  }

  /** Ends the sending before its next piece, within about 50 ms. Safe from any thread. */
  public void stop() {
    stopped = true;
  }

  private boolean waitUntil(long due, MonotonicClock clock, Waiter waiter) {
    long remaining = due - clock.nanos();
    while (remaining > 0 && !isStopped()) {
      waiter.waitNanos(Math.min(remaining, LONGEST_WAIT_NANOS));
      remaining = due - clock.nanos();
    }
    return !isStopped();
  }

  private boolean isStopped() {
    return stopped || Thread.currentThread().isInterrupted();
  }
}
