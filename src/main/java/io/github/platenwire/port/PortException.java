package io.github.platenwire.port;

import java.io.IOException;

/** A port that could not be opened. The message says what happened, where, and what to do next. */
public final class PortException extends IOException {
  private static final long serialVersionUID = 1L;

  /** Why the port could not be opened. */
  public enum Reason {
    /** There is nothing of that name. */
    MISSING,
    /** Another program holds it. */
    BUSY,
    /** This user may not open it. */
    NOT_PERMITTED,
    /** It is there but is no port, refuses the line settings, or failed in some other way. */
    UNUSABLE
  }

  private final Reason reason;

  /** Makes the error. */
  public PortException(Reason reason, String message) {
    super(message);
    this.reason = reason;
  }

  /** Why. */
  public Reason reason() {
    return reason;
  }
}
