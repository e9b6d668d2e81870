package io.github.platenwire.emulate;

import java.util.Random;
import java.util.SplittableRandom;
import java.util.function.Function;

/**
 * Makes readings of a truth, one after the other, with noise and whatever goes wrong, and keeps
 * count. Each kind of chance has its own row of random numbers, so that switching one fault on
 * leaves the rest as it was. Not thread-safe.
 */
final class ReadingMaker {
  /** Of the gauge, where the load has noise at all; common practice, no source. */
  private static final double GAUGE_NOISE_MILLIMETRES = 0.0003;

  private final SpecimenTruth truth;
  private final EmulatedIndicator indicator;
  private final Random jitter;
  private final Random noise;
  private final Random chance;
  private final Random wild;
  private final Random gaugeNoise;
  private final LineSpoiler spoiler;

  private long silentUntilNanos = Long.MIN_VALUE;
  private boolean lastWasGlitch;
  private long sent;
  private long withheld;
  private long silences;
  private long glitches;
  private long garbageRuns;
  private long torn;
  private long flipped;
  private long bytesSent;
  private long greatestCounts = Long.MIN_VALUE;
  private long greatestNanos;

  ReadingMaker(SpecimenTruth truth, EmulatedIndicator indicator, long seed) {
    this.truth = truth;
    this.indicator = indicator;
    SplittableRandom seeds = new SplittableRandom(seed);
    jitter = new Random(seeds.nextLong());
    noise = new Random(seeds.nextLong());
    chance = new Random(seeds.nextLong());
    wild = new Random(seeds.nextLong());
    spoiler = new LineSpoiler(new Random(seeds.nextLong()), indicator.layout().terminator());
    gaugeNoise = new Random(seeds.nextLong());
  }

  /** By what share of the interval the next sample comes early or late, within the indicator's. */
  double nextShift() {
    return (2 * jitter.nextDouble() - 1) * indicator.jitterShare();
  }

  /** What was made so far. */
  SentTruth sent() {
    return new SentTruth(
        sent,
        withheld,
        silences,
        glitches,
        garbageRuns,
        torn,
        flipped,
        bytesSent,
        greatestCounts == Long.MIN_VALUE ? Double.NaN : indicator.newtonsOf(greatestCounts),
        greatestNanos,
        indicator.zeroNewtons());
  }

  /**
   * The bytes of the next reading; none if the device is silent.
   *
   * @param nanos when it is sampled
   * @param writing makes bytes of what is shown, before anything spoils them
   */
  byte[] next(long nanos, Function<Shown, byte[]> writing) {
    double newtons =
        truth.loadNewtons(nanos)
            + indicator.zeroNewtons()
            + indicator.noiseNewtons() * noise.nextGaussian();
    double fault = chance.nextDouble();
    boolean fallsSilent = chance.nextDouble() < indicator.faults().silenceShare();
    if (isSilent(nanos, fallsSilent)) {
      withheld++;
      return new byte[0];
    }
    byte[] bytes = make(nanos, newtons, fault, writing);
    sent++;
    bytesSent += bytes.length;
    return bytes;
  }

  private boolean isSilent(long nanos, boolean fallsSilent) {
    if (nanos >= silentUntilNanos && fallsSilent) {
      silences++;
      silentUntilNanos = nanos + Math.round(indicator.faults().silenceSeconds() * 1e9);
    }
    return nanos < silentUntilNanos;
  }

  /** The bytes of one reading, with the fault that the drawn number falls to. */
  private byte[] make(long nanos, double newtons, double drawn, Function<Shown, byte[]> writing) {
    Faults.Kind kind = indicator.faults().kind(drawn);
    double gauge = gaugeMillimetres(nanos);
    if (kind == Faults.Kind.GLITCH && !lastWasGlitch) {
      lastWasGlitch = true;
      glitches++;
      return writing.apply(shown(indicator.shownCounts(wildNewtons(newtons)), gauge));
    }
    lastWasGlitch = false;
    long counts = indicator.shownCounts(newtons);
    byte[] bytes = writing.apply(shown(counts, gauge));
    return switch (kind) {
      case GARBAGE -> {
        garbageRuns++;
        yield spoiler.withGarbage(bytes);
      }
      case TORN -> {
        torn++;
        yield spoiler.torn(bytes);
      }
      case FLIPPED -> {
        flipped++;
        yield spoiler.flipped(bytes);
      }
      case GLITCH, NONE -> {
        noteSound(counts, nanos);
        yield bytes;
      }
    };
  }

  private double gaugeMillimetres(long nanos) {
    double noise = indicator.noiseNewtons() == 0 ? 0 : GAUGE_NOISE_MILLIMETRES;
    return truth.gaugeMillimetres(nanos) + noise * gaugeNoise.nextGaussian();
  }

  private void noteSound(long counts, long nanos) {
    if (counts > greatestCounts) {
      greatestCounts = counts;
      greatestNanos = nanos;
    }
  }

  private Shown shown(long counts, double gauge) {
    boolean over = Math.abs(counts) >= indicator.shownCounts(indicator.capacityNewtons());
    return new Shown(counts, over, gauge);
  }

  private double wildNewtons(double newtons) {
    double away = (0.2 + 0.6 * wild.nextDouble()) * indicator.capacityNewtons();
    boolean up = wild.nextBoolean() && newtons + away <= indicator.capacityNewtons();
    return up ? newtons + away : newtons - away;
  }
}
