package io.github.platenwire.record;

/**
 * A raw file that is not as the format says. The message names file, line, what was expected and
 * what was seen.
 */
public final class RawFileException extends Exception {
  private static final long serialVersionUID = 1L;

  /**
   * Makes an error at a line.
   *
   * @param file the file's name
   * @param line the line, from 1
   * @param problem what was expected and what was seen
   */
  public RawFileException(String file, long line, String problem) {
    super(file + ":" + line + ": " + problem);
  }
}
