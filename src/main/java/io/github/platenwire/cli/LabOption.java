package io.github.platenwire.cli;

import io.github.platenwire.lab.LabException;
import io.github.platenwire.lab.LabFolder;
import java.nio.file.Files;
import java.nio.file.Path;
import picocli.CommandLine.Option;

/** The option {@code --lab}, which every command that works in a lab folder has. */
final class LabOption {
  @Option(
      names = "--lab",
      paramLabel = "DIR",
      description = "The lab folder (default: the current folder).")
  private Path folder = Path.of("");

  /** Whether somebody named a lab folder. */
  boolean isGiven() {
    return !folder.equals(Path.of(""));
  }

  /** Whether the folder is a lab folder. */
  boolean isHere() {
    return Files.isRegularFile(folder.resolve("lab.toml"));
  }

  /** Opens the lab folder and logs into it from now on. */
  LabFolder open() throws LabException {
    LabFolder lab = LabFolder.open(folder);
    Logging.toFolder(lab.root());
    return lab;
  }
}
