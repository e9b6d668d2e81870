package io.github.platenwire.live;

/**
 * First crack by departure: the opening leaves the initial line by more than a number of standard
 * deviations (of the smoothed noise and of the line itself) and does not come back within half of
 * that until enough rows and time have passed. The figure is the load at which the departure began:
 * the newest load of the last row still within two standard deviations of the line. Its uncertainty
 * is made of the rise of load from there to where the departure was plain, of the load gained in
 * half the averaging time, and of the load's noise; the weights are ours, set by beams of known
 * truth so that twice the standard uncertainty covers about 95 % of them. Not thread-safe.
 */
final class DepartureFromLine {
  private static final double INSIDE = 2;
  private final InitialLine line;
  private final double factor;
  private final CrackSettings.Lasting lasting;
  private final CrackRow inside = new CrackRow();
  private final CrackRow outside = new CrackRow();
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
    double variance = line.noiseVariance(row.rows, row.mask) + line.variance(row.load, row.mask);
    double departure = (row.opening - line.at(row.load, row.mask)) / Math.sqrt(variance);
    if (!hasInside || (!begun && departure <= INSIDE)) {
      inside.copyFrom(row);
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
    double rise = Math.abs(outside.newestLoad - inside.newestLoad);
    double travel = Math.abs(inside.newestLoad - inside.load);
    return new FirstCrack.Figure(
        inside.newestLoad,
        2 * Math.hypot(Math.hypot(travel / 2, rise), loadNoise),
        inside.micros,
        inside.mask,
        inside.firstSeq,
        outside.seq);
  }
}
