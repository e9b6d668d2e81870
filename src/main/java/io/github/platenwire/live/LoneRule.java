package io.github.platenwire.live;

/**
 * What a load cannot do between two readings; see {@link LoneReadingFilter}. Immutable.
 *
 * @param greatestSlope greatest rate at which the machine can raise the load, newtons a second
 * @param jitterMicros how far a stamp can be off against the one before it, microseconds
 * @param resolutionNewtons smallest step of the readings; 0 if unknown
 * @param noiseFactor by how many standard deviations of the noise at zero two readings may differ
 */
public record LoneRule(
    double greatestSlope, long jitterMicros, double resolutionNewtons, double noiseFactor) {
  LoneReadingFilter newFilter() {
    return new LoneReadingFilter(greatestSlope, jitterMicros, margin(0));
  }

  /** How far two readings may differ by noise and resolution alone, newtons. */
  double margin(double noiseNewtons) {
    return noiseFactor * noiseNewtons + 2 * resolutionNewtons;
  }
}
