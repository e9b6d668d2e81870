package io.github.platenwire.emulate;

import io.github.platenwire.quantity.Rounding;
import io.github.platenwire.quantity.Unit;
import java.math.BigDecimal;

/**
 * The truth of one emulated test in a few figures, to be held against what was measured. Immutable.
 *
 * @param strengthMegapascals true strength
 * @param peakNewtons true greatest load
 * @param peakNanos when it was reached, since the start of the test
 * @param breakNanos when the cylinder broke
 * @param sent what the indicator sent
 */
public record TruthSummary(
    double strengthMegapascals,
    double peakNewtons,
    long peakNanos,
    long breakNanos,
    SentTruth sent) {
  private static final BigDecimal TENTH = new BigDecimal("0.1");
  private static final BigDecimal HUNDREDTH = new BigDecimal("0.01");
  private static final BigDecimal TEN = BigDecimal.TEN;

  /**
   * The summary of a cylinder's test, once its stream has been read to the end.
   *
   * @throws IllegalArgumentException if it is no cylinder
   */
  public static TruthSummary of(EmulatedFrame frame) {
    if (frame.truth() instanceof CylinderTruth truth) {
      return of(truth, frame.sent());
    }
    throw new IllegalArgumentException("there is no cylinder in this frame");
  }

  /**
   * The summary of a cylinder's test.
   *
   * @param truth the truth behind it
   * @param sent what the device sent of it
   */
  public static TruthSummary of(CylinderTruth truth, SentTruth sent) {
    return new TruthSummary(
        truth.cylinder().strengthMegapascals(),
        truth.peakNewtons(),
        truth.peakNanos(),
        truth.breakNanos(),
        sent);
  }

  /** True strength in both systems of units: 0.1 MPa and 10 psi. */
  public String strengthWords() {
    return rounded(strengthMegapascals, TENTH)
        + " MPa ("
        + rounded(Unit.PSI.fromBase(strengthMegapascals), TEN)
        + " psi)";
  }

  /** True peak in both systems of units: 0.01 kN and 10 lbf. */
  public String peakWords() {
    return loadWords(peakNewtons);
  }

  /** Everything, in whole sentences, one a line. */
  public String words() {
    StringBuilder words = new StringBuilder();
    words.append("True strength ").append(strengthWords()).append(".\n");
    words.append("True peak ").append(peakWords()).append(" after ");
    words.append(seconds(peakNanos)).append("; broke after ").append(seconds(breakNanos));
    words.append(".\n").append(sent.words());
    return words.toString();
  }

  /** A load in both systems of units. */
  static String loadWords(double newtons) {
    if (Double.isNaN(newtons)) {
      return "none";
    }
    return rounded(Unit.KILONEWTON.fromBase(newtons), HUNDREDTH)
        + " kN ("
        + rounded(Unit.POUND_FORCE.fromBase(newtons), TEN)
        + " lbf)";
  }

  private static String seconds(long nanos) {
    return rounded(nanos / 1e9, TENTH) + " s";
  }

  private static String rounded(double value, BigDecimal step) {
    return Rounding.halfEven(value, step).toPlainString();
  }
}
