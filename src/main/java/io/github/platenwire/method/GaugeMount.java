package io.github.platenwire.method;

import java.util.OptionalDouble;

/**
 * How a gauge sits on a specimen whose change of length it reads. Immutable.
 *
 * @param across whether it reads across the axis of the specimen, not along it
 * @param rises whether its reading rises while the specimen is loaded: shortens along its axis and
 *     widens across it
 * @param gaugeLengthMillimetres distance of the points it is fixed to; empty where the specimen's
 *     row tells it, or where the channel reads strain
 * @param lever by how many times more its reading changes than that distance, above 0
 */
public record GaugeMount(
    boolean across, boolean rises, OptionalDouble gaugeLengthMillimetres, double lever) {
  /** Along the axis, rising under load, read as it is. */
  public static final GaugeMount PLAIN = new GaugeMount(false, true, OptionalDouble.empty(), 1);

  /**
   * Checks the numbers.
   *
   * @throws IllegalArgumentException if gauge length or lever is not above 0
   */
  public GaugeMount {
    if (!(lever > 0) || !(gaugeLengthMillimetres.orElse(1) > 0)) {
      throw new IllegalArgumentException(
          "gauge length and lever must be above 0, gaugeLength="
              + gaugeLengthMillimetres
              + " lever="
              + lever);
    }
  }
}
