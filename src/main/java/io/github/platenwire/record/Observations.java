package io.github.platenwire.record;

import io.github.platenwire.method.BreakPosition;
import java.util.Optional;

/**
 * What a person saw after the test. Immutable; any of it may be left out.
 *
 * @param fractureType key of the fracture type, such as {@code 3}
 * @param fractureWords the same in words
 * @param aggregate whether the break went {@code through} or {@code around} the aggregate
 * @param notes free words
 * @param breakPosition where along its span a beam broke
 */
public record Observations(
    Optional<String> fractureType,
    Optional<String> fractureWords,
    Optional<String> aggregate,
    Optional<String> notes,
    BreakPosition breakPosition) {
  /** Nothing was seen, or nobody was asked. */
  public static final Observations NONE =
      new Observations(
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          BreakPosition.NOT_RECORDED);

  /** The same with the position of the break. */
  public Observations withBreakPosition(BreakPosition position) {
    return new Observations(fractureType, fractureWords, aggregate, notes, position);
  }
}
