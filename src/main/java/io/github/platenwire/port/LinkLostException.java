package io.github.platenwire.port;

import java.io.IOException;

/** The other end is gone: cable pulled, adapter unplugged, server closed. */
public final class LinkLostException extends IOException {
  private static final long serialVersionUID = 1L;

  /** Makes the error; the message says what was seen, in plain words. */
  public LinkLostException(String message) {
    super(message);
  }
}
