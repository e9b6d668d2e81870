package io.github.platenwire.cli;

import io.github.platenwire.emulate.BeamInFrame;
import io.github.platenwire.emulate.BeamProgram;
import io.github.platenwire.emulate.BeamSummary;
import io.github.platenwire.emulate.BeamTruth;
import io.github.platenwire.emulate.CylinderTruth;
import io.github.platenwire.emulate.EmulatedBeam;
import io.github.platenwire.emulate.EmulatedCylinder;
import io.github.platenwire.emulate.EmulatedCylinder.BreakKind;
import io.github.platenwire.emulate.FrameProgram;
import io.github.platenwire.emulate.SentTruth;
import io.github.platenwire.emulate.SpecimenTruth;
import io.github.platenwire.emulate.TruthSummary;
import picocli.CommandLine.Option;

/** What is in the emulated frame, by the options of {@code emulate}. */
final class EmulatedSpecimen {
  private static final double WIDTH_AT = 1.5;
  private static final double GREATEST = 2;
  private static final double SECONDS_TO_CRACK = 10;

  @Option(
      names = "--strength",
      paramLabel = "MPA",
      description = "True strength in MPa (default: ${DEFAULT-VALUE}; 1 MPa = 145 psi).")
  private double strengthMegapascals = 25;

  @Option(
      names = "--diameter",
      paramLabel = "MM",
      description = "Diameter in mm (default: ${DEFAULT-VALUE}; 101.6 mm = 4 in).")
  private double diameterMillimetres = 100;

  @Option(
      names = "--length",
      paramLabel = "MM",
      description = "Length in mm (default: ${DEFAULT-VALUE}).")
  private double lengthMillimetres = 200;

  @Option(
      names = "--load-rate",
      paramLabel = "MPA/S",
      description = "Rate of loading in MPa/s (default: ${DEFAULT-VALUE}; 35 psi/s = 0.241 MPa/s).")
  private double rateMegapascalsPerSecond = 0.25;

  @Option(names = "--gradual", description = "Let it soften slowly instead of breaking suddenly.")
  private boolean gradual;

  @Option(
      names = "--beam",
      description = "A split beam in place of the cylinder; needs a layout with a gauge.")
  private boolean beam;

  @Option(
      names = "--crack-load",
      paramLabel = "N",
      description =
          "The beam's load at first cracking in newtons (default: ${DEFAULT-VALUE}; 1 lbf = 4.448 N).")
  private double crackNewtons = 9000;

  @Option(
      names = "--crack-width",
      paramLabel = "MM",
      description =
          "Mean width of its crack in mm at one and a half times that load (default: ${DEFAULT-VALUE}).")
  private double widthMillimetres = 0.3;

  @Option(
      names = "--idle",
      paramLabel = "S",
      description = "Seconds without load before each test (default: ${DEFAULT-VALUE}).")
  private double idleSeconds = 8;

  boolean isBeam() {
    return beam;
  }

  /** What really happens in one test. */
  SpecimenTruth truth(long seed) {
    return beam ? new BeamInFrame(beamTruth()) : cylinderTruth(seed);
  }

  private BeamTruth beamTruth() {
    EmulatedBeam made =
        EmulatedBeam.withWidth(crackNewtons, WIDTH_AT * crackNewtons, widthMillimetres);
    BeamProgram program =
        new BeamProgram(idleSeconds)
            .to(GREATEST * crackNewtons, crackNewtons / SECONDS_TO_CRACK)
            .hold(2);
    return new BeamTruth(made, program);
  }

  private CylinderTruth cylinderTruth(long seed) {
    EmulatedCylinder broken =
        EmulatedCylinder.ofNormalConcrete(
            diameterMillimetres,
            lengthMillimetres,
            strengthMegapascals,
            gradual ? BreakKind.GRADUAL : BreakKind.BRITTLE);
    FrameProgram program =
        FrameProgram.cylinderAtCommonRate(strengthMegapascals)
            .withSetRate(rateMegapascalsPerSecond)
            .withIdleAndTail(idleSeconds, 8);
    return new CylinderTruth(broken, program, seed);
  }

  /** The truth in whole sentences. */
  String words(SpecimenTruth truth, SentTruth sent) {
    return truth instanceof CylinderTruth cylinder
        ? TruthSummary.of(cylinder, sent).words().strip()
        : BeamSummary.of(((BeamInFrame) truth).truth(), WIDTH_AT * crackNewtons, sent)
            .words()
            .strip();
  }
}
