package io.github.platenwire.emulate;

/**
 * The whole truth of one emulated test: the load at any moment, the peak and the break. A pure
 * function of cylinder, program and seed. Immutable; safe for any thread.
 *
 * <p>All times are nanoseconds since the start of the idle time.
 */
public final class CylinderTruth implements SpecimenTruth {
  /*
   * Five stretches of time, each in closed form and joined without a jump of load or rate:
   *   fast      constant travel along the curve, through the toe
   *   control   load = set rate × time + a settling from the fast rate + the wander
   *   pump      constant travel over the softening part: a parabola in time, through the peak
   *   drop      from the load at break to what is left
   *   tail      what is left bleeds off
   */
  private static final double SETTLING_SECONDS = 0.3;
  private static final double BLEEDING_SECONDS = 2.0;
  private static final double NANOS = 1e9;

  private final EmulatedCylinder cylinder;
  private final FrameProgram program;
  private final RateWander wander;
  private final double contactSeconds;
  private final double fastMillimetresPerSecond;
  private final double fastEndNewtons;
  private final double fastEndNewtonsPerSecond;
  private final double fastEndSeconds;
  private final double controlEndNewtons;
  private final double controlEndSeconds;
  private final double pumpSeconds;
  private final double breakSeconds;

  /**
   * Works the test out.
   *
   * @param cylinder what is loaded
   * @param program how it is loaded
   * @param seed of the wander of the rate
   * @throws IllegalArgumentException if the controller would give up on the straight part of the
   *     curve
   */
  public CylinderTruth(EmulatedCylinder cylinder, FrameProgram program, long seed) {
    if (program.controlShare() < cylinder.linearShare()) {
      throw new IllegalArgumentException(
          "the rate must be held up to the end of the straight part at least, controlShare="
              + program.controlShare()
              + " linearShare="
              + cylinder.linearShare());
    }
    this.cylinder = cylinder;
    this.program = program;
    double area = cylinder.areaSquareMillimetres();
    double peak = cylinder.peakNewtons();
    wander = new RateWander(program.wanderShare() * setNewtonsPerSecond(), seed);
    contactSeconds = program.idleSeconds() + program.approachSeconds();
    fastMillimetresPerSecond =
        program.fastMegapascalsPerSecond() * area / cylinder.stiffnessNewtonsPerMillimetre();
    controlEndNewtons = program.controlShare() * peak;
    double wanted = program.fastShare() * program.expectedMegapascals() * area;
    fastEndNewtons = Math.min(controlEndNewtons, Math.max(cylinder.toeShare() * peak, wanted));
    fastEndNewtonsPerSecond =
        fastMillimetresPerSecond * cylinder.slopeNewtonsPerMillimetreAt(fastEndNewtons);
    fastEndSeconds =
        contactSeconds + cylinder.travelMillimetresAt(fastEndNewtons) / fastMillimetresPerSecond;
    double controlled = secondsUnderControl();
    controlEndSeconds = fastEndSeconds + controlled;
    pumpSeconds = 2 * (peak - controlEndNewtons) / controlledNewtonsPerSecond(controlled);
    double past =
        Math.sqrt(cylinder.breakKind().lossShare() / (1 - program.controlShare())) * pumpSeconds;
    breakSeconds = controlEndSeconds + pumpSeconds + past;
  }

  /** What is loaded. */
  public EmulatedCylinder cylinder() {
    return cylinder;
  }

  /** How it is loaded. */
  public FrameProgram program() {
    return program;
  }

  /** The true greatest load, in newtons. */
  public double peakNewtons() {
    return cylinder.peakNewtons();
  }

  /** When the platen touches. */
  public long contactNanos() {
    return nanos(contactSeconds);
  }

  /** When loading at the set rate begins. */
  public long controlStartNanos() {
    return nanos(fastEndSeconds);
  }

  /** When the controller can no longer hold the rate. */
  public long controlEndNanos() {
    return nanos(controlEndSeconds);
  }

  /** When the load is greatest. */
  public long peakNanos() {
    return nanos(controlEndSeconds + pumpSeconds);
  }

  /** When the sudden drop begins. */
  public long breakNanos() {
    return nanos(breakSeconds);
  }

