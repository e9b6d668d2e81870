package io.github.platenwire.live;

import java.util.ArrayList;
import java.util.List;

/**
 * Sets lone impossible readings aside, one reading behind the stream. A reading is suspect when
 *
 * <ul>
 *   <li>it would be the greatest so far, and lies above both its neighbours by more than the
 *       machine can move the load in the time between; or
 *   <li>it lies as far below both, and these agree with each other.
 * </ul>
 *
 * <p>A load may fall as fast as it likes, since specimens break; so a fall alone is never suspect,
 * nor is what a broken specimen does below its peak. What the machine can do in the time between
 * two stamps is its greatest slope times that time, lengthened by the jitter of the stamps, and a
 * margin for noise. The first reading of all, and the last before the record ends, are held only
 * against the one neighbour that they have, and only upward.
 *
 * <p>Constant work and no allocation a reading. Not thread-safe. Values are in any one unit.
 */
public final class LoneReadingFilter {
  private static final int MOST_LISTED = 64;

  private final double greatestSlope;
  private final long jitterMicros;
  private double margin;

  private boolean hasTrusted;
  private long trustedSeq;
  private long trustedMicros;
  private double trustedValue;
  private double greatest = Double.NEGATIVE_INFINITY;

  private boolean holds;
  private long heldSeq;
  private long heldMicros;
  private double heldValue;

  private final long[] suspects = new long[MOST_LISTED];
  private long suspectCount;

  /**
   * Starts with nothing seen.
   *
   * @param greatestSlope greatest rate at which the machine can raise the load, a second
   * @param jitterMicros how far a stamp can be off against the one before it, microseconds
   * @param margin how far two readings may differ by noise alone
   */
  public LoneReadingFilter(double greatestSlope, long jitterMicros, double margin) {
    this.greatestSlope = greatestSlope;
    this.jitterMicros = jitterMicros;
    this.margin = margin;
  }

  /** Sets the margin for noise, once it is known. */
  public void setMargin(double margin) {
    this.margin = margin;
  }

  /**
   * Takes the next finite reading and judges the one before it.
   *
   * @return whether the one before it is trusted; then it is what {@link #seq}, {@link
   *     #elapsedMicros} and {@link #value} tell
   */
  public boolean accept(long seq, long elapsedMicros, double value) {
    boolean released = false;
    if (holds) {
      released = !isHeldSuspect(elapsedMicros, value);
      settleHeld(released);
    }
    holds = true;
    heldSeq = seq;
    heldMicros = elapsedMicros;
    heldValue = value;
    return released;
  }

  /** Judges the reading still held, as the last of the record; as {@link #accept} otherwise. */
  public boolean flush() {
    if (!holds) {
      return false;
    }
    boolean released = !isHeldSuspectAsLast();
    settleHeld(released);
    holds = false;
    return released;
  }

  private void settleHeld(boolean trusted) {
    if (trusted) {
      hasTrusted = true;
      trustedSeq = heldSeq;
      trustedMicros = heldMicros;
      trustedValue = heldValue;
      greatest = Math.max(greatest, heldValue);
    } else {
      if (suspectCount < MOST_LISTED) {
        suspects[(int) suspectCount] = heldSeq;
      }
      suspectCount++;
    }
  }

  private boolean isHeldSuspect(long nextMicros, double nextValue) {
    double allowedAfter = possibleChange(nextMicros - heldMicros);
    if (!hasTrusted) {
      return heldValue - nextValue > allowedAfter;
    }
    double allowedBefore = possibleChange(heldMicros - trustedMicros);
    boolean above =
        heldValue > greatest
            && heldValue - trustedValue > allowedBefore
            && heldValue - nextValue > allowedAfter;
    boolean below =
        trustedValue - heldValue > allowedBefore
            && nextValue - heldValue > allowedAfter
            && Math.abs(nextValue - trustedValue) <= possibleChange(nextMicros - trustedMicros);
    return above || below;
  }

  private boolean isHeldSuspectAsLast() {
    return hasTrusted
        && heldValue > greatest
        && heldValue - trustedValue > possibleChange(heldMicros - trustedMicros);
  }

  private double possibleChange(long micros) {
    return greatestSlope * 1e-6 * (micros + jitterMicros) + margin;
  }

  /** Whether a reading is held that would be trusted if it were the last of the record. */
  public boolean holdsTrustworthy() {
    return holds && !isHeldSuspectAsLast();
  }

  /** Time of the reading held, microseconds. */
  public long heldMicros() {
    return heldMicros;
  }

  /** Value of the reading held. */
  public double heldValue() {
    return heldValue;
  }

  /** Number of the latest trusted reading. */
  public long seq() {
    return trustedSeq;
  }

  /** Time of the latest trusted reading, microseconds. */
  public long elapsedMicros() {
    return trustedMicros;
  }

  /** Value of the latest trusted reading. */
  public double value() {
    return trustedValue;
  }

  /** How many readings were suspect. */
  public long suspectCount() {
    return suspectCount;
  }

  /** Number of the latest of the listed suspects; 0 while there is none. */
  public long lastListedSuspect() {
    return suspectCount == 0 ? 0 : suspects[(int) Math.min(suspectCount, MOST_LISTED) - 1];
  }

  /** The numbers of the first 64 suspect readings. */
  public List<Long> suspects() {
    List<Long> list = new ArrayList<>();
    for (int i = 0; i < Math.min(suspectCount, MOST_LISTED); i++) {
      list.add(suspects[i]);
    }
    return List.copyOf(list);
  }
}
