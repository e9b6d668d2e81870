package io.github.platenwire.live;

import java.util.List;

/**
 * How a crack is followed. Immutable. A method fills it from its file; the two factories give the
 * defaults.
 *
 * @param gauges the gauges, 1 to 8
 * @param fit where the initial line is fitted
 * @param smallWidthMillimetres first crack by width: greatest load up to this opening
 * @param thresholds widths to announce, rising
 * @param stopWidthMillimetres the test ends at this width; infinite for none
 * @param smoothMicros rows are averaged over this time; 0 takes each row as it is
 * @param lasting when a crossing lasts
 * @param takeOffStretch whether the elastic stretch before cracking is taken off
 * @param departureFactor departure from the initial line by more than this many standard deviations
 * @param curveStepNewtons first step of the virgin curve's grid; doubled when the grid is full
 * @param cycle what counts as unloading
 * @param hold what counts as a hold
 * @param timingMicros standard uncertainty of the time between load and gauges, microseconds
 * @param crackedFromMillimetres stiffness after cracking: from this opening on the virgin curve
 * @param crackedToMillimetres to this one
 */
public record CrackSettings(
    List<GaugeLimits> gauges,
    FitWindow fit,
    double smallWidthMillimetres,
    List<Threshold> thresholds,
    double stopWidthMillimetres,
    long smoothMicros,
    Lasting lasting,
    boolean takeOffStretch,
    double departureFactor,
    double curveStepNewtons,
    CycleRule cycle,
    HoldRule hold,
    double timingMicros,
    double crackedFromMillimetres,
    double crackedToMillimetres) {
  /**
   * Makes the lists immutable and checks the ranges.
   *
   * @throws IllegalArgumentException if a number is out of range
   */
  public CrackSettings {
    gauges = List.copyOf(gauges);
    thresholds = List.copyOf(thresholds);
    require(!gauges.isEmpty() && gauges.size() <= 8, "there must be 1 to 8 gauges");
    require(smallWidthMillimetres > 0, "the small width must be above 0");
    require(smoothMicros >= 0 && timingMicros >= 0, "times must not be negative");
    require(departureFactor > 1, "the departure factor must be above 1");
    require(curveStepNewtons > 0, "the curve's step must be above 0");
    require(
        crackedFromMillimetres < crackedToMillimetres,
        "the openings of the cracked stiffness must rise");
    for (int i = 1; i < thresholds.size(); i++) {
      require(
          thresholds.get(i).millimetres() > thresholds.get(i - 1).millimetres(),
          "thresholds must rise");
    }
  }

  private static void require(boolean met, String what) {
    if (!met) {
      throw new IllegalArgumentException(what);
    }
  }

  /**
   * Loads between which the initial line is fitted; the crack must not come before its end.
   *
   * @param fromNewtons lower end
   * @param toNewtons upper end; passing it closes the fit
   */
  public record FitWindow(double fromNewtons, double toNewtons) {
    /**
     * Checks that it rises.
     *
     * @throws IllegalArgumentException if it does not
     */
    public FitWindow {
      require(fromNewtons < toNewtons, "the loads of the fit must rise");
    }
  }

  /**
   * A width with its meaning.
   *
   * @param millimetres the width
   * @param label its meaning, for a person
   */
  public record Threshold(double millimetres, String label) {}

  /**
   * When a crossing lasts.
   *
   * @param rows for so many rows
   * @param micros and for so long, microseconds
   * @param hysteresisMillimetres falling back by more than this undoes it
   */
  public record Lasting(int rows, long micros, double hysteresisMillimetres) {}

  /**
   * What counts as unloading: the load falls below its latest greatest by the larger of the two,
   * and rises again by as much.
   *
   * @param newtons least change
   * @param share least change as a share of the greatest load so far
   */
  public record CycleRule(double newtons, double share) {}

  /**
   * What counts as a hold.
   *
   * @param micros for at least so long, microseconds
   * @param share the load within this share of its middle, such as 0.01
   * @param leastNewtons at a load of at least this
   */
  public record HoldRule(long micros, double share, double leastNewtons) {}

  /**
   * A split beam: first crack by width at 0.05 mm as for notched beams (EN 14651, from memory);
   * thresholds 0.10, 0.15, 0.20, 0.30 and 0.40 mm (widths met in ACI 224R-01 Table 4.1 and EN
   * 1992-1-1 Table 7.1N); the rest is ours.
   *
   * @param gauges the gauges
   * @param fit where the initial line is fitted
   */
  public static CrackSettings splitBeam(List<GaugeLimits> gauges, FitWindow fit) {
    return new CrackSettings(
        gauges,
        fit,
        0.05,
        List.of(
            new Threshold(0.10, "0.10 mm"),
            new Threshold(0.15, "0.15 mm"),
            new Threshold(0.20, "0.20 mm"),
            new Threshold(0.30, "0.30 mm"),
            new Threshold(0.40, "0.40 mm")),
        Double.POSITIVE_INFINITY,
        500_000,
        new Lasting(5, 300_000, 0.005),
        true,
        5,
        50,
        new CycleRule(200, 0.05),
        new HoldRule(30_000_000, 0.01, 500),
        5_000,
        0.10,
        0.30);
  }

  /**
   * A notched beam by EN 14651 (from memory): F_L is the greatest load up to an opening of 0.05 mm;
   * loads at 0.5, 1.5, 2.5 and 3.5 mm; the opening as measured, nothing taken off, no averaging;
   * the test goes on to 4 mm.
   *
   * @param gauges the gauges at the crack mouth
   * @param fit where the initial line is fitted
   */
  public static CrackSettings notchedBeam(List<GaugeLimits> gauges, FitWindow fit) {
    return new CrackSettings(
        gauges,
        fit,
        0.05,
        List.of(
            new Threshold(0.5, "CMOD 1"),
            new Threshold(1.5, "CMOD 2"),
            new Threshold(2.5, "CMOD 3"),
            new Threshold(3.5, "CMOD 4")),
        4.0,
        0,
        new Lasting(5, 200_000, 0.02),
        false,
        5,
        50,
        new CycleRule(500, 0.3),
        new HoldRule(30_000_000, 0.01, 500),
        5_000,
        0.5,
        3.5);
  }
}
