package io.github.platenwire.live;

import java.util.Optional;

/**
 * First crack by both definitions, never mixed. Immutable.
 *
 * @param bySmallWidth greatest load up to a small opening; empty until the opening has passed it
 * @param byDeparture load at which the opening began to leave the initial line; empty until seen
 */
public record FirstCrack(Optional<Figure> bySmallWidth, Optional<Figure> byDeparture) {
  /**
   * One of the two figures.
   *
   * @param newtons the load
   * @param uncertaintyNewtons its expanded uncertainty (k = 2) by noise, timing and definition,
   *     without calibration; NaN where it cannot be told
   * @param newtonsPerMillimetre slope of load on opening there, by which an error of the gauges'
   *     scale moves it; 0 where the load does not hang on the opening
   * @param micros when it was reached
   * @param mask the gauges on which it rests, bit 0 for the first
   * @param firstSeq number of the first load row on which it rests
   * @param lastSeq number of the last
   */
  public record Figure(
      double newtons,
      double uncertaintyNewtons,
      double newtonsPerMillimetre,
      long micros,
      int mask,
      long firstSeq,
      long lastSeq) {}
}
