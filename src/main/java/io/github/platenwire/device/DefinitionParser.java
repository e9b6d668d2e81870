package io.github.platenwire.device;

import io.github.platenwire.toml.TomlException;

final class DefinitionParser {
  private DefinitionParser() {}

  static DeviceDefinition parse(String text, String source) throws TomlException {
    throw new TomlException(source, 0, 0, "not there yet: " + text.length());
  }
}
