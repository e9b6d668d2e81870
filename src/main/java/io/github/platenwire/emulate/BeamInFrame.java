package io.github.platenwire.emulate;

/**
 * An emulated beam as the device of a frame sees it that reads the load and one gauge, on the
 * beam's first face. Immutable; safe for any thread.
 *
 * @param truth the beam under its program
 */
public record BeamInFrame(BeamTruth truth) implements SpecimenTruth {
  private static final double NANOS = 1e9;

  @Override
  public double loadNewtons(long nanos) {
    return truth.loadAt(nanos / NANOS);
  }

  @Override
  public double gaugeMillimetres(long nanos) {
    return truth.openingAt(0, nanos / NANOS);
  }

  @Override
  public long endNanos() {
    return Math.round(truth.seconds() * NANOS);
  }
}
