package io.github.platenwire.report;

/** A report that cannot be made; the message is one line for a person and says what to do. */
public final class ReportException extends Exception {
  private static final long serialVersionUID = 1L;

  /** With a message for a person. */
  public ReportException(String message) {
    super(message);
  }
}
