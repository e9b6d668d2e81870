package io.github.platenwire.record;

import java.util.Optional;

/**
 * What a person saw after the test. Immutable; any of it may be left out.
 *
 * @param fractureType key of the fracture type, such as {@code 3}
 * @param fractureWords the same in words
 * @param aggregate whether the break went {@code through} or {@code around} the aggregate
 * @param notes free words
 */
public record Observations(
    Optional<String> fractureType,
    Optional<String> fractureWords,
    Optional<String> aggregate,
    Optional<String> notes) {
  /** Nothing was seen, or nobody was asked. */
  public static final Observations NONE =
      new Observations(Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());
}
