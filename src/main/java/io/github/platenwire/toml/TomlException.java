package io.github.platenwire.toml;

/**
 * A TOML document that cannot be used as it stands. The message reads {@code file:line:column: what
 * is wrong, and what would be right} and is fit to be shown to a person as it is.
 */
public final class TomlException extends Exception {
  private static final long serialVersionUID = 1L;

  private final String source;
  private final int line;
  private final int column;

  /**
   * Makes an error at a place.
   *
   * @param source the file's name as the person knows it
   * @param line the line, from 1; 0 when the whole document is meant
   * @param column the column, from 1
   * @param problem what is wrong and what would be right
   */
  public TomlException(String source, int line, int column, String problem) {
    super(line > 0 ? source + ":" + line + ":" + column + ": " + problem : source + ": " + problem);
    this.source = source;
    this.line = line;
    this.column = column;
  }

  /** The file's name as given by whoever asked for it to be read. */
  public String source() {
    return source;
  }

  /** The line, from 1, or 0 when the whole document is meant. */
  public int line() {
    return line;
  }

  /** The column, from 1, or 0 when the whole document is meant. */
  public int column() {
    return column;
  }
}
