package io.github.platenwire.emulate;

import java.io.ByteArrayOutputStream;
import java.util.Iterator;
import java.util.NoSuchElementException;
import java.util.Random;
import java.util.SplittableRandom;
import org.jspecify.annotations.Nullable;

/**
 * One whole test as the bytes that come out of the indicator: idle time, loading, break and tail.
 * Made while it is read, in constant memory; the same truth, indicator and seed give the same bytes
 * at the same times. Each kind of chance has its own row of random numbers, so that switching one
 * fault on leaves the rest as it was. Not thread-safe.
 */
public final class EmulatedFrame implements Iterator<TimedBytes> {
  private final CylinderTruth truth;
  private final EmulatedIndicator indicator;
  private final Random jitter;
  private final Random noise;
  private final Random chance;
  private final Random wild;
  private final LineSpoiler spoiler;
  private final double periodNanos;

  private long reading;
  private long silentUntilNanos = Long.MIN_VALUE;
  private boolean lastWasGlitch;
  private @Nullable TimedBytes line;
  private @Nullable TimedBytes upcoming;

  private long linesSent;
  private long readingsWithheld;
  private long silences;
  private long glitches;
  private long garbageRuns;
  private long linesTorn;
  private long linesFlipped;
  private long bytesSent;
  private long greatestCounts = Long.MIN_VALUE;
  private long greatestNanos;

  /**
   * Starts a test at time zero.
   *
   * @param truth the load
   * @param indicator what is made of it
   * @param seed of noise, jitter and faults
   */
  public EmulatedFrame(CylinderTruth truth, EmulatedIndicator indicator, long seed) {
    this.truth = truth;
    this.indicator = indicator;
    SplittableRandom seeds = new SplittableRandom(seed);
    jitter = new Random(seeds.nextLong());
    noise = new Random(seeds.nextLong());
    chance = new Random(seeds.nextLong());
    wild = new Random(seeds.nextLong());
    spoiler = new LineSpoiler(new Random(seeds.nextLong()), indicator.layout().terminator());
    periodNanos = 1e9 / indicator.rateHertz();
  }

  /** The truth behind the bytes. */
  public CylinderTruth truth() {
    return truth;
  }

  /** What makes bytes of the load. */
  public EmulatedIndicator indicator() {
    return indicator;
  }

  /** What was sent, once {@link #hasNext} is false; before that, what has been made so far. */
  public SentTruth sent() {
    return new SentTruth(
        linesSent,
        readingsWithheld,
        silences,
        glitches,
        garbageRuns,
        linesTorn,
        linesFlipped,
        bytesSent,
        greatestCounts == Long.MIN_VALUE ? Double.NaN : indicator.newtonsOf(greatestCounts),
        greatestNanos,
        indicator.zeroNewtons());
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

  /** The next line that is sent, stamped with its sampling time, or null at the end. */
  private @Nullable TimedBytes nextLine() {
    while (true) {
      double shift = (2 * jitter.nextDouble() - 1) * indicator.jitterShare();
      long nanos = Math.round((reading + 0.5 + shift) * periodNanos);
      if (nanos >= truth.endNanos()) {
        return null;
      }
      reading++;
      double newtons =
          truth.loadNewtons(nanos)
              + indicator.zeroNewtons()
              + indicator.noiseNewtons() * noise.nextGaussian();
      double fault = chance.nextDouble();
      boolean fallsSilent = chance.nextDouble() < indicator.faults().silenceShare();
      if (!isSilent(nanos, fallsSilent)) {
        byte[] bytes = send(nanos, newtons, fault);
        linesSent++;
        bytesSent += bytes.length;
        return new TimedBytes(nanos, bytes);
      }
      readingsWithheld++;
    }
  }

  private boolean isSilent(long nanos, boolean fallsSilent) {
    if (nanos >= silentUntilNanos && fallsSilent) {
      silences++;
      silentUntilNanos = nanos + Math.round(indicator.faults().silenceSeconds() * 1e9);
    }
    return nanos < silentUntilNanos;
  }

  /** The bytes of one reading, with the fault that the drawn number falls to. */
  private byte[] send(long nanos, double newtons, double drawn) {
    Faults.Kind kind = indicator.faults().kind(drawn);
    if (kind == Faults.Kind.GLITCH && !lastWasGlitch) {
      lastWasGlitch = true;
      glitches++;
      return line(indicator.shownCounts(wildNewtons(newtons)));
    }
    lastWasGlitch = false;
    long counts = indicator.shownCounts(newtons);
    return switch (kind) {
      case GARBAGE -> {
        garbageRuns++;
        yield spoiler.withGarbage(line(counts));
      }
      case TORN -> {
        linesTorn++;
        yield spoiler.torn(line(counts));
      }
      case FLIPPED -> {
        linesFlipped++;
        yield spoiler.flipped(line(counts));
      }
      case GLITCH, NONE -> {
        noteSound(counts, nanos);
        yield line(counts);
      }
    };
  }

  private void noteSound(long counts, long nanos) {
    if (counts > greatestCounts) {
      greatestCounts = counts;
      greatestNanos = nanos;
    }
  }

  private byte[] line(long counts) {
    boolean over = Math.abs(counts) >= indicator.shownCounts(indicator.capacityNewtons());
    return indicator.layout().line(counts, over);
  }

  private double wildNewtons(double newtons) {
    double away = (0.2 + 0.6 * wild.nextDouble()) * indicator.capacityNewtons();
    boolean up = wild.nextBoolean() && newtons + away <= indicator.capacityNewtons();
    return up ? newtons + away : newtons - away;
  }
}
