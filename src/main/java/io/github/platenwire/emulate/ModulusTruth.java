package io.github.platenwire.emulate;

import java.util.List;

/**
 * The true load and what gauges see of an emulated cylinder at any moment of a program: face 0
 * along the axis, face 1 across it; both rise under load. Immutable once the program is built.
 */
public final class ModulusTruth implements GaugedTruth {
  private final EmulatedModulus cylinder;
  private final BeamProgram program;
  private final List<Double> perStrain;

  /**
   * A cylinder under a program.
   *
   * @param perStrain what each face's gauge shows for a strain of one, in its own unit: gauge
   *     length times lever for millimetres, 1e6 for microstrain
   */
  public ModulusTruth(EmulatedModulus cylinder, BeamProgram program, List<Double> perStrain) {
    this.cylinder = cylinder;
    this.program = program;
    this.perStrain = List.copyOf(perStrain);
  }

  /**
   * Stands idle, then loads to a share of the strength and unloads, over and over.
   *
   * @param cylinder the cylinder
   * @param cycles how often
   * @param share how far, as a share of the strength
   * @param megapascalsPerSecond rate of loading; unloading is three times as fast
   * @param idleSeconds without load before and after
   */
  public static BeamProgram cycles(
      EmulatedModulus cylinder,
      int cycles,
      double share,
      double megapascalsPerSecond,
      double idleSeconds) {
    double top = share * cylinder.strengthMegapascals() * cylinder.area();
    double rate = megapascalsPerSecond * cylinder.area();
    BeamProgram program = new BeamProgram(idleSeconds);
    for (int i = 0; i < cycles; i++) {
      program.to(top, rate).hold(0.3).to(0.01 * top, 3 * rate).hold(2);
    }
    return program.to(0, rate).hold(idleSeconds);
  }

  /** The cylinder. */
  public EmulatedModulus cylinder() {
    return cylinder;
  }

  @Override
  public double seconds() {
    return program.seconds();
  }

  @Override
  public double loadAt(double seconds) {
    return program.loadAt(seconds);
  }

  @Override
  public double openingAt(int face, double seconds) {
    double stress = program.loadAt(seconds) / cylinder.area();
    double strain =
        cylinder.strainAt(stress)
            + cylinder.slackAfter(program.greatestUpTo(seconds) / cylinder.area());
    return perStrain.get(face)
        * (face == 0 ? strain : cylinder.poisson() * cylinder.strainAt(stress));
  }
}
