package io.github.platenwire.emulate;

import java.io.ByteArrayOutputStream;
import java.util.Iterator;
import java.util.NoSuchElementException;
import org.jspecify.annotations.Nullable;

/**
 * One whole test as the bytes that come out of a device that speaks of its own accord: idle time,
 * loading, break and tail. Made while it is read, in constant memory; the same truth, indicator and
 * seed give the same bytes at the same times. Not thread-safe.
 */
public final class EmulatedFrame implements Iterator<TimedBytes> {
  private final SpecimenTruth truth;
  private final EmulatedIndicator indicator;
  private final ReadingMaker maker;
  private final double periodNanos;

  private long reading;
  private @Nullable TimedBytes line;
  private @Nullable TimedBytes upcoming;

  /**
   * Starts a test at time zero.
   *
   * @param truth the load
   * @param indicator what is made of it
   * @param seed of noise, jitter and faults
   */
  public EmulatedFrame(SpecimenTruth truth, EmulatedIndicator indicator, long seed) {
    this.truth = truth;
    this.indicator = indicator;
    maker = new ReadingMaker(truth, indicator, seed);
    periodNanos = 1e9 / indicator.rateHertz();
  }

  /** The truth behind the bytes. */
  public SpecimenTruth truth() {
    return truth;
  }

  /** What makes bytes of the load. */
  public EmulatedIndicator indicator() {
    return indicator;
  }

  /** What was sent, once {@link #hasNext} is false; before that, what has been made so far. */
  public SentTruth sent() {
    return maker.sent();
  }

  @Override
  public boolean hasNext() {
    if (upcoming == null) {
      upcoming = indicator.burstNanos() == 0 ? nextLine() : nextBurst();
    }
    return upcoming != null;
  }

  @Override
  public TimedBytes next() {
    TimedBytes result = hasNext() ? upcoming : null;
    if (result == null) {
      throw new NoSuchElementException("the emulated test is over");
    }
    upcoming = null;
    return result;
  }

  /** All lines of the next stretch between two hand-overs, or null at the end. */
  private @Nullable TimedBytes nextBurst() {
    TimedBytes first = line == null ? nextLine() : line;
    line = null;
    if (first == null) {
      return null;
    }
    long at = handOverNanos(first);
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    bytes.writeBytes(first.bytes());
    line = nextLine();
    while (line != null && handOverNanos(line) == at) {
      bytes.writeBytes(line.bytes());
      line = nextLine();
    }
    return new TimedBytes(at, bytes.toByteArray());
  }

  private long handOverNanos(TimedBytes taken) {
    long burst = indicator.burstNanos();
    return (taken.nanos() + burst - 1) / burst * burst;
  }

  /** The next reading that is sent, stamped with its sampling time, or null at the end. */
  private @Nullable TimedBytes nextLine() {
    while (true) {
      long nanos = Math.round((reading + 0.5 + maker.nextShift()) * periodNanos);
      if (nanos >= truth.endNanos()) {
        return null;
      }
      reading++;
      byte[] bytes = maker.next(nanos, indicator.layout()::bytes);
      if (bytes.length > 0) {
        return new TimedBytes(nanos, bytes);
      }
    }
  }
}
