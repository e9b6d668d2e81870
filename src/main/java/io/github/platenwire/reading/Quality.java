package io.github.platenwire.reading;

import java.util.Arrays;
import java.util.Optional;

/**
 * How far a reading can be trusted. Only {@link #OK} readings are used for a result; the others are
 * kept and marked.
 */
public enum Quality {
  /** Decoded whole and within the channel's range. */
  OK("ok"),
  /** Beyond the channel's range, or the device said that it is overloaded. */
  OVER("over"),
  /** The device itself said that the value had not settled. */
  UNSTABLE("unstable"),
  /** Framing, checksum or syntax was wrong; no value could be decoded. */
  GARBLED("garbled"),
  /** The device was silent longer than allowed; written by the recorder, with no bytes received. */
  LATE("late"),
  /**
   * Decoded, but not to be believed: an impossible jump, or the first frame after joining a stream
   * in mid-frame.
   */
  SUSPECT("suspect");

  private final String word;

  Quality(String word) {
    this.word = word;
  }

  /** The word in the raw file's {@code quality} column. */
  public String word() {
    return word;
  }

  /** The quality with a word of the raw file. */
  public static Optional<Quality> ofWord(String word) {
    return Arrays.stream(values()).filter(quality -> quality.word.equals(word)).findFirst();
  }
}
