package io.github.platenwire.record;

import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * How a summary came about. Immutable.
 *
 * @param maker what made it
 * @param witnessBefore witness of the register line that came before this summary's own: the own
 *     line holds this summary's digest and so cannot stand in it; empty if the register could not
 *     be read
 * @param correction what was corrected after the test, for a later version of a summary
 */
public record Provenance(
    Maker maker, Optional<String> witnessBefore, Optional<Correction> correction) {

  /** What made a summary. */
  public enum Maker {
    /** The recorder, when the test was closed. */
    CLOSE("close"),
    /** The recovery of an interrupted test. */
    RECOVER("recover"),
    /** A correction of the specimen's measurements. */
    CORRECT("correct"),
    /** Observations that were added after the test. */
    OBSERVE("observe");

    private final String word;

    Maker(String word) {
      this.word = word;
    }

    /** The word in the summary. */
    public String word() {
      return word;
    }

    /** What has a word, if there is one. */
    static Optional<Maker> ofWord(String word) {
      return Arrays.stream(values()).filter(maker -> maker.word.equals(word)).findFirst();
    }
  }

  /**
   * A correction, or an addition of observations, which changes no measurement.
   *
   * @param who who made it
   * @param when when, UTC
   * @param why why
   * @param changes everything in which the specimen differs from the raw file's head
   * @param replacedFile name of the summary that it replaces, which stays
   * @param replacedSha256 its SHA-256
   */
  public record Correction(
      String who,
      Instant when,
      String why,
      List<Change> changes,
      String replacedFile,
      String replacedSha256) {
    /** Makes the list immutable. */
    public Correction {
      changes = List.copyOf(changes);
    }
  }

  /**
   * One measurement that was corrected.
   *
   * @param what such as {@code diameter_1_mm}
   * @param from as in the raw file's head; empty if it was not measured
   * @param to the right value, in the same unit
   */
  public record Change(String what, Optional<Double> from, double to) {}
}
