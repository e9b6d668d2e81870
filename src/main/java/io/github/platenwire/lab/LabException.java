package io.github.platenwire.lab;

import io.github.platenwire.toml.TomlException;

/**
 * Something in the lab folder that cannot be used as it stands. The message names the file with
 * line and column, or with the row and column of the table, says what is wrong and what would be
 * right, and is fit to be shown to a person as it is.
 */
public final class LabException extends Exception {
  private static final long serialVersionUID = 1L;

  /** Makes an error; the message says where, what is wrong, and what would be right. */
  public LabException(String message) {
    super(message);
  }

  LabException(String message, Throwable cause) {
    super(message, cause);
  }

  static LabException of(TomlException cause) {
    return new LabException(String.valueOf(cause.getMessage()), cause);
  }
}
