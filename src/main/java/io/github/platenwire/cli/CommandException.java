package io.github.platenwire.cli;

/**
 * A command that cannot go on. The message is one line for a person; the exit code goes to whoever
 * started the process.
 */
final class CommandException extends Exception {
  private static final long serialVersionUID = 1L;

  private final int exitCode;

  CommandException(int exitCode, String message) {
    super(message);
    this.exitCode = exitCode;
  }

  CommandException(int exitCode, String message, Throwable cause) {
    super(message, cause);
    this.exitCode = exitCode;
  }

  int exitCode() {
    return exitCode;
  }
}
