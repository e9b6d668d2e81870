package io.github.platenwire.live;

/**
 * Stiffness of load against opening as measured. Immutable. Newtons a millimetre; NaN where
 * unknown.
 *
 * @param before slope of the initial line before cracking, over the gauges that counted at the end
 * @param beforeUncertainty its expanded uncertainty (k = 2) by noise
 * @param beforeFirstSeq number of the first row on which it rests
 * @param beforeLastSeq number of the last
 * @param after slope of load on opening by least squares over the rows of the virgin curve between
 *     two openings
 * @param afterUncertainty its expanded uncertainty (k = 2) by scatter
 * @param afterFirstSeq number of the first row on which it rests
 * @param afterLastSeq number of the last
 */
public record Stiffness(
    double before,
    double beforeUncertainty,
    long beforeFirstSeq,
    long beforeLastSeq,
    double after,
    double afterUncertainty,
    long afterFirstSeq,
    long afterLastSeq) {
  /** From the line before cracking and that after it, over the gauges of a mask. */
  static Stiffness of(InitialLine line, CrackedLine cracked, int mask, boolean smoothed) {
    boolean fitted = line.isFitted(mask);
    double compliance = fitted ? line.meanSlope(mask) : Double.NaN;
    double ofCompliance = fitted ? Math.sqrt(line.slopeVariance(mask)) : Double.NaN;
    return new Stiffness(
        1 / compliance,
        2 * ofCompliance / (compliance * compliance),
        line.firstSeq(),
        line.lastSeq(),
        cracked.slope(),
        2 * cracked.standardUncertainty(smoothed ? line.share(mask) : 1),
        cracked.firstSeq(),
        cracked.lastSeq());
  }
}
