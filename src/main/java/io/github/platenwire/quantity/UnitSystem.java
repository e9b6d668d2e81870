package io.github.platenwire.quantity;

import java.util.Arrays;
import java.util.Optional;

/**
 * The two systems of units of the trade. Both are always shown; a lab chooses which comes first.
 */
public enum UnitSystem {
  /** Newton, millimetre, megapascal, kilogram. */
  SI("si"),
  /** Pound-force, inch, pound-force per square inch, pound. */
  INCH_POUND("inch-pound");

  private final String word;

  UnitSystem(String word) {
    this.word = word;
  }

  /** The word in lab files and options. */
  public String word() {
    return word;
  }

  /** The system with a word, if there is one. */
  public static Optional<UnitSystem> ofWord(String word) {
    return Arrays.stream(values()).filter(system -> system.word.equals(word)).findFirst();
  }
}
