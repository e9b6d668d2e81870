package io.github.platenwire.live;

/**
 * Width of the crack where a load was reached for the first time. Immutable.
 *
 * @param newtons the load
 * @param millimetres the width on the virgin curve
 * @param parts what makes it uncertain
 * @param mask the gauges on which it rests, bit 0 for the first
 * @param firstSeq number of the first load row on which it rests
 * @param lastSeq number of the last
 */
public record WidthAtLoad(
    double newtons, double millimetres, Parts parts, int mask, long firstSeq, long lastSeq) {
  /**
   * Standard uncertainties of a width, millimetres, without the calibrations.
   *
   * @param noise noise and resolution of the gauges
   * @param zero noise of their zeros
   * @param stretch slope of the initial line
   * @param timing rate of opening times the uncertainty of the time between load and gauges
   * @param load noise of the load times the slope of the curve
   * @param jump half of a jump of the width near by, smeared by the averaging
   */
  public record Parts(
      double noise, double zero, double stretch, double timing, double load, double jump) {
    /** Root of the sum of squares. */
    public double combined() {
      double squares = noise * noise + zero * zero + stretch * stretch;
      return Math.sqrt(squares + timing * timing + load * load + jump * jump);
    }

    /** Expanded with k = 2. */
    public double expanded() {
      return 2 * combined();
    }
  }
}
