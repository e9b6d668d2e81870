package io.github.platenwire.commission;

import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What a person knows of the device that its bytes do not tell. Immutable.
 *
 * @param name of the definition
 * @param serial the table {@code [serial]} as TOML lines; empty if nothing is known
 * @param decimal the decimal mark, if it is to be no guess
 * @param units units of the numbers that carry none, in the order of the line; {@link #PASS_OVER}
 *     for one that is no reading
 * @param spellings what the device writes = our unit
 * @param states what the device writes = {@code ok}, {@code unstable} or {@code over}
 */
public record Hints(
    String name,
    List<String> serial,
    Optional<Character> decimal,
    List<String> units,
    Map<String, String> spellings,
    Map<String, String> states) {
  /** Stands in place of a unit for a number that is no reading. */
  public static final String PASS_OVER = "-";

  /** Keeps the parts from being changed. */
  public Hints {
    serial = List.copyOf(serial);
    units = List.copyOf(units);
    spellings = Map.copyOf(spellings);
    states = Map.copyOf(states);
  }

  /** Nothing is known but the name. */
  public static Hints none(String name) {
    return new Hints(name, List.of(), Optional.empty(), List.of(), Map.of(), Map.of());
  }

  /** The same with other units. */
  public Hints withUnits(List<String> other) {
    return new Hints(name, serial, decimal, other, spellings, states);
  }

  /** The same with other spellings. */
  public Hints withSpellings(Map<String, String> other) {
    return new Hints(name, serial, decimal, units, other, states);
  }
}
