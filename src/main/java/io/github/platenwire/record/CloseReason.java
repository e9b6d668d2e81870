package io.github.platenwire.record;

import java.util.Arrays;
import java.util.Optional;

/** Why a record ended. */
public enum CloseReason {
  /** The specimen broke and the tail was recorded. */
  BREAK("break"),
  /** The operator ended it. */
  OPERATOR("operator"),
  /** A limit of range or width was reached. */
  RANGE("range"),
  /** All that the method asked for was done, with nothing broken. */
  COMPLETE("complete"),
  /** The link, the disk or the program failed. */
  INTERRUPTED("interrupted");

  private final String word;

  CloseReason(String word) {
    this.word = word;
  }

  /** The word in the raw file's last line. */
  public String word() {
    return word;
  }

  /** The reason with a word. */
  public static Optional<CloseReason> ofWord(String word) {
    return Arrays.stream(values()).filter(reason -> reason.word.equals(word)).findFirst();
  }
}
