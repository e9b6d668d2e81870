package io.github.platenwire.emulate;

import io.github.platenwire.quantity.Rounding;
import io.github.platenwire.quantity.Unit;
import java.math.BigDecimal;

/**
 * The truth of one emulated beam in a few figures, to be held against what was measured. Immutable.
 *
 * @param crackNewtons load at first cracking
 * @param atNewtons a load beyond it
 * @param widthMillimetres mean width there on first loading
 * @param sent what the device sent
 */
public record BeamSummary(
    double crackNewtons, double atNewtons, double widthMillimetres, SentTruth sent) {
  private static final BigDecimal MILLIMETRES = new BigDecimal("0.001");
  private static final BigDecimal INCHES = new BigDecimal("0.0001");

  /**
   * The summary of a test.
   *
   * @param truth the truth behind it
   * @param atNewtons at which load the width is told
   * @param sent what the device sent of it
   */
  public static BeamSummary of(BeamTruth truth, double atNewtons, SentTruth sent) {
    return new BeamSummary(
        truth.beam().crackNewtons(), atNewtons, truth.widthAtLoad(atNewtons), sent);
  }

  /** Everything, in whole sentences, one a line. */
  public String words() {
    return "True first crack at "
        + TruthSummary.loadWords(crackNewtons)
        + ".\nTrue width "
        + Rounding.halfEven(widthMillimetres, MILLIMETRES).toPlainString()
        + " mm ("
        + Rounding.halfEven(Unit.INCH.fromBase(widthMillimetres), INCHES).toPlainString()
        + " in) at "
        + TruthSummary.loadWords(atNewtons)
        + ", as the mean of both faces.\n"
        + sent.words();
  }
}
