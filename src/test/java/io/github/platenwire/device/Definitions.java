package io.github.platenwire.device;

import io.github.platenwire.toml.TomlException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** Definitions for the tests. */
final class Definitions {
  private Definitions() {}

  /** A line definition with CRLF, at most 40 bytes, and the given layout and field tables. */
  static DeviceDefinition line(String layout, String fields) {
    return parse(text(layout, "CRLF", fields));
  }

  static String text(String layout, String terminator, String fields) {
    return """
        format = "platenwire-device 1"
        name = "bench-box"
        title = "Bench box"
        kind = "line"
        [line]
        layout = '%s'
        terminator = '%s'
        longest = 40
        %s
        """
        .formatted(layout, terminator, fields);
  }

  /** A table of one field, its keys separated by semicolons. */
  static String field(String name, String kind, String keys) {
    return "[fields." + name + "]\nkind = \"" + kind + "\"\n" + keys.replace("; ", "\n") + "\n";
  }

  static DeviceDefinition parse(String text) {
    try {
      return DeviceDefinition.parse(text, "box.toml");
    } catch (TomlException e) {
      throw new AssertionError(e.getMessage(), e);
    }
  }

  static DeviceDefinition shipped(String name) {
    try {
      return parse(Files.readString(Path.of("devices", name + ".toml")));
    } catch (IOException e) {
      throw new AssertionError(e);
    }
  }
}
