package io.github.platenwire.cli;

import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Option;

/** The options {@code --json} and {@code --csv}, of which one may be given. */
final class OutputOption {
  @ArgGroup(exclusive = true, multiplicity = "0..1")
  private Kind kind = new Kind();

  /** One of the two. */
  private static final class Kind {
    @Option(names = "--json", description = "Print JSON instead, every figure unrounded.")
    private boolean json;

    @Option(
        names = "--csv",
        description = "Print one CSV table instead, with figures unrounded and decimal points.")
    private boolean csv;
  }

  boolean json() {
    return kind.json;
  }

  boolean csv() {
    return kind.csv;
  }
}
