package io.github.platenwire.cli;

import io.github.platenwire.lab.LabException;
import io.github.platenwire.port.LinkLostException;
import io.github.platenwire.port.PortException;
import io.github.platenwire.toml.TomlException;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import picocli.CommandLine;

/**
 * Turns whatever a command throws into one line on standard error and an exit code; the log file
 * has the stack trace. Stateless.
 */
final class Failures {
  private static final Logger LOG = LoggerFactory.getLogger(Failures.class);

  private Failures() {}

  /** Handles what a command threw while it ran. */
  static int handle(Exception failure, CommandLine command, CommandLine.ParseResult parsed) {
    LOG.error("{} failed", command.getCommandName(), failure);
    command.getErr().println(command.getColorScheme().errorText("platenwire: " + words(failure)));
    command.getErr().flush();
    return exitCode(failure);
  }

  /** Handles options and arguments that cannot be understood. */
  static int misused(CommandLine.ParameterException misuse, String[] args) {
    CommandLine command = misuse.getCommandLine();
    command
        .getErr()
        .println(command.getColorScheme().errorText("platenwire: " + misuse.getMessage()));
    CommandLine.UnmatchedArgumentException.printSuggestions(misuse, command.getErr());
    command.getErr().println("Try '" + command.getCommandSpec().qualifiedName() + " --help'.");
    command.getErr().flush();
    return ExitCode.USAGE;
  }

  private static int exitCode(Exception failure) {
    if (failure instanceof CommandException command) {
      return command.exitCode();
    }
    if (failure instanceof PortException || failure instanceof LinkLostException) {
      return ExitCode.DEVICE;
    }
    if (failure instanceof LabException
        || failure instanceof TomlException
        || failure instanceof IllegalArgumentException) {
      return ExitCode.USAGE;
    }
    return failure instanceof IOException || failure instanceof UncheckedIOException
        ? ExitCode.STORAGE
        : ExitCode.NOT_MET;
  }

  private static String words(Exception failure) {
    if (failure instanceof UncheckedIOException unchecked && unchecked.getCause() != null) {
      return words(unchecked.getCause());
    }
    if (failure instanceof NoSuchFileException missing) {
      return "there is no " + missing.getFile();
    }
    if (failure instanceof AccessDeniedException denied) {
      return "no permission for "
          + denied.getFile()
          + "; ask whoever owns it, or choose another folder with --lab";
    }
    if (failure instanceof FileAlreadyExistsException exists) {
      return exists.getFile() + " is there already and is never overwritten";
    }
    if (failure instanceof FileSystemException file) {
      return file.getFile() + ": " + file.getReason();
    }
    boolean expected =
        failure instanceof CommandException
            || failure instanceof IOException
            || failure instanceof LabException
            || failure instanceof TomlException
            || failure instanceof IllegalArgumentException;
    return expected
        ? String.valueOf(failure.getMessage())
        : "a fault of the program itself: " + failure + "; the log file has the details";
  }
}
