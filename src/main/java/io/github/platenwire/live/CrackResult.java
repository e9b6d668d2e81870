package io.github.platenwire.live;

import java.util.List;

/**
 * What a crack came to. Immutable. Millimetres and newtons; NaN where unknown.
 *
 * @param peakNewtons greatest load as read, zero taken off
 * @param peakSeq number of its row; 0 if there was none
 * @param loadZero zero of the load
 * @param gaugeZeros zeros of the gauges
 * @param firstCrack both first cracks
 * @param crossings thresholds crossed, rising
 * @param widths width at each asked load that was reached
 * @param curve the virgin curve
 * @param stiffness before and after cracking
 * @param cycles the cycles kept, and the unloading at the end
 * @param cycleCount cycles that ended, kept or not
 * @param holds the holds kept
 * @param holdCount holds, kept or not
 * @param workNewtonMillimetres work on the opening, N mm
 * @param workFirstSeq number of the first row on which it rests
 * @param workLastSeq number of the last
 * @param losses gauges left out
 * @param mask the gauges that counted to the end
 * @param rows load rows since the zero
 * @param rowsWithoutWidth those in which a gauge that counts was missing or under suspicion
 */
public record CrackResult(
    double peakNewtons,
    long peakSeq,
    ZeroLevel loadZero,
    List<ZeroLevel> gaugeZeros,
    FirstCrack firstCrack,
    List<Thresholds.Crossing> crossings,
    List<WidthAtLoad> widths,
    List<Point> curve,
    Stiffness stiffness,
    List<Cycles.Cycle> cycles,
    long cycleCount,
    List<Holds.Hold> holds,
    long holdCount,
    double workNewtonMillimetres,
    long workFirstSeq,
    long workLastSeq,
    List<GaugeLoss> losses,
    int mask,
    long rows,
    long rowsWithoutWidth) {
  /** Makes the lists immutable. */
  public CrackResult {
    gaugeZeros = List.copyOf(gaugeZeros);
    crossings = List.copyOf(crossings);
    widths = List.copyOf(widths);
    curve = List.copyOf(curve);
    cycles = List.copyOf(cycles);
    holds = List.copyOf(holds);
    losses = List.copyOf(losses);
  }

  /**
   * One point of the virgin curve. Immutable.
   *
   * @param newtons load
   * @param millimetres width when it was reached for the first time
   * @param micros when that was
   * @param mask the gauges on which it rests
   * @param lastSeq number of the first row at or beyond the load
   */
  public record Point(double newtons, double millimetres, long micros, int mask, long lastSeq) {}
}
