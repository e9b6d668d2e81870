package io.github.platenwire.live;

import java.util.List;
import java.util.Optional;

/**
 * What a crack shows at one moment. Immutable. Millimetres and newtons; NaN while unknown.
 *
 * @param seq number of the load row it rests on; 0 before the first
 * @param micros its moment
 * @param loadNewtons load, zero taken off, averaged like the width
 * @param peakNewtons greatest load so far, as read, zero taken off
 * @param openings opening of each gauge at that row, lost ones too
 * @param opening mean opening of the gauges that count
 * @param width the opening less the elastic stretch
 * @param rotation opening on face 0 less that on face 1
 * @param mask the gauges that count, bit 0 for the first
 * @param firstCrack both first cracks
 * @param next the lowest threshold not crossed
 * @param toNext how far off it is
 * @param unloading whether the load is falling in a cycle
 * @param holding whether a hold is under way
 * @param creep creep of the crack in it so far
 * @param cycles cycles so far
 * @param holds holds so far, with the one under way
 * @param workNewtonMillimetres work so far, N mm
 * @param losses gauges left out
 */
public record CrackView(
    long seq,
    long micros,
    double loadNewtons,
    double peakNewtons,
    List<Double> openings,
    double opening,
    double width,
    double rotation,
    int mask,
    FirstCrack firstCrack,
    Optional<CrackSettings.Threshold> next,
    double toNext,
    boolean unloading,
    boolean holding,
    double creep,
    long cycles,
    long holds,
    double workNewtonMillimetres,
    List<GaugeLoss> losses) {
  /** Makes the lists immutable. */
  public CrackView {
    openings = List.copyOf(openings);
    losses = List.copyOf(losses);
  }
}
