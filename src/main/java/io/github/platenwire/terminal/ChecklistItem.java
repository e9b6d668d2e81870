package io.github.platenwire.terminal;

import java.util.Optional;

/**
 * One thing that was looked at before a test.
 *
 * @param name what, in a few words
 * @param state how it stands
 * @param seen what was seen there, with figures
 * @param remedy what to do next, where it does not stand well
 */
public record ChecklistItem(String name, State state, String seen, Optional<String> remedy) {
  /** How a thing stands. */
  public enum State {
    /** As it must be. */
    PASSED,
    /** The test may go on, but a person should know. */
    WARNING,
    /** The test cannot go on like this. */
    FAILED
  }
}
