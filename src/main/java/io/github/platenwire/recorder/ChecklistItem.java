package io.github.platenwire.recorder;

import java.util.Optional;

/**
 * One line of the checklist before a test. Immutable.
 *
 * @param name what was checked
 * @param state how it stands
 * @param seen what was seen, with figures
 * @param remedy what to do about it, where there is something to do
 */
public record ChecklistItem(String name, State state, String seen, Optional<String> remedy) {
  /** How one line of the checklist stands. */
  public enum State {
    /** In order. */
    PASSED("passed"),
    /** The test may start; it will be said in the record. */
    WARNING("warning"),
    /** The test must not start. */
    FAILED("failed");

    private final String word;

    State(String word) {
      this.word = word;
    }

    /** The word in records. */
    public String word() {
      return word;
    }
  }
}
