package io.github.platenwire.method;

import io.github.platenwire.toml.TomlException;
import io.github.platenwire.toml.TomlSection;
import java.util.Arrays;
import java.util.Optional;

/** Finds out of what kind a method file is, and hands it to whoever reads that kind. Stateless. */
final class MethodParser {
  private static final String FORMAT = "platenwire-method 1";

  private MethodParser() {}

  static Method parse(String text, String source) throws TomlException {
    TomlSection file = TomlSection.parse(text, source);
    file.choice("format", FORMAT);
    String kind = file.choice("kind", kinds());
    Optional<StrengthParser.Kind> strength = StrengthParser.Kind.ofWord(kind);
    if (strength.isPresent()) {
      return new StrengthMethod(StrengthParser.parse(file, strength.get()), text);
    }
    throw file.error("kind", "nobody reads methods of kind '" + kind + "'");
  }

  private static String[] kinds() {
    return Arrays.stream(StrengthParser.Kind.values())
        .map(StrengthParser.Kind::word)
        .toArray(String[]::new);
  }
}
