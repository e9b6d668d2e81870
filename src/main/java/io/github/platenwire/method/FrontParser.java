package io.github.platenwire.method;

import io.github.platenwire.method.Absorption.Stretch;
import io.github.platenwire.quantity.Quantity;
import io.github.platenwire.quantity.Unit;
import io.github.platenwire.toml.TomlException;
import io.github.platenwire.toml.TomlSection;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Reads a method file of the kinds {@code front} and {@code absorption}. Stateless. */
final class FrontParser {
  /** More significant digits than any reading here has. */
  private static final int MOST_DIGITS = 9;

  private FrontParser() {}

  static FrontRules parse(TomlSection file, boolean absorption) throws TomlException {
    file.allow(
        "format",
        "kind",
        "name",
        "title",
        "standard",
        "ask",
        "readings",
        absorption ? "absorption" : "asked",
        "rounding");
    Numbers readings = new Numbers(file.section("readings"));
    readings.allow("every-seconds");
    return new FrontRules(
        file.string("name"),
        file.string("title"),
        file.string("standard"),
        absorption ? Quantity.MASS : Quantity.LENGTH,
        readings.positive("every-seconds"),
        absorption ? List.of() : depths(file.section("asked")),
        absorption ? Optional.of(absorption(file.section("absorption"))) : Optional.empty(),
        rounding(file.section("rounding")),
        AfterTest.parse(file));
  }

  private static List<Double> depths(TomlSection table) throws TomlException {
    table.allow("depths-mm", "depths-in");
    List<Double> depths = new ArrayList<>();
    for (Unit unit : List.of(Unit.MILLIMETRE, Unit.INCH)) {
      String key = "depths-" + unit.symbol();
      for (double depth : table.numbers(key)) {
        if (depth <= 0) {
          throw table.error(key, "each of '" + key + "' must be greater than 0");
        }
        depths.add(unit.toBase(depth));
      }
    }
    return depths;
  }

  private static FrontRules.AbsorptionRules absorption(TomlSection table) throws TomlException {
    Numbers numbers = new Numbers(table);
    numbers.allow("least-correlation", "water-g-per-mm3", "stretch");
    List<Stretch> stretches = new ArrayList<>();
    for (TomlSection row : table.sections("stretch")) {
      Numbers one = new Numbers(row);
      one.allow("name", "from-seconds", "to-seconds");
      double from = one.notNegative("from-seconds");
      stretches.add(new Stretch(row.string("name"), from, one.above("to-seconds", from)));
    }
    return new FrontRules.AbsorptionRules(
        new Absorption(
            numbers.within("least-correlation", 0, 1), numbers.positive("water-g-per-mm3")),
        stretches);
  }

  private static FrontRules.Rounding rounding(TomlSection table) throws TomlException {
    Numbers numbers = new Numbers(table);
    numbers.allow("length-mm", "length-in", "mass-g", "time-min", "rate-digits");
    return new FrontRules.Rounding(
        Steps.parse(numbers, "length-mm", "length-in"),
        numbers.step("mass-g"),
        numbers.step("time-min"),
        numbers.wholeWithin("rate-digits", 1, MOST_DIGITS));
  }
}
