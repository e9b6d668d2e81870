package io.github.platenwire.commission;

import java.util.List;

/**
 * A first definition, or what must be known before one can be written. Immutable.
 *
 * @param text the definition as TOML with comments; empty if questions are open or nothing could be
 *     inferred
 * @param notes what was inferred and what a person should look at
 * @param questions what must be answered first
 */
public record Draft(String text, List<String> notes, List<Question> questions) {
  /** Keeps the lists from being changed. */
  public Draft {
    notes = List.copyOf(notes);
    questions = List.copyOf(questions);
  }
}
