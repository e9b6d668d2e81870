package io.github.platenwire.emulate;

/**
 * What the frame's operator and controller do in one test, in order: nothing, closing the gap, fast
 * loading, loading at the set rate, then the pump at constant travel until the cylinder breaks, and
 * a tail. Immutable.
 *
 * @param idleSeconds how long nothing happens at first, 0 to 3600
 * @param approachSeconds how long the platen travels before it touches, 0 to 600
 * @param fastMegapascalsPerSecond rate of the fast part, on the straight part of the curve
 * @param expectedMegapascals the strength that the operator expects
 * @param fastShare share of the expected strength up to which loading is fast, 0.05 to 0.9
 * @param setMegapascalsPerSecond the set rate
 * @param wanderShare by how much at most the controlled rate wanders about the set one, 0 to 0.5
 * @param controlShare share of the true peak up to which the controller can hold the rate, 0.5 to
 *     0.999; from there the travel goes on as it is and the rate falls off
 * @param tailSeconds how long it goes on after the break, 0 to 3600
 */
public record FrameProgram(
    double idleSeconds,
    double approachSeconds,
    double fastMegapascalsPerSecond,
    double expectedMegapascals,
    double fastShare,
    double setMegapascalsPerSecond,
    double wanderShare,
    double controlShare,
    double tailSeconds) {
  /** Checks the ranges. */
  public FrameProgram {
    Ranges.within("idleSeconds", idleSeconds, 0, 3600);
    Ranges.within("approachSeconds", approachSeconds, 0, 600);
    Ranges.within("fastMegapascalsPerSecond", fastMegapascalsPerSecond, 0.001, 50);
    Ranges.within("expectedMegapascals", expectedMegapascals, 0.1, 300);
    Ranges.within("fastShare", fastShare, 0.05, 0.9);
    Ranges.within("setMegapascalsPerSecond", setMegapascalsPerSecond, 0.001, 50);
    Ranges.within("wanderShare", wanderShare, 0, 0.5);
    Ranges.within("controlShare", controlShare, 0.5, 0.999);
    Ranges.within("tailSeconds", tailSeconds, 0, 3600);
  }

  /**
   * A cylinder test at 0.25 MPa/s (35 psi/s; ASTM C39/C39M, from memory), four times as fast in the
   * first part, up to 45 % of what is expected.
   *
   * @param expectedMegapascals the strength that the operator expects
   */
  public static FrameProgram cylinderAtCommonRate(double expectedMegapascals) {
    return new FrameProgram(5, 3, 1.0, expectedMegapascals, 0.45, 0.25, 0.04, 0.95, 8);
  }

  /** The same with other idle time before and tail after. */
  public FrameProgram withIdleAndTail(double newIdleSeconds, double newTailSeconds) {
    return new FrameProgram(
        newIdleSeconds,
        approachSeconds,
        fastMegapascalsPerSecond,
        expectedMegapascals,
        fastShare,
        setMegapascalsPerSecond,
        wanderShare,
        controlShare,
        newTailSeconds);
  }

  /** The same with another set rate. */
  public FrameProgram withSetRate(double newSetMegapascalsPerSecond) {
    return new FrameProgram(
        idleSeconds,
        approachSeconds,
        fastMegapascalsPerSecond,
        expectedMegapascals,
        fastShare,
        newSetMegapascalsPerSecond,
        wanderShare,
        controlShare,
        tailSeconds);
  }
}
