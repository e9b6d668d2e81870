package io.github.platenwire.emulate;

/**
 * A concrete cylinder whose truth is known: how great a load it bears and how the load grows with
 * the travel of the platen. The curve starts soft while the ends seat themselves, rises in a
 * straight line, softens, and turns over at the peak; its slope never jumps. Immutable; safe for
 * any thread.
 *
 * @param diameterMillimetres true mean diameter
 * @param lengthMillimetres length
 * @param strengthMegapascals true strength: peak load over cross-section, no correction for length
 * @param modulusMegapascals stiffness of the straight part, as stress over strain
 * @param toeShare share of the peak at which the ends are seated, 0.001 to 0.3
 * @param toeStiffnessShare stiffness at first contact as a share of the full one, 0.01 to 0.9
 * @param linearShare share of the peak up to which the curve is straight, above the toe, up to 0.9
 * @param breakKind how it breaks
 */
public record EmulatedCylinder(
    double diameterMillimetres,
    double lengthMillimetres,
    double strengthMegapascals,
    double modulusMegapascals,
    double toeShare,
    double toeStiffnessShare,
    double linearShare,
    BreakKind breakKind) {

  /**
   * How a cylinder breaks. The figures are chosen to look like common breaks; common practice, no
   * source.
   */
  public enum BreakKind {
    /** Nearly at the peak, all at once, leaving little. */
    BRITTLE(0.0005, 0.004, 0.08),
    /**
     * After a slow loss past the peak, within a second, leaving a crushed core that still bears.
     */
    GRADUAL(0.02, 0.9, 0.35);

    private final double lossShare;
    private final double dropSeconds;
    private final double residualShare;

    BreakKind(double lossShare, double dropSeconds, double residualShare) {
      this.lossShare = lossShare;
      this.dropSeconds = dropSeconds;
      this.residualShare = residualShare;
    }

    /** Share of the peak already lost when the break begins. */
    public double lossShare() {
      return lossShare;
    }

    /** How long the load takes to fall, in seconds. */
    public double dropSeconds() {
      return dropSeconds;
    }

    /** Share of the peak that is left right after the break. */
    public double residualShare() {
      return residualShare;
    }
  }

  /**
   * Checks the ranges.
   *
   * @throws IllegalArgumentException if a value is out of range
   */
  public EmulatedCylinder {
    Ranges.within("diameterMillimetres", diameterMillimetres, 10, 1000);
    Ranges.within("lengthMillimetres", lengthMillimetres, 10, 2000);
    Ranges.within("strengthMegapascals", strengthMegapascals, 0.1, 300);
    Ranges.within("modulusMegapascals", modulusMegapascals, 100, 200_000);
    Ranges.within("toeShare", toeShare, 0.001, 0.3);
    Ranges.within("toeStiffnessShare", toeStiffnessShare, 0.01, 0.9);
    Ranges.within("linearShare", linearShare, toeShare, 0.9);
  }

  /**
   * A cylinder of normal concrete: stiffness 4700 √f MPa (ACI 318, 19.2.2.1, from memory), seated
   * at 5 % of its peak, straight up to 60 %.
   *
   * @param diameterMillimetres true mean diameter
   * @param lengthMillimetres length
   * @param strengthMegapascals true strength
   * @param breakKind how it breaks
   */
  public static EmulatedCylinder ofNormalConcrete(
      double diameterMillimetres,
      double lengthMillimetres,
      double strengthMegapascals,
      BreakKind breakKind) {
    return new EmulatedCylinder(
        diameterMillimetres,
        lengthMillimetres,
        strengthMegapascals,
        4700 * Math.sqrt(strengthMegapascals),
        0.05,
        0.1,
        0.6,
        breakKind);
  }

  /** Cross-section from the mean diameter, in square millimetres. */
  public double areaSquareMillimetres() {
    return Math.PI * diameterMillimetres * diameterMillimetres / 4;
  }

  /** The greatest load it bears, in newtons. */
  public double peakNewtons() {
    return strengthMegapascals * areaSquareMillimetres();
  }

  /** Stiffness of the straight part, in newtons a millimetre. */
  public double stiffnessNewtonsPerMillimetre() {
    return modulusMegapascals * areaSquareMillimetres() / lengthMillimetres;
  }

  /** The platen's travel from first contact to the peak, in millimetres. */
  public double peakTravelMillimetres() {
    return linearEndMillimetres() + softeningMillimetres();
  }

  /**
   * The load at a travel, as long as the cylinder has not broken.
   *
   * @param millimetres travel since first contact; no load below zero
   * @return newtons; past the peak the curve comes down as it went up, never below zero
   */
  public double loadNewtonsAt(double millimetres) {
    double stiffness = stiffnessNewtonsPerMillimetre();
    double toe = toeMillimetres();
    if (millimetres <= 0) {
      return 0;
    }
    if (millimetres < toe) {
      double gain = (1 - toeStiffnessShare) * millimetres * millimetres / (2 * toe);
      return stiffness * (toeStiffnessShare * millimetres + gain);
    }
    if (millimetres < linearEndMillimetres()) {
      return toeShare * peakNewtons() + stiffness * (millimetres - toe);
    }
    double before = (peakTravelMillimetres() - millimetres) / softeningMillimetres();
    return Math.max(0, peakNewtons() * (1 - (1 - linearShare) * before * before));
  }

  /**
   * The travel at which the rising curve reaches a load.
   *
   * @param newtons zero to the peak
   * @return millimetres since first contact
   */
  public double travelMillimetresAt(double newtons) {
    double stiffness = stiffnessNewtonsPerMillimetre();
    double toe = toeMillimetres();
    double share = newtons / peakNewtons();
    if (share < toeShare) {
      double curvature = (1 - toeStiffnessShare) / (2 * toe);
      double root =
          Math.sqrt(
              toeStiffnessShare * toeStiffnessShare
                  + 4 * curvature * Math.max(0, newtons) / stiffness);
      return (root - toeStiffnessShare) / (2 * curvature);
    }
    if (share < linearShare) {
      return toe + (newtons - toeShare * peakNewtons()) / stiffness;
    }
    double before = Math.sqrt(Math.max(0, 1 - share) / (1 - linearShare));
    return peakTravelMillimetres() - before * softeningMillimetres();
  }

  /** How steep the rising curve is at a load, in newtons a millimetre. */
  double slopeNewtonsPerMillimetreAt(double newtons) {
    double stiffness = stiffnessNewtonsPerMillimetre();
    double share = newtons / peakNewtons();
    if (share < toeShare) {
      double travelled = travelMillimetresAt(newtons) / toeMillimetres();
      return stiffness * (toeStiffnessShare + (1 - toeStiffnessShare) * travelled);
    }
    if (share < linearShare) {
      return stiffness;
    }
    return stiffness * Math.sqrt(Math.max(0, 1 - share) / (1 - linearShare));
  }

  private double toeMillimetres() {
    return 2
        * toeShare
        * peakNewtons()
        / (stiffnessNewtonsPerMillimetre() * (1 + toeStiffnessShare));
  }

  private double linearEndMillimetres() {
    double straightNewtons = (linearShare - toeShare) * peakNewtons();
    return toeMillimetres() + straightNewtons / stiffnessNewtonsPerMillimetre();
  }

  private double softeningMillimetres() {
    return 2 * (1 - linearShare) * peakNewtons() / stiffnessNewtonsPerMillimetre();
  }
}
