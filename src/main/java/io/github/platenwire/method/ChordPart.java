package io.github.platenwire.method;

import java.util.Optional;

/**
 * What a test of a modulus shows of its cycles at one moment. Immutable. Strains are lengths over
 * lengths; NaN while unknown.
 *
 * @param strain along the axis, from the cycle's zero
 * @param across widening across it; empty where no gauge reads it
 * @param cycle number of the cycle under way, or of the next; beyond {@code planned} when all are
 *     done
 * @param planned how many there shall be
 * @param next what comes next
 * @param firstStrain strain of the first mark
 * @param secondNewtons load of the second mark
 * @param lastMegapascals modulus of the latest chord
 * @param lastCycle number of its cycle; 0 while there is none
 */
public record ChordPart(
    double strain,
    Optional<Double> across,
    int cycle,
    int planned,
    Next next,
    double firstStrain,
    double secondNewtons,
    double lastMegapascals,
    int lastCycle)
    implements LiveView.LivePart {

  /** What comes next in a cycle. */
  public enum Next {
    /** The strain of the first mark. */
    FIRST_MARK,
    /** The load of the second mark. */
    SECOND_MARK,
    /** The second mark is passed: take the load off. */
    UNLOAD,
    /** Every cycle is done. */
    DONE
  }
}
