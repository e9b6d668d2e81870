package io.github.platenwire.calibration;

import java.util.Arrays;
import java.util.Optional;

/** The kinds of correction that a file can ask for. */
public enum CorrectionKind {
  /** Values stay as they are. */
  NONE("none"),
  /** One factor. */
  SCALE("scale"),
  /** Straight lines between the calibrated steps. */
  TABLE("table"),
  /** A polynomial by least squares. */
  POLYNOMIAL("polynomial");

  private final String word;

  CorrectionKind(String word) {
    this.word = word;
  }

  /** The word in rig, calibration and raw files. */
  public String word() {
    return word;
  }

  /** Every word. */
  public static String[] words() {
    return Arrays.stream(values()).map(CorrectionKind::word).toArray(String[]::new);
  }

  /** The kind with a word, if there is one. */
  public static Optional<CorrectionKind> ofWord(String word) {
    return Arrays.stream(values()).filter(kind -> kind.word.equals(word)).findFirst();
  }
}
