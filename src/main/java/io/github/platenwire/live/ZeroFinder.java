package io.github.platenwire.live;

/**
 * Finds the zero load: the mean of the first stretch of readings that is long enough, quiet (its
 * spread stays within a limit) and near enough to nought. A stretch starts anew at each reading
 * that would widen it beyond the limit.
 *
 * <p>Once the load has come on, no zero can be found any more: then the longest stretch that was
 * quiet and near nought serves, if it has enough readings, and else there is no zero and nought is
 * taken. Load has come on when a reading is both above the tolerance and above the least reading so
 * far, each by more than {@link Settings#loadRise}; so an indicator that is set to nought after the
 * recording has started still gets its zero.
 *
 * <p>Constant work and no allocation a reading. Not thread-safe. Values are in any one unit.
 */
public final class ZeroFinder {
  private final Settings settings;
  private final Stretch current = new Stretch();
  private final Stretch best = new Stretch();
  private double leastSoFar = Double.POSITIVE_INFINITY;
  private State state = State.SEEKING;

  /** Starts with nothing seen. */
  public ZeroFinder(Settings settings) {
    this.settings = settings;
  }

  /**
   * What counts as a zero.
   *
   * @param windowMicros how long the readings must stay quiet, microseconds
   * @param windowReadings how many readings must be quiet, at least
   * @param shortReadings how many readings make a zero when the load has come on too early
   * @param quietSpread greatest less least reading of a quiet stretch, at most
   * @param tolerance how far from nought the zero may lie
   * @param loadRise how far a reading must rise to tell that the load has come on
   */
  public record Settings(
      long windowMicros,
      int windowReadings,
      int shortReadings,
      double quietSpread,
      double tolerance,
      double loadRise) {}

  /** How far the search is. */
  public enum State {
    /** Nothing found yet, and no load yet. */
    SEEKING,
    /** A quiet zero was found. */
    QUIET,
    /** The load came on early; the zero rests on a shorter stretch than asked for. */
    SHORT,
    /** The load came on before anything could serve as zero; nought is taken. */
    NONE
  }

  /**
   * Takes the next trusted reading; nothing changes once the search is over.
   *
   * @return the state after it
   */
  public State accept(long seq, long elapsedMicros, double value) {
    if (state != State.SEEKING) {
      return state;
    }
    leastSoFar = Math.min(leastSoFar, value);
    if (value > settings.tolerance + settings.loadRise && value - leastSoFar > settings.loadRise) {
      return settle();
    }
    if (current.count > 0 && staysQuiet(value)) {
      current.add(seq, elapsedMicros, value);
    } else {
      keepIfBest();
      current.restart(seq, elapsedMicros, value);
    }
    if (isLongEnough() && isNearNought()) {
      best.copyFrom(current);
      state = State.QUIET;
    }
    return state;
  }

  /** Ends the search with what there is, as if the load had come on. */
  public State settle() {
    if (state == State.SEEKING) {
      keepIfBest();
      state = best.count >= settings.shortReadings ? State.SHORT : State.NONE;
    }
    return state;
  }

  private boolean staysQuiet(double value) {
    return Math.max(current.greatest, value) - Math.min(current.least, value)
        <= settings.quietSpread;
  }

  private boolean isLongEnough() {
    return current.count >= settings.windowReadings
        && current.spanMicros() >= settings.windowMicros;
  }

  private boolean isNearNought() {
    return Math.abs(current.mean) <= settings.tolerance;
  }

  private void keepIfBest() {
    if (current.count > best.count && isNearNought()) {
      best.copyFrom(current);
    }
  }

  /** How far the search is. */
  public State state() {
    return state;
  }

  /** The zero; 0 while seeking and where there is none. */
  public double zero() {
    return isFound() ? best.mean : 0;
  }

  /**
   * Standard deviation of the readings that the zero rests on; NaN where there are fewer than 2.
   */
  public double noise() {
    return isFound() ? best.standardDeviation() : Double.NaN;
  }

  /** Smallest step between those readings, an estimate of the resolution; NaN if all are equal. */
  public double resolution() {
    return isFound() ? best.smallestStep() : Double.NaN;
  }

  /** How many readings the zero rests on; 0 where there is none. */
  public int readings() {
    return isFound() ? best.count : 0;
  }

  /** How long a time those readings span, microseconds. */
  public long spanMicros() {
    return isFound() ? best.spanMicros() : 0;
  }

  /** Number of the first row that the zero rests on; 0 where there is none. */
  public long firstSeq() {
    return isFound() ? best.firstSeq : 0;
  }

  /** Number of the last row that the zero rests on; 0 where there is none. */
  public long lastSeq() {
    return isFound() ? best.lastSeq : 0;
  }

  private boolean isFound() {
    return state == State.QUIET || state == State.SHORT;
  }
}
