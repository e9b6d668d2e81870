package io.github.platenwire.method;

import io.github.platenwire.quantity.Quantity;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * How a front stands at one moment. Immutable.
 *
 * @param seen readings and entries that were taken in so far, those that put others right included
 * @param counted readings that count
 * @param seq number of the row of the latest; 0 before the first
 * @param seconds time of the reading that it stands for, since the first; NaN before the first
 * @param base its value in the quantity's base unit; NaN before the first
 * @param quantity length or mass
 * @param leftOut why the latest entry does not count, if it does not
 * @param millimetresPerSecond slope of the line in time, once three lengths are there
 * @param millimetresPerRootSecond slope of the line in the root of time, likewise
 * @param readings all that count, by time
 */
public record FrontPart(
    long seen,
    int counted,
    long seq,
    double seconds,
    double base,
    Quantity quantity,
    Optional<String> leftOut,
    OptionalDouble millimetresPerSecond,
    OptionalDouble millimetresPerRootSecond,
    List<Reading> readings)
    implements LiveView.LivePart {
  /** Makes the list immutable. */
  public FrontPart {
    readings = List.copyOf(readings);
  }

  /**
   * One reading that counts.
   *
   * @param seq of the row that it rests on
   * @param seconds since the first
   * @param base in the quantity's base unit
   */
  public record Reading(long seq, double seconds, double base) {}
}
