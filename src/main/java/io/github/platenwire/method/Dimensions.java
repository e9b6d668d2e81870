package io.github.platenwire.method;

import java.util.EnumMap;
import java.util.Map;
import java.util.OptionalDouble;

/**
 * The sizes of one specimen beside its diameters and length, each in millimetres (angles in
 * degrees), as far as they are given. Immutable; safe for any thread.
 */
public final class Dimensions {
  /** Nothing but diameters and length. */
  public static final Dimensions NONE = new Dimensions(Map.of());

  private final Map<Dimension, Double> values;

  private Dimensions(Map<Dimension, Double> values) {
    this.values = values;
  }

  /** These sizes, millimetres or degrees. */
  public static Dimensions of(Map<Dimension, Double> values) {
    return values.isEmpty() ? NONE : new Dimensions(new EnumMap<>(values));
  }

  /** One of them in millimetres or degrees; empty if it is not given. */
  public OptionalDouble get(Dimension dimension) {
    Double value = values.get(dimension);
    return value == null ? OptionalDouble.empty() : OptionalDouble.of(value);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Dimensions dimensions && values.equals(dimensions.values);
  }

  @Override
  public int hashCode() {
    return values.hashCode();
  }

  @Override
  public String toString() {
    return values.toString();
  }
}
