package io.github.platenwire.emulate;

import java.util.Optional;

/**
 * One device of a beam test: how often it reads, how far off it is, what goes wrong. Immutable.
 *
 * @param face 0 or 1 for a gauge on that face; -1 for the load
 * @param rateHertz readings a second
 * @param noise standard deviation, newtons or millimetres
 * @param step smallest step that it shows, newtons or millimetres; 0 for all digits of its line
 * @param zero what it shows at rest, newtons or millimetres
 * @param scale its calibration's error as a factor
 * @param delayNanos from measuring to sending
 * @param fault what goes wrong with it, if anything
 */
public record BeamDevice(
    int face,
    double rateHertz,
    double noise,
    double step,
    double zero,
    double scale,
    long delayNanos,
    Optional<Fault> fault) {
  /** Checks the ranges. */
  public BeamDevice {
    Ranges.within("face", face, -1, 1);
    Ranges.within("rateHertz", rateHertz, 0.1, 2000);
  }

  /** A load indicator. */
  public static BeamDevice load(double rateHertz, double noiseNewtons, double stepNewtons) {
    return new BeamDevice(-1, rateHertz, noiseNewtons, stepNewtons, 25, 1, 0, Optional.empty());
  }

  /** A gauge on a face. */
  public static BeamDevice gauge(
      int face, double rateHertz, double noiseMillimetres, double stepMillimetres) {
    return new BeamDevice(
        face, rateHertz, noiseMillimetres, stepMillimetres, 0.1, 1, 0, Optional.empty());
  }

  /** The same with an error of its calibration. */
  public BeamDevice scaled(double newScale) {
    return new BeamDevice(face, rateHertz, noise, step, zero, newScale, delayNanos, fault);
  }

  /** The same with a delay. */
  public BeamDevice delayed(long newDelayNanos) {
    return new BeamDevice(face, rateHertz, noise, step, zero, scale, newDelayNanos, fault);
  }

  /** The same with something going wrong at a moment. */
  public BeamDevice failing(Kind kind, double seconds) {
    Fault newFault = new Fault(kind, seconds);
    return new BeamDevice(
        face, rateHertz, noise, step, zero, scale, delayNanos, Optional.of(newFault));
  }

  /** Whether it reads the load. */
  public boolean isLoad() {
    return face < 0;
  }

  /** Something that goes wrong from a moment on. */
  public record Fault(Kind kind, double seconds) {}

  /** What can go wrong with a gauge. */
  public enum Kind {
    /** Shows the same value from then on. */
    STICKS,
    /** Falls off: shows far less than its zero. */
    FALLS_OFF,
    /** Comes to the end of its travel: shows 5.5 mm. */
    SATURATES,
    /** Jumps by half a millimetre and stays there. */
    JUMPS,
    /** Says nothing any more. */
    FALLS_SILENT
  }
}
