package io.github.platenwire.emulate;

/**
 * What an emulated indicator really sent in one test. Immutable.
 *
 * @param linesSent lines, frames or answers sent, each whole with its end, spoilt ones included
 * @param readingsWithheld readings not sent for silence
 * @param silences times that the device fell silent
 * @param glitches whole lines with a wild value
 * @param garbageRuns lines with stray bytes in front
 * @param linesTorn lines with bytes lost; some of them still read as a number, and a wrong one
 * @param linesFlipped lines with a flipped bit; some of them, too, still read as a wrong number
 * @param bytesSent bytes of all that
 * @param greatestNewtons greatest load shown by a line that was neither spoilt nor wild, zero
 *     offset included: what a perfect recorder must find; NaN before the first
 * @param greatestNanos when that reading was taken, the first if several show the same
 * @param zeroNewtons what the device shows without load
 */
public record SentTruth(
    long linesSent,
    long readingsWithheld,
    long silences,
    long glitches,
    long garbageRuns,
    long linesTorn,
    long linesFlipped,
    long bytesSent,
    double greatestNewtons,
    long greatestNanos,
    double zeroNewtons) {

  /** Lines that did not arrive as the device wrote them. */
  public long linesSpoilt() {
    return garbageRuns + linesTorn + linesFlipped;
  }

  /** The greatest sound reading with the true zero offset taken off, in newtons. */
  public double greatestAboveZeroNewtons() {
    return greatestNewtons - zeroNewtons;
  }

  /** What was sent, in whole sentences, one a line. */
  public String words() {
    return "Greatest sound reading sent "
        + TruthSummary.loadWords(greatestNewtons)
        + " with the indicator's zero at "
        + TruthSummary.loadWords(zeroNewtons)
        + ".\nReadings sent "
        + linesSent
        + "; spoilt "
        + linesSpoilt()
        + "; wild values "
        + glitches
        + "; silences "
        + silences
        + ".\n";
  }
}
