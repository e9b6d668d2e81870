package io.github.platenwire.emulate;

/**
 * What a device on an emulated specimen measures at any moment. All times are nanoseconds since the
 * start of the test. Every one is safe for any thread.
 */
public interface SpecimenTruth {
  /**
   * The true load in newtons.
   *
   * @param nanos time since the start; any value
   */
  double loadNewtons(long nanos);

  /**
   * What a gauge on the specimen truly reads, in millimetres: a crack's opening, or the platen's
   * travel.
   *
   * @param nanos time since the start; any value
   */
  double gaugeMillimetres(long nanos);

  /** When the test is over. */
  long endNanos();
}
