package io.github.platenwire.cli;

import io.github.platenwire.lab.LabException;
import io.github.platenwire.lab.LabFolder;
import io.github.platenwire.quantity.UnitSystem;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/**
 * Finds the record that a person means: by path, by file name, by test id, by specimen. Stateless.
 */
final class RecordFinder {
  private static final String RAW = ".raw.csv";

  private RecordFinder() {}

  /**
   * A record that was found.
   *
   * @param raw its raw file
   * @param lab the lab folder that it lies in; empty for a raw file that somebody holds alone
   */
  record Found(Path raw, Optional<LabFolder> lab) {
    /** The lab's first system of units; SI where there is no lab. */
    UnitSystem unitsFirst() {
      return lab.map(folder -> folder.settings().unitsFirst()).orElse(UnitSystem.SI);
    }
  }

  /**
   * A record by its file, with or without a lab folder around it, or by its name in a lab folder.
   *
   * @throws CommandException if there is none, or more than one
   * @throws LabException if a lab folder is needed and there is none
   */
  static Found locate(String words, LabOption option)
      throws LabException, IOException, CommandException {
    Path path = Path.of(words);
    if (Files.isRegularFile(path) && labAbove(path).isEmpty() && !option.isGiven()) {
      return new Found(rawOf(path), Optional.empty());
    }
    if (!Files.exists(path) && words.endsWith(RAW) && !option.isGiven() && !option.isHere()) {
      throw new CommandException(
          ExitCode.USAGE,
          "there is no file " + words + "; look at the name, or say which lab folder with --lab");
    }
    LabFolder lab = labOf(words, option);
    return new Found(find(lab, words), Optional.of(lab));
  }

  /**
   * The raw file.
   *
   * @param lab where to look if the words are no path
   * @param words as typed
   * @throws CommandException if there is none, or more than one
   */
  static Path find(LabFolder lab, String words) throws IOException, CommandException {
    Path path = Path.of(words);
    if (Files.isRegularFile(path)) {
      return rawOf(path);
    }
    String name = stem(String.valueOf(path.getFileName()));
    List<Path> fitting =
        lab.records().stream().filter(raw -> fits(stem(fileName(raw)), name)).toList();
    if (fitting.size() == 1) {
      return fitting.get(0);
    }
    if (fitting.isEmpty()) {
      throw new CommandException(
          ExitCode.USAGE,
          "there is no record '"
              + words
              + "' in "
              + lab.root().resolve("records")
              + "; name its raw file, or its test, such as 20261125T071502Z_RA-S-07-1");
    }
    throw new CommandException(
        ExitCode.USAGE,
        "'"
            + words
            + "' fits several records, say which: "
            + String.join(", ", fitting.stream().map(raw -> stem(fileName(raw))).toList()));
  }

  /**
   * The lab folder that a record, or a folder of them, lies in, if it lies in one; else the one
   * asked for.
   */
  static LabFolder labOf(String words, LabOption option) throws LabException {
    Optional<Path> above = labAbove(Path.of(words));
    return above.isPresent() ? LabFolder.open(above.get()) : option.open();
  }

  private static Optional<Path> labAbove(Path place) {
    Path path = place.toAbsolutePath().normalize();
    if (Files.exists(path)) {
      for (Path above = path; above != null; above = above.getParent()) {
        if (Files.isRegularFile(above.resolve("lab.toml"))) {
          return Optional.of(above);
        }
      }
    }
    return Optional.empty();
  }

  private static Path rawOf(Path path) {
    String name = fileName(path);
    return name.endsWith(RAW) ? path : path.resolveSibling(stem(name) + RAW);
  }

  private static boolean fits(String stem, String name) {
    return stem.equals(name) || stem.substring(stem.indexOf('_') + 1).equals(name);
  }

  private static String stem(String name) {
    return name.replaceAll("\\.(raw\\.csv|summary(-[0-9]+)?\\.json)$", "");
  }

  private static String fileName(Path path) {
    return String.valueOf(path.getFileName());
  }
}
