package io.github.platenwire.lab;

import io.github.platenwire.toml.TomlException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.function.Function;

/**
 * Definitions of one kind: the lab's own first, then those shipped with the program. Reads afresh
 * each time it is asked. Safe for any thread.
 *
 * @param kind in the words of messages, such as {@code device}
 * @param root the lab folder
 * @param folder the lab's folder of them, below the lab folder
 * @param shippedFolder the program's folder of them
 * @param shipped what is packed with the program
 * @param reading how one is read
 * @param nameInside the name that its text gives it
 */
record Library<T>(
    String kind,
    Path root,
    String folder,
    String shippedFolder,
    Shipped shipped,
    Reading<T> reading,
    Function<T, String> nameInside) {

  /** Reads one definition. */
  @FunctionalInterface
  interface Reading<T> {
    /** Reads a text; {@code source} names it in messages. */
    T read(String text, String source) throws TomlException;
  }

  /** Every name that can be asked for, sorted. */
  List<String> names() {
    TreeSet<String> names = new TreeSet<>(TomlFolder.names(root.resolve(folder)));
    names.addAll(shipped.names(shippedFolder));
    return List.copyOf(names);
  }

  /** The definition of a name. */
  T find(String name) throws LabException {
    String source = folder + "/" + name + ".toml";
    // by the listing, so that upper and lower case count on every system
    if (TomlFolder.names(root.resolve(folder)).contains(name)) {
      return read(
          name, TextFile.utf8(root.resolve(folder).resolve(name + ".toml"), source), source);
    }
    Optional<String> text =
        Names.isDefinitionName(name)
            ? shipped.text(shippedFolder + "/" + name + ".toml")
            : Optional.empty();
    if (text.isPresent()) {
      return read(name, text.get(), "shipped " + source);
    }
    throw new LabException(
        "there is no "
            + kind
            + " '"
            + name
            + "', neither as "
            + source
            + " in the lab folder nor shipped with Platenwire"
            + Names.suggestion(name, names()));
  }

  private T read(String name, String text, String source) throws LabException {
    T definition;
    try {
      definition = reading.read(text, source);
    } catch (TomlException e) {
      throw LabException.of(e);
    }
    String inside = nameInside.apply(definition);
    if (!inside.equals(name)) {
      throw new LabException(
          source
              + ": the name in the file is '"
              + inside
              + "', but the file is called "
              + name
              + ".toml; the two must be the same");
    }
    return definition;
  }
}
