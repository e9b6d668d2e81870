package io.github.platenwire.commission;

import io.github.platenwire.quantity.Unit;
import io.github.platenwire.reading.Quality;
import java.util.Map;

/**
 * What one channel said in a sample.
 *
 * @param name the value's field
 * @param unit the definition's unit; least and greatest are in it
 * @param readings how many there were, with or without a value
 * @param inStatedUnit how many of them were sent in the definition's unit
 * @param least least value, NaN if there was none
 * @param greatest greatest value, NaN if there was none
 * @param qualities how many readings had each quality; absent ones are not listed
 */
public record ChannelRange(
    String name,
    Unit unit,
    long readings,
    long inStatedUnit,
    double least,
    double greatest,
    Map<Quality, Long> qualities) {
  /** Keeps the map from being changed. */
  public ChannelRange {
    qualities = Map.copyOf(qualities);
  }
}
