package io.github.platenwire.cli;

import picocli.CommandLine;
import picocli.CommandLine.Command;

/** The program: every command hangs below this one. */
@Command(name = "platenwire", mixinStandardHelpOptions = true)
public final class Platenwire {
  /** Runs one command and ends the process with its exit code. */
  public static void main(String[] args) {
    System.exit(new CommandLine(new Platenwire()).execute(args));
  }
}
