package io.github.platenwire.method;

import io.github.platenwire.toml.TomlException;
import io.github.platenwire.toml.TomlSection;
import java.util.Arrays;
import java.util.Optional;
import java.util.stream.Stream;

/** Finds out of what kind a method file is, and hands it to whoever reads that kind. Stateless. */
final class MethodParser {
  private static final String FORMAT = "platenwire-method 1";
  private static final String SPLIT_BEAM = "split-beam";
  private static final String FRONT = "front";
  private static final String ABSORPTION = "absorption";
  private static final String NOTCHED_BEAM = "notched-beam";
  private static final String MODULUS = "modulus-cylinder";

  private MethodParser() {}

  static Method parse(String text, String source) throws TomlException {
    TomlSection file = TomlSection.parse(text, source);
    file.choice("format", FORMAT);
    String kind = file.choice("kind", kinds());
    Optional<StrengthParser.Kind> strength = StrengthParser.Kind.ofWord(kind);
    if (strength.isPresent()) {
      return new StrengthMethod(StrengthParser.parse(file, strength.get()), text);
    }
    return switch (kind) {
      case SPLIT_BEAM -> new CrackMethod(SplitBeamParser.parse(file), AfterTest.parse(file), text);
      case NOTCHED_BEAM ->
          new CrackMethod(NotchedBeamParser.parse(file), AfterTest.parse(file), text);
      case FRONT -> new FrontMethod(FrontParser.parse(file, /* absorption= */ false), text);
      case ABSORPTION -> new FrontMethod(FrontParser.parse(file, /* absorption= */ true), text);
      case MODULUS -> new ModulusMethod(ModulusParser.parse(file), text);
      default -> throw file.error("kind", "nobody reads methods of kind '" + kind + "'");
    };
  }

  private static String[] kinds() {
    return Stream.concat(
            Arrays.stream(StrengthParser.Kind.values()).map(StrengthParser.Kind::word),
            Stream.of(ABSORPTION, FRONT, MODULUS, NOTCHED_BEAM, SPLIT_BEAM))
        .toArray(String[]::new);
  }
}
