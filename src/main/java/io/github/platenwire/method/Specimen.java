package io.github.platenwire.method;

import java.time.LocalDateTime;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One specimen as people measured it. Immutable. Dimensions in millimetres, mass in kilograms,
 * whatever unit the person's table used; {@code asWritten} keeps the table's own words.
 *
 * @param name unique in the lab
 * @param series what it is a companion in, such as {@code RA-T}
 * @param shape {@code cylinder}, {@code cube}, {@code core}, {@code beam} …
 * @param diametersMillimetres diameters measured at mid-height, at right angles; usually two
 * @param lengthMillimetres length, if measured
 * @param dimensions width, depth, span and whatever else such a shape has
 * @param massKilograms mass, if density is wanted
 * @param cast when it was cast, in the lab's zone
 * @param plannedAgeDays the age at which it is to be broken
 * @param ends how its ends were prepared: {@code ground}, {@code capped}, {@code unbonded}
 * @param curing how it was cured, in words
 * @param moisture its moisture at test, in words
 * @param asWritten its row, column by column, as the table has it
 */
public record Specimen(
    String name,
    String series,
    String shape,
    List<Double> diametersMillimetres,
    OptionalDouble lengthMillimetres,
    Dimensions dimensions,
    OptionalDouble massKilograms,
    Optional<LocalDateTime> cast,
    OptionalDouble plannedAgeDays,
    Optional<String> ends,
    Optional<String> curing,
    Optional<String> moisture,
    Map<String, String> asWritten) {
  /** Makes list and map immutable; the map keeps the order of the columns. */
  public Specimen {
    diametersMillimetres = List.copyOf(diametersMillimetres);
    asWritten = Collections.unmodifiableMap(new LinkedHashMap<>(asWritten));
  }

  /** A specimen that has nothing beside diameters and length. */
  public Specimen(
      String name,
      String series,
      String shape,
      List<Double> diametersMillimetres,
      OptionalDouble lengthMillimetres,
      OptionalDouble massKilograms,
      Optional<LocalDateTime> cast,
      OptionalDouble plannedAgeDays,
      Optional<String> ends,
      Optional<String> curing,
      Optional<String> moisture,
      Map<String, String> asWritten) {
    this(
        name,
        series,
        shape,
        diametersMillimetres,
        lengthMillimetres,
        Dimensions.NONE,
        massKilograms,
        cast,
        plannedAgeDays,
        ends,
        curing,
        moisture,
        asWritten);
  }

  /** One of its dimensions in millimetres (angles in degrees); empty if it is not given. */
  public OptionalDouble dimension(Dimension dimension) {
    return dimensions.get(dimension);
  }
}
