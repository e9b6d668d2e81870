package io.github.platenwire.method;

import io.github.platenwire.toml.TomlException;
import io.github.platenwire.toml.TomlSection;
import java.util.Optional;
import java.util.stream.Stream;

/** Reads a method file of the kind {@code split-beam}. Stateless. */
final class SplitBeamParser {
  private SplitBeamParser() {}

  static CrackRules parse(TomlSection file) throws TomlException {
    file.allow(
        Stream.concat(Stream.of(CrackParser.KEYS), Stream.of("wedge")).toArray(String[]::new));
    file.section("specimen").allow("shapes");
    return new CrackParser(file).parse(wedge(file), Optional.empty());
  }

  private static Optional<CrackRules.Wedge> wedge(TomlSection file) throws TomlException {
    Optional<TomlSection> table = file.optionalSection("wedge");
    if (table.isEmpty()) {
      return Optional.empty();
    }
    Numbers numbers = new Numbers(table.get());
    numbers.allow("friction-angle-degrees", "friction-angle-uncertainty-degrees");
    double friction = numbers.notNegative("friction-angle-degrees");
    if (friction >= 45) {
      throw table.get().error("friction-angle-degrees", "the angle of friction must be below 45");
    }
    return Optional.of(
        new CrackRules.Wedge(
            Math.toRadians(friction),
            Math.toRadians(numbers.notNegative("friction-angle-uncertainty-degrees"))));
  }
}
