package io.github.platenwire.cli;

/** What the process says to whoever started it. */
final class ExitCode {
  /** All is well. */
  static final int FINE = 0;

  /** Findings, or a check that was not met. */
  static final int NOT_MET = 1;

  /** Wrong usage or configuration. */
  static final int USAGE = 2;

  /** Device or link. */
  static final int DEVICE = 3;

  /** Storage. */
  static final int STORAGE = 4;

  /** Interrupted by the person. */
  static final int INTERRUPTED = 130;

  private ExitCode() {}
}
