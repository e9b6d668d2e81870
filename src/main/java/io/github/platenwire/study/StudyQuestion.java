package io.github.platenwire.study;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What is to be compared. Immutable.
 *
 * @param series one series only; all of the plan where empty
 * @param against what it is held against; the plan's reference where empty
 * @param ageDays one age only; all where empty
 * @param figure the short name of the figure, such as {@code strength}
 * @param method the method that gave it; the one with most of such figures where empty
 */
public record StudyQuestion(
    Optional<String> series,
    Optional<String> against,
    OptionalDouble ageDays,
    String figure,
    Optional<String> method) {
  /** The figure that is compared when nothing else is asked. */
  public static final String STRENGTH = "strength";

  /** The whole study by its strengths: every series against the plan's reference, at every age. */
  public static final StudyQuestion WHOLE =
      new StudyQuestion(
          Optional.empty(), Optional.empty(), OptionalDouble.empty(), STRENGTH, Optional.empty());
}
