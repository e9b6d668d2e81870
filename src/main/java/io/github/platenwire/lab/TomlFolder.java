package io.github.platenwire.lab;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.NotDirectoryException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** A folder of definitions, one {@code NAME.toml} each. Stateless. */
final class TomlFolder {
  private static final String ENDING = ".toml";

  private TomlFolder() {}

  /**
   * The names of the definitions in a folder, sorted; empty if there is no such folder.
   *
   * @throws UncheckedIOException if the folder cannot be read
   */
  static List<String> names(Path folder) {
    try (Stream<Path> files = Files.list(folder)) {
      return files
          .flatMap(file -> definitionName(String.valueOf(file.getFileName())).stream())
          .sorted()
          .toList();
    } catch (NoSuchFileException | NotDirectoryException e) {
      return List.of();
    } catch (IOException e) {
      throw new UncheckedIOException(folder + ": this folder cannot be read", e);
    }
  }

  /** The definition's name, if a file of this name holds one. */
  static Optional<String> definitionName(String fileName) {
    if (!fileName.endsWith(ENDING)) {
      return Optional.empty();
    }
    String name = fileName.substring(0, fileName.length() - ENDING.length());
    return Names.isDefinitionName(name) ? Optional.of(name) : Optional.empty();
  }
}
