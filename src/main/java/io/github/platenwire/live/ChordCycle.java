package io.github.platenwire.live;

import java.util.Optional;

/**
 * One loading with the two ends of its chord. Immutable. Newtons with the load's zero taken off;
 * strains from the cycle's own zero; NaN where no gauge reads across.
 *
 * @param number from 1
 * @param lowest where it began
 * @param first the end at the small strain
 * @param second the end at the share of the strength
 * @param greatestNewtons greatest load of the cycle, averaged like the marks
 * @param complete whether the second mark's load was reached in full
 * @param rates the rate of loading from the first mark to the second; empty if it was too short
 */
public record ChordCycle(
    int number,
    Lowest lowest,
    Mark first,
    Mark second,
    double greatestNewtons,
    boolean complete,
    Optional<BandJudge.Verdict> rates) {

  /**
   * Where the cycle's gauge zero was taken.
   *
   * @param newtons mean load there
   * @param strain mean strain there as read, which is the zero of the cycle's strains
   * @param across mean widening there as read; NaN where no gauge reads across
   * @param firstSeq number of the first row
   * @param lastSeq number of the last row
   */
  public record Lowest(double newtons, double strain, double across, long firstSeq, long lastSeq) {}

  /**
   * One end of the chord, between two averaged rows.
   *
   * @param micros its moment
   * @param newtons load
   * @param strain along the axis
   * @param across widening across it
   * @param newtonsPerSecond rate of loading there; NaN if unknown
   * @param strainPerSecond rate of strain there; NaN if unknown
   * @param firstSeq number of the first row averaged
   * @param lastSeq number of the last
   */
  public record Mark(
      long micros,
      double newtons,
      double strain,
      double across,
      double newtonsPerSecond,
      double strainPerSecond,
      long firstSeq,
      long lastSeq) {}

  /** Slope of the chord, newtons for a strain of one. */
  public double newtonsPerStrain() {
    return (second.newtons - first.newtons) / (second.strain - first.strain);
  }

  /** Widening over shortening along the chord; NaN where no gauge reads across. */
  public double acrossOverAlong() {
    return (second.across - first.across) / (second.strain - first.strain);
  }
}
