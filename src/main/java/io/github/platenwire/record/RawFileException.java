package io.github.platenwire.record;

/**
 * A raw file that is not as the format says. The message names file, line, what was expected and
 * what was seen; the parts can be asked for.
 */
public final class RawFileException extends Exception {
  private static final long serialVersionUID = 1L;

  private final Damage damage;
  private final long line;
  private final long offset;
  private final String expected;
  private final String seen;

  /** What is damaged. */
  public enum Damage {
    /** The head, or something that it keeps. */
    HEAD,
    /** A line that has not the form of a row, a check line or a last line. */
    LINE,
    /** A row's number is not the one after the row before. */
    SEQ,
    /** The digest of a check line or last line is not that of the bytes before it. */
    SEAL,
    /** Something follows the last line. */
    SURPLUS
  }

  /**
   * Makes an error at a line of the head, or about the file as a whole.
   *
   * @param file the file's name
   * @param line the line, from 1
   * @param problem what was expected and what was seen
   */
  public RawFileException(String file, long line, String problem) {
    super(file + ":" + line + ": " + problem);
    this.damage = Damage.HEAD;
    this.line = line;
    this.offset = 0;
    this.expected = "a head and rows as the format says";
    this.seen = problem;
  }

  /**
   * Makes an error at a line.
   *
   * @param file the file's name
   * @param line the line, from 1
   * @param offset bytes before the line
   * @param damage what is damaged
   * @param expected what was expected
   * @param seen what was seen
   */
  RawFileException(
      String file, long line, long offset, Damage damage, String expected, String seen) {
    super(file + ":" + line + ": " + expected + ", but " + seen);
    this.damage = damage;
    this.line = line;
    this.offset = offset;
    this.expected = expected;
    this.seen = seen;
  }

  /** What is damaged. */
  public Damage damage() {
    return damage;
  }

  /** The line, from 1. */
  public long line() {
    return line;
  }

  /** Bytes before that line; 0 where only the head as a whole is named. */
  public long offset() {
    return offset;
  }

  /** What was expected. */
  public String expected() {
    return expected;
  }

  /** What was seen. */
  public String seen() {
    return seen;
  }
}
