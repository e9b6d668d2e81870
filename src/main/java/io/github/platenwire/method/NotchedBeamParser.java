package io.github.platenwire.method;

import io.github.platenwire.toml.TomlException;
import io.github.platenwire.toml.TomlSection;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** Reads a method file of the kind {@code notched-beam}. Stateless. */
final class NotchedBeamParser {
  private NotchedBeamParser() {}

  static CrackRules parse(TomlSection file) throws TomlException {
    file.allow(
        Stream.concat(
                Stream.of(CrackParser.KEYS), Stream.of("rates", "rate-tolerance", "deflection"))
            .toArray(String[]::new));
    return new CrackParser(file).parse(Optional.empty(), Optional.of(notch(file)));
  }

  private static CrackRules.Notch notch(TomlSection file) throws TomlException {
    Numbers specimen = new Numbers(file.section("specimen"));
    specimen.allow(
        "shapes",
        "width-mm",
        "depth-mm",
        "notch-depth-mm",
        "span-mm",
        "tolerance-percent",
        "measuring-mm");
    double notch = specimen.positive("notch-depth-mm");
    Numbers tolerance = new Numbers(file.section("rate-tolerance"));
    tolerance.allow("percent");
    return new CrackRules.Notch(
        specimen.positive("width-mm"),
        specimen.above("depth-mm", notch),
        notch,
        specimen.positive("span-mm"),
        specimen.positive("tolerance-percent"),
        specimen.positive("measuring-mm"),
        rates(file),
        tolerance.positive("percent"),
        deflection(file));
  }

  private static Optional<CrackRules.Deflection> deflection(TomlSection file) throws TomlException {
    Optional<TomlSection> table = file.optionalSection("deflection");
    if (table.isEmpty()) {
      return Optional.empty();
    }
    Numbers numbers = new Numbers(table.get());
    numbers.allow("per-opening", "offset-mm");
    return Optional.of(
        new CrackRules.Deflection(
            numbers.positive("per-opening"), numbers.notNegative("offset-mm")));
  }

  private static List<OpeningRates.Band> rates(TomlSection file) throws TomlException {
    List<OpeningRates.Band> bands = new ArrayList<>();
    for (TomlSection table : file.sections("rates")) {
      Numbers numbers = new Numbers(table);
      numbers.allow("from-mm", "to-mm", "mm-per-minute");
      double from = numbers.positive("from-mm");
      bands.add(
          new OpeningRates.Band(
              from, numbers.above("to-mm", from), numbers.positive("mm-per-minute")));
    }
    return List.copyOf(bands);
  }
}
