package io.github.platenwire.live;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Judges the rate of loading over a part of the loading that is known only once the peak is: from
 * the moment at which the load first passed a share of the peak to the moment at which it first
 * passed a greater one.
 *
 * <p>Time is cut into steps; each has one rate, and belongs to the greatest load before it began,
 * so that nothing from before a limit was passed is counted behind it. A step counts only once the
 * load has risen above everything in it: so neither the step in which the specimen breaks nor
 * anything after it is ever counted. The steps are summed by level in bins of less than 0.8 % of
 * the load (128 to each doubling, cut out of the bits of the double), and a bin counts if its lower
 * edge lies within the limits. The bins hold all that is needed at the end, in constant memory, and
 * the same readings always give the same doubles.
 *
 * <p>Constant work and no allocation a reading. Not thread-safe. Rates are in the loads' unit a
 * second.
 */
public final class BandJudge {
  private static final int BINS_PER_OCTAVE_BITS = 7;
  private static final int SHIFT = 52 - BINS_PER_OCTAVE_BITS;
  private static final long FIRST_BIN = Double.doubleToRawLongBits(1.0) >>> SHIFT;
  private static final int OCTAVES = 24;

  private final long stepMicros;
  private final double[] lows;
  private final double[] highs;
  private final RateSums[] bins = new RateSums[OCTAVES << BINS_PER_OCTAVE_BITS];
  private final RateSums pending;
  private int pendingBin;
  private double greatest = Double.NEGATIVE_INFINITY;
  private boolean stepping;
  private long stepStartMicros;
  private double stepLevel;
  private @Nullable Watch watch;

  /**
   * Starts with nothing seen.
   *
   * @param stepMicros length of a step, microseconds; best the window over which rates are taken
   * @param bands the bands against which the rates are held
   */
  public BandJudge(long stepMicros, List<Band> bands) {
    this.stepMicros = stepMicros;
    this.lows = bands.stream().mapToDouble(Band::low).toArray();
    this.highs = bands.stream().mapToDouble(Band::high).toArray();
    this.pending = new RateSums(lows.length);
    Arrays.setAll(bins, i -> new RateSums(lows.length));
  }

  /**
   * Limits of a rate, both allowed.
   *
   * @param low lower limit
   * @param high upper limit
   */
  public record Band(double low, double high) {}

  /**
   * What the rate was between two shares of the peak. Immutable.
   *
   * @param seconds how long a time was judged
   * @param shares share of that time within each band, 0 to 1, in the bands' order
   * @param least least rate of a step
   * @param greatest greatest rate of a step
   * @param mean mean rate over that time
   */
  public record Verdict(
      double seconds, List<Double> shares, double least, double greatest, double mean) {
    /** Makes the list immutable. */
    public Verdict {
      shares = List.copyOf(shares);
    }
  }

  /**
   * One step.
   *
   * @param fromMicros when it began
   * @param toMicros when it ended
   * @param level greatest load before it began
   * @param rate its rate
   */
  public record Step(long fromMicros, long toMicros, double level, double rate) {
    /** Whether its level belongs to the part between two shares of the greatest load. */
    public boolean isWithin(double fromShare, double toShare, double greatestLoad) {
      double edge = lowerEdge(binOf(level));
      return edge >= fromShare * greatestLoad && edge < toShare * greatestLoad;
    }
  }

  /** Told of each step that ends. */
  @FunctionalInterface
  public interface Watch {
    /** The next step. */
    void step(Step step);
  }

  /** Shows each step from now on to whoever wants to tell afterwards how a rate came about. */
  public void watch(Watch stepWatch) {
    watch = stepWatch;
  }

  /**
   * Takes the next trusted reading while the specimen is loaded.
   *
   * @param elapsedMicros its time
   * @param load the load
   * @param rate rate of loading over the step that ends here; NaN if not known
   */
  public void accept(long elapsedMicros, double load, double rate) {
    if (load > greatest) {
      commit();
      greatest = load;
    }
    if (!stepping) {
      startStep(elapsedMicros);
    } else if (elapsedMicros - stepStartMicros >= stepMicros) {
      show(elapsedMicros, rate);
      endStep((elapsedMicros - stepStartMicros) * 1e-6, rate);
      startStep(elapsedMicros);
    }
  }

  private void show(long elapsedMicros, double rate) {
    if (watch != null && !Double.isNaN(rate)) {
      watch.step(new Step(stepStartMicros, elapsedMicros, stepLevel, rate));
    }
  }

  private void startStep(long elapsedMicros) {
    stepping = true;
    stepStartMicros = elapsedMicros;
    stepLevel = greatest;
  }

  private void endStep(double seconds, double rate) {
    if (Double.isNaN(rate)) {
      return;
    }
    if (pending.seconds == 0) {
      pendingBin = binOf(stepLevel);
    }
    pending.seconds += seconds;
    pending.rateSeconds += rate * seconds;
    pending.least = Math.min(pending.least, rate);
    pending.greatest = Math.max(pending.greatest, rate);
    for (int i = 0; i < lows.length; i++) {
      if (rate >= lows[i] && rate <= highs[i]) {
        pending.secondsInBand[i] += seconds;
      }
    }
  }

  private void commit() {
    if (pending.seconds > 0) {
      bins[pendingBin].add(pending);
      pending.clear();
    }
  }

  private static int binOf(double level) {
    if (!(level >= 1.0)) {
      return 0;
    }
    long bin = (Double.doubleToRawLongBits(level) >>> SHIFT) - FIRST_BIN;
    return (int) Math.min(bin, ((long) OCTAVES << BINS_PER_OCTAVE_BITS) - 1);
  }

  private static double lowerEdge(int bin) {
    return Double.longBitsToDouble((bin + FIRST_BIN) << SHIFT);
  }

  /**
   * What the rate was between two shares of the greatest load so far.
   *
   * @param fromShare where the judged part begins, 0 to 1
   * @param toShare where it ends, 0 to 1
   * @return empty if there was no step in that part
   */
  public Optional<Verdict> judge(double fromShare, double toShare) {
    RateSums sum = new RateSums(lows.length);
    for (int i = 0; i < bins.length; i++) {
      double edge = lowerEdge(i);
      if (edge >= fromShare * greatest && edge < toShare * greatest) {
        sum.add(bins[i]);
      }
    }
    if (sum.seconds == 0) {
      return Optional.empty();
    }
    List<Double> shares =
        Arrays.stream(sum.secondsInBand).map(inBand -> inBand / sum.seconds).boxed().toList();
    return Optional.of(
        new Verdict(sum.seconds, shares, sum.least, sum.greatest, sum.rateSeconds / sum.seconds));
  }
}
