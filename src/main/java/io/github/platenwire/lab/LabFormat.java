package io.github.platenwire.lab;

import io.github.platenwire.toml.TomlException;
import io.github.platenwire.toml.TomlSection;

/** What all TOML files of a lab have in common: a format line and, mostly, a name. Stateless. */
final class LabFormat {
  private LabFormat() {}

  /** Checks the {@code format} line, such as {@code platenwire-rig 1}. */
  static void check(TomlSection file, String kind) throws TomlException {
    String right = kind + " 1";
    String written = file.optionalString("format").orElse("");
    if (!file.has("format")) {
      throw file.error("'format' is missing; the file must begin with format = \"" + right + "\"");
    }
    if (written.equals(right)) {
      return;
    }
    if (written.matches(kind + " [2-9][0-9]*|" + kind + " 1[0-9]+")) {
      throw file.error(
          "format",
          "'" + written + "' is newer than this Platenwire, which reads \"" + right + "\"");
    }
    throw file.error("format", "'format' must be \"" + right + "\", but it is \"" + written + "\"");
  }

  /** Checks that the {@code name} inside a file is the file's own. */
  static void checkName(TomlSection file, String fileName) throws TomlException {
    String name = file.string("name");
    if (!name.equals(fileName)) {
      throw file.error(
          "name",
          "the name in the file is '"
              + name
              + "', but the file is called "
              + fileName
              + ".toml; the two must be the same");
    }
  }

  /** A text that must be there and hold more than spaces. */
  static String words(TomlSection section, String key) throws TomlException {
    String text = section.string(key).strip();
    if (text.isEmpty()) {
      throw section.error(key, "'" + key + "' is empty");
    }
    return text;
  }
}
