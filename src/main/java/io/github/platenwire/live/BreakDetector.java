package io.github.platenwire.live;

/**
 * Tells when the load is lost for good. It is lost when it has been below a fraction of the peak
 * for a set time and a set number of readings, once the peak has reached a least load. A tail
 * follows, after which the test is over.
 *
 * <ul>
 *   <li>A drop that does not last, or at a low load, is seating and no break.
 *   <li>In the tail a load above the old peak withdraws the break, and the test goes on.
 *   <li>In the tail a load that still stands at a good part of the peak and gains step by step
 *       lengthens the tail, so that a specimen that was only seating is not left; what gains
 *       nothing for a whole tail is over. As each step is a set part of the peak, this comes to an
 *       end.
 *   <li>A slow fall, such as an operator's unloading, ends the test in the same way as a break:
 *       whether the fracture was well defined is for the operator to say. {@link #lostMicros} tells
 *       how long after the peak the load was lost.
 * </ul>
 *
 * <p>Constant work and no allocation a reading. Not thread-safe. Loads are in any one unit.
 */
public final class BreakDetector {
  /** What {@link #tailEndMicros} gives while the load is not lost. */
  public static final long NEVER = Long.MAX_VALUE;

  private final Settings settings;
  private double peak = Double.NEGATIVE_INFINITY;
  private int lowReadings;
  private long lowSinceMicros;
  private long lowSinceSeq;
  private boolean lost;
  private double gainLevel;
  private long tailEndMicros = NEVER;

  /** Starts with nothing seen. */
  public BreakDetector(Settings settings) {
    this.settings = settings;
  }

  /**
   * What counts as a break.
   *
   * @param fraction of the peak, below which the load counts as lost; between 0 and 1
   * @param lastingMicros how long it must stay lost, microseconds
   * @param lastingReadings in how many readings in a row it must be lost, at least
   * @param leastPeak peak below which nothing counts as a break
   * @param tailMicros how long the tail is, microseconds
   * @param regainFraction part of the peak at which a load must stand for its gain to count
   * @param gainFraction part of the peak that it must gain within a tail to lengthen it
   */
  public record Settings(
      double fraction,
      long lastingMicros,
      int lastingReadings,
      double leastPeak,
      long tailMicros,
      double regainFraction,
      double gainFraction) {}

  /** What a reading brought about. */
  public enum Event {
    /** Nothing. */
    NONE,
    /** The load is lost; the tail begins. */
    BREAK,
    /** The load has climbed above the old peak; the test goes on. */
    WITHDRAWN
  }

  /** Takes the next trusted reading. */
  public Event accept(long seq, long elapsedMicros, double load) {
    if (load > peak) {
      return climb(load);
    }
    if (lost) {
      followTail(elapsedMicros, load);
      return Event.NONE;
    }
    if (!isLow(load)) {
      lowReadings = 0;
      return Event.NONE;
    }
    if (lowReadings == 0) {
      lowSinceMicros = elapsedMicros;
      lowSinceSeq = seq;
    }
    lowReadings++;
    return lasts(lowReadings, elapsedMicros) ? lose(elapsedMicros, load) : Event.NONE;
  }

  private Event climb(double load) {
    peak = load;
    lowReadings = 0;
    Event event = lost ? Event.WITHDRAWN : Event.NONE;
    lost = false;
    tailEndMicros = NEVER;
    return event;
  }

  private Event lose(long elapsedMicros, double load) {
    lost = true;
    gainLevel = load;
    tailEndMicros = elapsedMicros + settings.tailMicros;
    return Event.BREAK;
  }

  private void followTail(long elapsedMicros, double load) {
    if (gains(load)) {
      tailEndMicros = elapsedMicros + settings.tailMicros;
      gainLevel = load;
    } else {
      gainLevel = Math.min(gainLevel, load);
    }
  }

  private boolean gains(double load) {
    return load >= settings.regainFraction * peak
        && load >= gainLevel + settings.gainFraction * peak;
  }

  private boolean isLow(double load) {
    return peak >= settings.leastPeak && load < settings.fraction * peak;
  }

  private boolean lasts(int readings, long elapsedMicros) {
    return readings >= settings.lastingReadings
        && elapsedMicros - lowSinceMicros >= settings.lastingMicros;
  }

  /** Whether the load is lost and the tail is running or over. */
  public boolean isLost() {
    return lost;
  }

  /** Whether the latest readings are below the fraction of the peak, lost for good or not. */
  public boolean isLow() {
    return lost || lowReadings > 0;
  }

  /** Time of the first reading of those by which the load is low, microseconds. */
  public long lostMicros() {
    return lowSinceMicros;
  }

  /** Number of the first row of those by which the load is low. */
  public long lostSeq() {
    return lowSinceSeq;
  }

  /** Time at which the tail ends, microseconds; {@link #NEVER} while the load is not lost. */
  public long tailEndMicros() {
    return tailEndMicros;
  }

  /** What {@link #tailEndMicros} would be after one more reading; changes nothing. */
  public long tailEndMicrosWith(long elapsedMicros, double load) {
    if (load > peak) {
      return NEVER;
    }
    if (lost) {
      return gains(load) ? elapsedMicros + settings.tailMicros : tailEndMicros;
    }
    boolean breaks = isLow(load) && lowReadings > 0 && lasts(lowReadings + 1, elapsedMicros);
    return breaks ? elapsedMicros + settings.tailMicros : NEVER;
  }
}
