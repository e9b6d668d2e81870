package io.github.platenwire.bench;

/** A program that does nothing: what it takes to start is Java's own. */
public final class Nothing {
  private Nothing() {}

  /** Does nothing. */
  public static void main(String[] args) {}
}
