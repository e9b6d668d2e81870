package io.github.platenwire.lab;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.NotDirectoryException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Stream;

/** Makes the files of a lab folder; never touches one that is there. Stateless. */
final class LabMaker {
  private static final List<String> FOLDERS =
      List.of(LabFolder.RIGS, "devices", "calibrations", "records", "register");

  /** What file managers leave in a folder that a person would call empty. */
  private static final Set<String> UNSEEN = Set.of("thumbs.db", "desktop.ini");

  private LabMaker() {}

  static void make(Path root, LabTemplate template) throws LabException, IOException {
    refuseForeign(root);
    boolean hasRigs = !TomlFolder.names(root.resolve(LabFolder.RIGS)).isEmpty();
    Map<String, String> files = new TreeMap<>(template.files());
    // an example beside the lab's own rigs would only be in the way
    files.keySet().removeIf(path -> hasRigs && path.startsWith(LabFolder.RIGS + "/"));
    // begun with lab.toml, so that a making that was cut off can be done again
    String settings = files.remove(LabFolder.SETTINGS);
    if (settings != null) {
      write(root.resolve(LabFolder.SETTINGS), settings);
    }
    for (String folder : FOLDERS) {
      Files.createDirectories(root.resolve(folder));
    }
    for (Map.Entry<String, String> file : files.entrySet()) {
      write(root.resolve(file.getKey()), file.getValue());
    }
  }

  private static void refuseForeign(Path root) throws LabException, IOException {
    if (!Files.exists(root) || Files.isRegularFile(root.resolve(LabFolder.SETTINGS))) {
      return;
    }
    try (Stream<Path> files = Files.list(root)) {
      List<String> seen =
          files.map(file -> String.valueOf(file.getFileName())).filter(LabMaker::isSeen).toList();
      if (!seen.isEmpty()) {
        throw new LabException(
            root
                + ": there are files here, but no lab.toml; choose a new or an empty folder for the"
                + " lab, such as "
                + root.resolve("lab"));
      }
    } catch (NotDirectoryException e) {
      throw new LabException(root + ": this is a file; a lab needs a folder of its own", e);
    }
  }

  private static boolean isSeen(String name) {
    return !name.startsWith(".") && !UNSEEN.contains(name.toLowerCase(Locale.ROOT));
  }

  private static void write(Path file, String text) throws IOException {
    Path folder = file.getParent();
    if (folder != null) {
      Files.createDirectories(folder);
    }
    try {
      Files.writeString(file, text, StandardCharsets.UTF_8, StandardOpenOption.CREATE_NEW);
    } catch (FileAlreadyExistsException e) {
      return;
    }
  }
}
