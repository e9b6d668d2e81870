package io.github.platenwire.method;

import io.github.platenwire.toml.TomlException;
import io.github.platenwire.toml.TomlSection;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;

/** Reads a method file of a kind in which a specimen is broken by one load. Stateless. */
final class StrengthParser {
  private StrengthParser() {}

  /** The kinds, each with its shape and the name of its strength. */
  enum Kind {
    COMPRESSION_CYLINDER("Compressive strength"),
    COMPRESSION_CUBE("Compressive strength"),
    SPLITTING_CYLINDER("Splitting tensile strength"),
    FLEXURE_THIRD_POINT("Modulus of rupture");

    private final String resultTitle;

    Kind(String resultTitle) {
      this.resultTitle = resultTitle;
    }

    /** The word in a method file, such as {@code compression-cube}. */
    String word() {
      return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    static Optional<Kind> ofWord(String word) {
      return Arrays.stream(values()).filter(kind -> kind.word().equals(word)).findFirst();
    }

    private String[] specimenKeys() {
      return switch (this) {
        case COMPRESSION_CYLINDER, SPLITTING_CYLINDER -> CylinderShape.specimenKeys();
        case COMPRESSION_CUBE -> CubeShape.specimenKeys();
        case FLEXURE_THIRD_POINT -> BeamShape.specimenKeys();
      };
    }

    private String[] roundingKeys(boolean corrected) {
      return switch (this) {
        case COMPRESSION_CYLINDER, SPLITTING_CYLINDER -> CylinderShape.roundingKeys(corrected);
        case COMPRESSION_CUBE -> CubeShape.roundingKeys();
        case FLEXURE_THIRD_POINT -> BeamShape.roundingKeys();
      };
    }

    private Shape shape(TomlSection file) throws TomlException {
      return switch (this) {
        case COMPRESSION_CYLINDER -> CylinderShape.parse(file, CylinderShape.Load.ALONG_AXIS);
        case SPLITTING_CYLINDER -> CylinderShape.parse(file, CylinderShape.Load.ACROSS_AXIS);
        case COMPRESSION_CUBE -> CubeShape.parse(file);
        case FLEXURE_THIRD_POINT -> BeamShape.parse(file);
      };
    }
  }

  static StrengthRules parse(TomlSection file, Kind kind) throws TomlException {
    allow(file, kind);
    TomlSection machine = file.section("machine");
    machine.allow("accuracy-percent");
    Optional<TomlSection> companions = file.optionalSection("companions");
    Numbers rounding = new Numbers(file.section("rounding"));
    return new StrengthRules(
        file.string("name"),
        file.string("title"),
        file.string("standard"),
        kind.resultTitle,
        parseSpecimen(file.section("specimen")),
        kind.shape(file),
        parseAges(file.sections("ages")),
        RateParser.parse(file.section("rate"), rounding),
        LoadRules.parse(file),
        parseRounding(rounding, RateParser.per(file.section("rate"))),
        new Numbers(machine).positive("accuracy-percent"),
        companions.isPresent() ? Optional.of(parseCompanions(companions.get())) : Optional.empty(),
        AfterTest.parse(file));
  }

  private static void allow(TomlSection file, Kind kind) throws TomlException {
    List<String> keys =
        new ArrayList<>(
            List.of(
                "format",
                "kind",
                "name",
                "title",
                "standard",
                "ask",
                "specimen",
                "ages",
                "rate",
                "window",
                "zero",
                "load",
                "break",
                "rounding",
                "machine",
                "companions"));
    if (kind == Kind.COMPRESSION_CYLINDER) {
      keys.add("correction");
    }
    file.allow(keys.toArray(String[]::new));
    file.section("specimen").allow(joined(kind.specimenKeys(), "shapes", "ends"));
    file.section("rounding")
        .allow(
            joined(
                kind.roundingKeys(file.has("correction")),
                roundingKeys(RateParser.per(file.section("rate")))));
  }

  private static String[] joined(String[] some, String... others) {
    return Stream.concat(Arrays.stream(others), Arrays.stream(some)).toArray(String[]::new);
  }

  static StrengthRules.SpecimenRules parseSpecimen(TomlSection table) throws TomlException {
    return new StrengthRules.SpecimenRules(
        words(table, "shapes"), table.has("ends") ? words(table, "ends") : List.of());
  }

  private static List<String> words(TomlSection table, String key) throws TomlException {
    List<String> words = table.strings(key);
    if (words.isEmpty()) {
      throw table.error(key, "'" + key + "' must name at least one, such as [\"cylinder\"]");
    }
    return words;
  }

  static List<StrengthRules.AgeTolerance> parseAges(List<TomlSection> tables) throws TomlException {
    List<StrengthRules.AgeTolerance> ages = new ArrayList<>();
    for (TomlSection table : tables) {
      table.allow("days", "tolerance-hours");
      Numbers numbers = new Numbers(table);
      ages.add(
          new StrengthRules.AgeTolerance(
              numbers.positive("days"), numbers.positive("tolerance-hours")));
    }
    return List.copyOf(ages);
  }

  private static String[] roundingKeys(String per) {
    return new String[] {
      "strength-mpa",
      "strength-psi",
      "size-mm",
      "size-in",
      "load-kn",
      "load-lbf",
      "age-days",
      "zero-kn",
      "zero-lbf",
      "rate-mpa-per-" + per,
      "rate-psi-per-" + per
    };
  }

  private static StrengthRules.Rounding parseRounding(Numbers table, String per)
      throws TomlException {
    return new StrengthRules.Rounding(
        Steps.parse(table, "strength-mpa", "strength-psi"),
        Steps.parse(table, "load-kn", "load-lbf"),
        Steps.parse(table, "zero-kn", "zero-lbf"),
        Steps.parse(table, "rate-mpa-per-" + per, "rate-psi-per-" + per),
        table.step("age-days"));
  }

  private static StrengthRules.CompanionRules parseCompanions(TomlSection table)
      throws TomlException {
    table.allow("multipliers", "precision");
    List<Double> multipliers = table.numbers("multipliers");
    if (multipliers.stream().anyMatch(multiplier -> multiplier <= 0)) {
      throw table.error("multipliers", "each of the 'multipliers' must be greater than 0");
    }
    List<StrengthRules.Precision> precisions = new ArrayList<>();
    for (TomlSection row : table.sections("precision")) {
      precisions.add(parsePrecision(row));
    }
    return new StrengthRules.CompanionRules(multipliers, List.copyOf(precisions));
  }

  private static StrengthRules.Precision parsePrecision(TomlSection row) throws TomlException {
    row.allow(
        "sizes-mm", "conditions", "cv-percent", "range-of-two-percent", "range-of-three-percent");
    List<Double> sizes = row.numbers("sizes-mm");
    if (sizes.size() != 2 || sizes.get(0) >= sizes.get(1)) {
      throw row.error("sizes-mm", "'sizes-mm' must be [least, greatest]");
    }
    Numbers numbers = new Numbers(row);
    return new StrengthRules.Precision(
        sizes.get(0),
        sizes.get(1),
        Companions.Conditions.valueOf(
            row.choice("conditions", "laboratory", "field").toUpperCase(Locale.ROOT)),
        numbers.positive("cv-percent"),
        numbers.positive("range-of-two-percent"),
        row.has("range-of-three-percent")
            ? OptionalDouble.of(numbers.positive("range-of-three-percent"))
            : OptionalDouble.empty());
  }
}
