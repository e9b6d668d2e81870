package io.github.platenwire.live;

/**
 * First crack by departure: the opening leaves the initial line by more than a number of standard
 * deviations (of the smoothed noise and of the line itself) and does not come back within half of
 * that until enough rows and time have passed. The figure is the load at which the departure began:
 * the newest load of the last row still within two standard deviations of the line, or the greatest
 * load up to then where that row lies on an unloading, since a beam cracks while it is loaded. Its
 * uncertainty is made of the rise of load from there to where the departure was plain, of the load
 * gained in half the averaging time, and of the load's noise; the weights are ours, set by beams of
 * known truth so that twice the standard uncertainty covers about 95 % of them. Not thread-safe.
 */
final class DepartureFromLine {
  private static final double INSIDE = 2;
  private static final double OF_TRAVEL = 0.4;
  private static final double OF_RISE = 0.9;

  private final InitialLine line;
  private final double factor;
  private final CrackSettings.Lasting lasting;
  private final CrackRow inside = new CrackRow();
  private final CrackRow outside = new CrackRow();
  private double greatest = Double.NEGATIVE_INFINITY;
  private double insideGreatest;
  private boolean hasInside;
  private boolean begun;
  private boolean known;
  private int rowsSince;

  DepartureFromLine(InitialLine line, double factor, CrackSettings.Lasting lasting) {
    this.line = line;
    this.factor = factor;
    this.lasting = lasting;
  }

  /** Takes a row; true when the figure has become known. */
  boolean accept(CrackRow row) {
    if (known || Double.isNaN(row.opening) || !line.isFitted(row.mask)) {
      return false;
    }
    greatest = Math.max(greatest, row.load);
    double variance = line.noiseVariance(row.rows, row.mask) + line.variance(row.load, row.mask);
    double departure = (row.opening - line.at(row.load, row.mask)) / Math.sqrt(variance);
    if (!hasInside || (!begun && departure <= INSIDE)) {
      inside.copyFrom(row);
      insideGreatest = greatest;
      hasInside = true;
    }
    if (begun && (departure < factor / 2 || row.mask != outside.mask)) {
      begun = false;
    }
    if (!begun && departure > factor) {
      begun = true;
      rowsSince = 0;
      outside.copyFrom(row);
    }
    if (begun) {
      rowsSince++;
      known = rowsSince >= lasting.rows() && row.micros - outside.micros >= lasting.micros();
    }
    return known;
  }

  boolean isKnown() {
    return known;
  }

  /**
   * The figure.
   *
   * @param loadNoise standard deviation of the load
   */
  FirstCrack.Figure figure(double loadNoise) {
    double began = Math.max(insideGreatest, inside.newestLoad);
    double rise = Math.max(0, outside.newestLoad - began);
    double travel = Math.abs(began - inside.load);
    return new FirstCrack.Figure(
        began,
        2 * Math.hypot(Math.hypot(OF_TRAVEL * travel, OF_RISE * rise), loadNoise),
        0,
        inside.micros,
        inside.mask,
        inside.firstSeq,
        outside.seq);
  }
}
