package io.github.platenwire.commission;

import java.util.List;
import java.util.Optional;

/** Infers a first device definition from bytes. Stateless. */
public final class DefinitionDraft {
  private DefinitionDraft() {}

  /**
   * A definition that decodes a sample as far as can be told, the questions that must be answered
   * first, or notes that say why none can be written.
   *
   * @param sample a minute of the device's bytes serves best, with loads that change
   * @param hints what a person knows
   */
  public static Draft of(Sample sample, Hints hints) {
    byte[] bytes = sample.bytes();
    Optional<SampleLines> lines = SampleLines.cut(bytes);
    if (lines.isPresent()) {
      Draft draft = LineGuess.draft(lines.get(), hints);
      boolean empty = draft.text().isEmpty() && draft.questions().isEmpty();
      return empty ? new Draft("", List.of(NO_NUMBER), List.of()) : draft;
    }
    return BinaryGuess.draft(bytes, hints);
  }

  private static final String NO_NUMBER =
      "The sample is lines of text, but no number in it changes or carries a unit. Take a longer"
          + " log while the load changes.";
}
