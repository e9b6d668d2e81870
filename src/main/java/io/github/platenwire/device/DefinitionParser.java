package io.github.platenwire.device;

import io.github.platenwire.toml.TomlException;
import io.github.platenwire.toml.TomlSection;

/**
 * Reads what every definition file has, and hands the rest to the reader of its kind. Stateless.
 */
final class DefinitionParser {
  /** The format that this program reads; another number would mean other keys. */
  static final String FORMAT = "platenwire-device 1";

  private DefinitionParser() {}

  static DeviceDefinition parse(String text, String source) throws TomlException {
    TomlSection root = TomlSection.parse(text, source);
    String format = root.string("format");
    if (!format.equals(FORMAT)) {
      throw root.error(
          "format",
          "this program reads format \"" + FORMAT + "\", but the file is \"" + format + "\"");
    }
    String kind = root.choice("kind", "line", "asked-line", "binary", "modbus-rtu");
    return switch (kind) {
      case "line" -> LineDefinitionParser.parse(root, text);
      case "asked-line" -> LineDefinitionParser.parseAsked(root, text);
      case "binary" -> BinaryDefinitionParser.parse(root, text);
      case "modbus-rtu" -> ModbusDefinitionParser.parse(root, text);
      default -> throw new AssertionError(kind);
    };
  }

  /** The name by which rigs refer to the definition. */
  static String name(TomlSection root) throws TomlException {
    String name = root.string("name");
    if (!isSafeName(name)) {
      throw root.error(
          "name", "'" + name + "' is no name: use lower-case letters, digits and hyphens");
    }
    return name;
  }

  /** What the device is, for a person. */
  static String title(TomlSection root) throws TomlException {
    String title = root.string("title");
    if (title.isBlank()) {
      throw root.error("title", "the title is empty; say in a few words what the device sends");
    }
    return title;
  }

  /** Whether a name has only lower-case letters, digits and inner hyphens, and at least one. */
  static boolean isSafeName(String name) {
    return !name.isEmpty()
        && !name.startsWith("-")
        && !name.endsWith("-")
        && name.chars().allMatch(c -> "abcdefghijklmnopqrstuvwxyz0123456789-".indexOf(c) >= 0);
  }
}
