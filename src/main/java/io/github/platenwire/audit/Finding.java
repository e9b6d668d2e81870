package io.github.platenwire.audit;

import java.util.Comparator;
import java.util.Optional;

/**
 * Something that is not as it should be, or that a reader should know. Immutable.
 *
 * @param check what was looked for; tells severity and advice
 * @param location where
 * @param test the id of the test it belongs to, if it belongs to one
 * @param expected what should have been there, in words
 * @param seen what is there, in words
 */
public record Finding(
    Check check, Location location, Optional<String> test, String expected, String seen) {
  /** The heaviest first, then by file, line, check and words: the same findings, the same order. */
  public static final Comparator<Finding> HEAVIEST_FIRST =
      Comparator.comparing(Finding::severity, Comparator.reverseOrder())
          .thenComparing(finding -> finding.location().file())
          .thenComparing(finding -> finding.location().line().orElse(0))
          .thenComparing(finding -> finding.check().id())
          .thenComparing(Finding::seen)
          .thenComparing(Finding::expected);

  /** How much it weighs. */
  public Severity severity() {
    return check.severity();
  }

  /** What to do about it. */
  public String advice() {
    return check.advice();
  }
}