  /** When the test, its tail included, is over. */
  @Override
  public long endNanos() {
    return nanos(breakSeconds + cylinder.breakKind().dropSeconds() + program.tailSeconds());
  }

  /**
   * The true load.
   *
   * @param nanos time since the start; any value
   * @return newtons, zero to the peak
   */
  @Override
  public double loadNewtons(long nanos) {
    double seconds = nanos / NANOS;
    if (seconds <= contactSeconds) {
      return 0;
    }
    if (seconds < fastEndSeconds) {
      return cylinder.loadNewtonsAt(fastMillimetresPerSecond * (seconds - contactSeconds));
    }
    if (seconds < controlEndSeconds) {
      return controlledNewtons(seconds - fastEndSeconds);
    }
    return seconds < breakSeconds ? pumpedNewtons(seconds) : brokenNewtons(seconds - breakSeconds);
  }

  /**
   * The platen's travel since first contact; it stops at the break.
   *
   * @param nanos time since the start; any value
   * @return millimetres, not negative
   */
  public double travelMillimetres(long nanos) {
    double seconds = Math.min(nanos / NANOS, breakSeconds);
    if (seconds < fastEndSeconds) {
      return Math.max(0, fastMillimetresPerSecond * (seconds - contactSeconds));
    }
    if (seconds < controlEndSeconds) {
      return cylinder.travelMillimetresAt(controlledNewtons(seconds - fastEndSeconds));
    }
    double from = cylinder.travelMillimetresAt(controlEndNewtons);
    double way = cylinder.peakTravelMillimetres() - from;
    return from + way * (seconds - controlEndSeconds) / pumpSeconds;
  }

  /** A gauge on the platen reads its travel. */
  @Override
  public double gaugeMillimetres(long nanos) {
    return travelMillimetres(nanos);
  }

  private double setNewtonsPerSecond() {
    return program.setMegapascalsPerSecond() * cylinder.areaSquareMillimetres();
  }

  private double controlledNewtons(double seconds) {
    double set = setNewtonsPerSecond();
    double settled = 1 - StrictMath.exp(-seconds / SETTLING_SECONDS);
    return fastEndNewtons
        + set * seconds
        + (fastEndNewtonsPerSecond - set) * SETTLING_SECONDS * settled
        + wander.integral(seconds);
  }

  private double controlledNewtonsPerSecond(double seconds) {
    if (fastEndNewtons >= controlEndNewtons) {
      return fastEndNewtonsPerSecond;
    }
    double set = setNewtonsPerSecond();
    double unsettled = StrictMath.exp(-seconds / SETTLING_SECONDS);
    return set + (fastEndNewtonsPerSecond - set) * unsettled + wander.rate(seconds);
  }

  /** Bisection down to neighbouring doubles: the load under control only ever rises. */
  private double secondsUnderControl() {
    if (fastEndNewtons >= controlEndNewtons) {
      return 0;
    }
    double low = 0;
    double high = 1;
    while (controlledNewtons(high) < controlEndNewtons) {
      high *= 2;
    }
    double middle = high / 2;
    while (middle > low && middle < high) {
      if (controlledNewtons(middle) < controlEndNewtons) {
        low = middle;
      } else {
        high = middle;
      }
      middle = low + (high - low) / 2;
    }
    return high;
  }

  private double pumpedNewtons(double seconds) {
    double before = 1 - (seconds - controlEndSeconds) / pumpSeconds;
    double peak = cylinder.peakNewtons();
    return peak - (peak - controlEndNewtons) * before * before;
  }

  private double brokenNewtons(double secondsSinceBreak) {
    EmulatedCylinder.BreakKind kind = cylinder.breakKind();
    double left = kind.residualShare() * cylinder.peakNewtons();
    if (secondsSinceBreak >= kind.dropSeconds()) {
      double bleeding = secondsSinceBreak - kind.dropSeconds();
      return left * StrictMath.exp(-bleeding / BLEEDING_SECONDS);
    }
    double from = pumpedNewtons(breakSeconds);
    double fallen = secondsSinceBreak / kind.dropSeconds();
    return from + (left - from) * fallen * fallen * (3 - 2 * fallen);
  }

  private static long nanos(double seconds) {
    return Math.round(seconds * NANOS);
  }
}
