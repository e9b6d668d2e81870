package io.github.platenwire.study;

/**
 * A ratio with the uncertainty of the frames added to its interval. Immutable.
 *
 * @param ratio unchanged
 * @param interval wider than, or the same as, the statistical one
 * @param calibrationRelative standard uncertainty that calibration adds, as a share of the ratio
 * @param reason what was added and what cancelled, in one line for a person
 */
public record CalibratedRatio(
    double ratio, Interval interval, double calibrationRelative, String reason) {

  /** Whether both series were broken on one frame with one calibration. */
  public enum Frames {
    /** One frame, one certificate: its common error is the same factor above and below. */
    SAME,
    /** Two frames, or one frame before and after a new calibration. */
    DIFFERENT,
    /** No certificate tells: counted as different. */
    NOT_KNOWN
  }

  /**
   * The relative standard uncertainties of one series' values that no number of specimens reduces.
   *
   * @param shared of the frame: the same factor on each of its readings, such as its certificate
   * @param own of this series alone, such as one calliper used for all its diameters
   */
  public record Systematic(double shared, double own) {
    /** Refuses what is no uncertainty. */
    public Systematic {
      Values.requireNotNegative("relative uncertainty", shared, own);
    }
  }

  /**
   * Adds calibration to a ratio's statistical interval, by JCGM 100. In one line: a common relative
   * error e of one frame turns A/B into (1 + e)A/((1 + e)B) = A/B and cancels; anything else adds
   * in squares.
   *
   * <p>Half widths are combined on the logarithmic scale as √(statistical² + (1.96·u)²), 1.96 for
   * 95 % of a standard uncertainty taken as known.
   *
   * @param ratio above zero
   * @param statistical its 95 % interval, holding the ratio
   * @param first of the series above the line
   * @param second of the series below the line
   */
  public static CalibratedRatio of(
      double ratio, Interval statistical, Systematic first, Systematic second, Frames frames) {
    Values.requirePositive("ratio", ratio);
    if (!statistical.contains(ratio)) {
      throw new IllegalArgumentException("the interval does not hold the ratio, ratio=" + ratio);
    }
    double squares = first.own * first.own + second.own * second.own;
    if (frames != Frames.SAME) {
      squares += first.shared * first.shared + second.shared * second.shared;
    }
    double added = Math.sqrt(squares);
    double reach = StudentT.twoSided(Values.LEVEL, Double.POSITIVE_INFINITY) * added;
    return new CalibratedRatio(ratio, widen(ratio, statistical, reach), added, reason(frames));
  }

  private static Interval widen(double ratio, Interval statistical, double reach) {
    double high = ratio * Math.exp(Math.hypot(Math.log(statistical.high() / ratio), reach));
    // A lower end at or below zero has no logarithm; on the plain scale it can still move out.
    double low =
        statistical.low() > 0
            ? ratio * Math.exp(-Math.hypot(Math.log(ratio / statistical.low()), reach))
            : ratio - Math.hypot(ratio - statistical.low(), ratio * reach);
    return new Interval(low, high);
  }

  /** What is added and what cancels, in one line for a person. */
  static String reason(Frames frames) {
    return switch (frames) {
      case SAME ->
          "Both series were measured on the same frame with the same calibration, so its common"
              + " error cancels in the ratio; only what belongs to one series alone is added.";
      case DIFFERENT ->
          "The series were measured with different calibrations, so the uncertainty of both is"
              + " added to the ratio.";
      case NOT_KNOWN ->
          "No certificate tells that the measuring stayed the same from one series to the other, so"
              + " the error that is allowed to it is added to the ratio for both.";
    };
  }
}
