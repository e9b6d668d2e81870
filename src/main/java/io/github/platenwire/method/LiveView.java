package io.github.platenwire.method;

import java.util.Optional;

/**
 * What a test shows at one moment. Immutable; every figure rests on readings that are already in
 * the raw file. Figures are NaN while unknown.
 *
 * @param phase how far the test is
 * @param seq number of the last reading it rests on; 0 before the first
 * @param elapsedMicros time of that reading since the test's origin
 * @param loadNewtons load now, zero taken off
 * @param peakNewtons greatest load so far
 * @param stressMegapascals stress now
 * @param peakStressMegapascals stress at the greatest load so far, without any correction
 * @param rateMegapascalsPerSecond rate of loading now
 * @param band the method's band of the rate, if it has one
 * @param bandApplies whether the rate is judged at this moment
 * @param part what the method follows beside the load, if anything
 */
public record LiveView(
    Phase phase,
    long seq,
    long elapsedMicros,
    double loadNewtons,
    double peakNewtons,
    double stressMegapascals,
    double peakStressMegapascals,
    double rateMegapascalsPerSecond,
    Optional<RateBand> band,
    boolean bandApplies,
    Optional<LivePart> part) {
  /** What a method follows beside the load. */
  public sealed interface LivePart permits CrackPart, ChordPart, FrontPart {}

  /** A view of a load alone. */
  public LiveView(
      Phase phase,
      long seq,
      long elapsedMicros,
      double loadNewtons,
      double peakNewtons,
      double stressMegapascals,
      double peakStressMegapascals,
      double rateMegapascalsPerSecond,
      Optional<RateBand> band,
      boolean bandApplies) {
    this(
        phase,
        seq,
        elapsedMicros,
        loadNewtons,
        peakNewtons,
        stressMegapascals,
        peakStressMegapascals,
        rateMegapascalsPerSecond,
        band,
        bandApplies,
        Optional.empty());
  }

  /** A view of a front; there is no load. */
  static LiveView ofFront(Phase phase, long seq, long elapsedMicros, FrontPart front) {
    double none = Double.NaN;
    return new LiveView(
        phase,
        seq,
        elapsedMicros,
        none,
        none,
        none,
        none,
        none,
        Optional.empty(),
        /* bandApplies= */ false,
        Optional.of(front));
  }

  /** The crack, where one is followed. */
  public Optional<CrackPart> crack() {
    return part(CrackPart.class);
  }

  /** The loading cycles, where a modulus is measured. */
  public Optional<ChordPart> chord() {
    return part(ChordPart.class);
  }

  /** How far water has gone, where that is followed. */
  public Optional<FrontPart> front() {
    return part(FrontPart.class);
  }

  private <T extends LivePart> Optional<T> part(Class<T> kind) {
    return part.filter(kind::isInstance).map(kind::cast);
  }

  /** The same view with its crack held beside an earlier specimen's. */
  public LiveView beside(GhostCurve ghost) {
    return new LiveView(
        phase,
        seq,
        elapsedMicros,
        loadNewtons,
        peakNewtons,
        stressMegapascals,
        peakStressMegapascals,
        rateMegapascalsPerSecond,
        band,
        bandApplies,
        part.map(one -> one instanceof CrackPart crack ? crack.beside(ghost, loadNewtons) : one));
  }

  /** How far a test is. */
  public enum Phase {
    /** Waiting for a quiet zero. */
    ZEROING("waiting for a quiet zero"),
    /** Zero taken, nothing loaded yet. */
    READY("zero taken, ready to load"),
    /** Load is on. */
    LOADING("loading"),
    /** The load has fallen; a tail is being recorded. */
    TAIL("broken, recording the tail"),
    /** Over. */
    ENDED("ended");

    private final String words;

    Phase(String words) {
      this.words = words;
    }

    /** For a person. */
    public String words() {
      return words;
    }
  }

  /**
   * The band in which the rate of loading must stay.
   *
   * @param lowMegapascalsPerSecond lower limit
   * @param highMegapascalsPerSecond upper limit
   */
  public record RateBand(double lowMegapascalsPerSecond, double highMegapascalsPerSecond) {}
}
