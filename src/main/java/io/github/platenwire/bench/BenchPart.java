package io.github.platenwire.bench;

import java.util.Arrays;
import java.util.Optional;

/** What can be measured. */
public enum BenchPart {
  /** Readings a second, flat out, over a pseudo-terminal. */
  RECORD("record"),
  /** From sent to shown. */
  DELAY("delay"),
  /** Processor time of a common test. */
  CPU("cpu"),
  /** Rows a second in an audit. */
  AUDIT("audit"),
  /** Memory and close of a test of many hours. */
  DAY("day"),
  /** From the command to its answer. */
  START("start");

  private final String word;

  BenchPart(String word) {
    this.word = word;
  }

  /** Its name on the command line. */
  public String word() {
    return word;
  }

  /** The part of a name. */
  public static Optional<BenchPart> ofWord(String word) {
    return Arrays.stream(values()).filter(part -> part.word.equals(word)).findFirst();
  }
}
