package io.github.platenwire.bench;

/** A measurement that could not be made, or that found readings lost; the message says what. */
public final class BenchException extends Exception {
  private static final long serialVersionUID = 1L;

  BenchException(String message) {
    super(message);
  }
}
