package io.github.platenwire.cli;

import io.github.platenwire.commission.Sample;
import io.github.platenwire.device.DeviceDefinition;
import io.github.platenwire.lab.LabException;
import io.github.platenwire.lab.LabFolder;
import io.github.platenwire.toml.TomlException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** Device definitions by file or by name, with or without a lab folder. */
final class DefinitionOption {
  @Option(
      names = "--lab",
      paramLabel = "DIR",
      description =
          "A lab folder with device definitions of its own (default: the current folder, if it is"
              + " one).")
  private @Nullable Path lab;

  private Path folder() {
    return lab == null ? Path.of("") : lab;
  }

  private boolean isLab() {
    return lab != null || Files.exists(folder().resolve("lab.toml"));
  }

  /**
   * The definition in a file, or of a name.
   *
   * @throws CommandException if there is no such file
   */
  DeviceDefinition find(String fileOrName)
      throws LabException, TomlException, IOException, CommandException {
    boolean file = fileOrName.endsWith(".toml") || fileOrName.contains("/");
    if (file) {
      requireFile("FILE", Path.of(fileOrName));
      return DeviceDefinition.parse(Files.readString(Path.of(fileOrName)), fileOrName);
    }
    return isLab()
        ? LabFolder.open(folder()).device(fileOrName)
        : LabFolder.deviceOutsideLab(folder(), fileOrName);
  }

  /**
   * Bytes that a device sent, from a file that was named.
   *
   * @throws CommandException if there is no such file
   */
  static Sample sample(Path file) throws IOException, CommandException {
    requireFile("--sample", file);
    return Sample.read(file);
  }

  /** A file that is not there was named wrongly: that is no failure of the disk. */
  private static void requireFile(String option, Path file) throws CommandException {
    if (!Files.isRegularFile(file)) {
      throw new CommandException(
          ExitCode.USAGE,
          option + ": there is no file " + file + "; look at the name and the folder");
    }
  }

  /** Every definition that can be read: the lab's and those shipped. */
  List<DeviceDefinition> all() throws LabException {
    List<DeviceDefinition> all = new ArrayList<>();
    List<String> names =
        isLab()
            ? LabFolder.open(folder()).deviceNames()
            : LabFolder.deviceNamesOutsideLab(folder());
    for (String name : names) {
      all.add(
          isLab()
              ? LabFolder.open(folder()).device(name)
              : LabFolder.deviceOutsideLab(folder(), name));
    }
    return all;
  }

  /** Where a new definition belongs: the lab's folder of them, else the current folder. */
  Path home() {
    return isLab() ? folder().resolve("devices") : folder();
  }
}
