package io.github.platenwire.method;

import io.github.platenwire.toml.TomlException;
import io.github.platenwire.toml.TomlSection;

/** Finds out of what kind a method file is, and hands it to whoever reads that kind. Stateless. */
final class MethodParser {
  private static final String FORMAT = "platenwire-method 1";
  private static final String COMPRESSION_CYLINDER = "compression-cylinder";

  private static final String SPLIT_BEAM = "split-beam";
  private static final String NOTCHED_BEAM = "notched-beam";

  private MethodParser() {}

  static Method parse(String text, String source) throws TomlException {
    TomlSection file = TomlSection.parse(text, source);
    file.choice("format", FORMAT);
    String kind = file.choice("kind", COMPRESSION_CYLINDER, SPLIT_BEAM, NOTCHED_BEAM);
    return switch (kind) {
      case COMPRESSION_CYLINDER -> new CompressionMethod(CompressionParser.parse(file), text);
      case SPLIT_BEAM -> new CrackMethod(SplitBeamParser.parse(file), text);
      case NOTCHED_BEAM -> new CrackMethod(NotchedBeamParser.parse(file), text);
      default -> throw file.error("kind", "nobody reads methods of kind '" + kind + "'");
    };
  }
}
