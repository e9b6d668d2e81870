package io.github.platenwire.commission;

/**
 * What only a person can tell.
 *
 * @param kind what is asked for
 * @param about the spelling, or an example of the number
 * @param words the question
 */
public record Question(Kind kind, String about, String words) {
  /** What is asked for. */
  public enum Kind {
    /** The unit of a number that carries none; asked once for each such number, in order. */
    UNIT,
    /** The unit that a word stands for. */
    SPELLING
  }
}
