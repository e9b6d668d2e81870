package io.github.platenwire.terminal;

import java.util.List;

/** A sentence or two, broken between words where the terminal ends. Stateless. */
public final class Paragraph {
  private Paragraph() {}

  /**
   * The lines.
   *
   * @param text what is said; empty gives one empty line
   * @param columns width of the terminal
   */
  public static List<String> lines(String text, int columns) {
    return text.isEmpty() ? List.of("") : TextWidth.wrap(text, Math.max(20, columns - 1));
  }
}
