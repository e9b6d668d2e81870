package io.github.platenwire.terminal;

/**
 * How much a terminal shows.
 *
 * @param columns at least 1
 * @param lines at least 1
 */
public record TerminalSize(int columns, int lines) {
  /** What is taken when nobody can tell: the size of the classic screen (common practice). */
  public static final TerminalSize USUAL = new TerminalSize(80, 24);

  /** Checks. */
  public TerminalSize {
    if (columns < 1 || lines < 1) {
      throw new IllegalArgumentException("no such size: columns=" + columns + " lines=" + lines);
    }
  }
}
