package io.github.platenwire.audit;

import java.util.Arrays;
import java.util.Optional;

/** How much a finding weighs, from the weakest to the strongest. */
public enum Severity {
  /** Nothing is wrong; whoever reads the record should know it. */
  NOTE("note"),
  /** A figure may be right, but somebody has to look before it is defended. */
  DOUBT("doubt"),
  /** The record, or the chain that vouches for it, cannot be trusted as it stands. */
  FAULT("fault");

  private final String word;

  Severity(String word) {
    this.word = word;
  }

  /** The word that people and programs see. */
  public String word() {
    return word;
  }

  /** Whether this weighs as much as another, or more. */
  public boolean isAtLeast(Severity other) {
    return compareTo(other) >= 0;
  }

  /** The severity with a word. */
  public static Optional<Severity> ofWord(String word) {
    return Arrays.stream(values()).filter(severity -> severity.word.equals(word)).findFirst();
  }
}
