package io.github.platenwire.terminal;

import java.util.Map;

/** Whether text is coloured. The background is never set, so that light and dark ones both work. */
public enum Palette {
  /** Text as it is. */
  PLAIN,
  /** Bold and a few of the terminal's own colours. */
  COLOURS;

  /**
   * The palette for an output.
   *
   * @param terminal whether it is a terminal that understands control sequences
   * @param environment the process environment; {@code NO_COLOR} with any text in it asks for no
   *     colour (no-color.org, from memory)
   */
  public static Palette of(boolean terminal, Map<String, String> environment) {
    boolean refused = !environment.getOrDefault("NO_COLOR", "").isEmpty();
    return terminal && !refused ? COLOURS : PLAIN;
  }

  /** The text in a style, with control sequences around it only where colours are wanted. */
  public String paint(Style style, String text) {
    if (this == PLAIN || style == Style.PLAIN || text.isEmpty()) {
      return text;
    }
    return "\u001b[" + style.code() + "m" + text + "\u001b[0m";
  }
}
