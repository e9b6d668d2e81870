package io.github.platenwire.method;

/** Where along its span a beam broke, as a person saw it. Immutable; safe for any thread. */
public sealed interface BreakPosition {
  /** Nobody was asked, or nobody knew. */
  BreakPosition NOT_RECORDED = new NotRecorded();

  /** Between the two loads. */
  BreakPosition MIDDLE_THIRD = new MiddleThird();

  /**
   * Outside the middle third.
   *
   * @param millimetres mean distance of the break from the nearer support, along the middle of the
   *     tension face; more than 0
   */
  static BreakPosition outside(double millimetres) {
    return new Outside(millimetres);
  }

  /** Nobody was asked, or nobody knew. */
  record NotRecorded() implements BreakPosition {}

  /** Between the two loads. */
  record MiddleThird() implements BreakPosition {}

  /**
   * Outside the middle third.
   *
   * @param millimetres distance from the nearer support
   */
  record Outside(double millimetres) implements BreakPosition {
    /** Refuses what is no distance. */
    public Outside {
      if (!(millimetres > 0)) {
        throw new IllegalArgumentException("the distance must be above 0, not " + millimetres);
      }
    }
  }
}
