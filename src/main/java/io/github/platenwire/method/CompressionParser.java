package io.github.platenwire.method;

import io.github.platenwire.toml.TomlException;
import io.github.platenwire.toml.TomlSection;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Reads a method file of the kind {@code compression-cylinder}. Stateless. */
final class CompressionParser {
  private CompressionParser() {}

  static CompressionRules parse(TomlSection file) throws TomlException {
    file.allow(
        "format",
        "kind",
        "name",
        "title",
        "standard",
        "specimen",
        "correction",
        "ages",
        "rate",
        "window",
        "zero",
        "load",
        "break",
        "rounding",
        "machine",
        "companions");
    CompressionRules.SpecimenRules specimen = parseSpecimen(file.section("specimen"));
    TomlSection machine = file.section("machine");
    machine.allow("accuracy-percent");
    return new CompressionRules(
        file.string("name"),
        file.string("title"),
        file.string("standard"),
        specimen,
        parseCorrection(file.section("correction"), specimen.leastRatio()),
        parseAges(file.sections("ages")),
        parseRate(new Numbers(file.section("rate"))),
        LoadRules.parse(file),
        parseRounding(new Numbers(file.section("rounding"))),
        new Numbers(machine).positive("accuracy-percent"),
        parseCompanions(file.section("companions")));
  }

  private static CompressionRules.SpecimenRules parseSpecimen(TomlSection table)
      throws TomlException {
    table.allow(
        "shapes",
        "ends",
        "diameters",
        "diameter-difference-percent",
        "diameter-reading-mm",
        "length-ratio-least",
        "length-ratio-greatest");
    Numbers numbers = new Numbers(table);
    double least = numbers.positive("length-ratio-least");
    return new CompressionRules.SpecimenRules(
        words(table, "shapes"),
        words(table, "ends"),
        numbers.wholeWithin("diameters", 1, 10),
        numbers.positive("diameter-difference-percent"),
        numbers.positive("diameter-reading-mm"),
        least,
        numbers.above("length-ratio-greatest", least));
  }

  private static List<String> words(TomlSection table, String key) throws TomlException {
    List<String> words = table.strings(key);
    if (words.isEmpty()) {
      throw table.error(key, "'" + key + "' must name at least one, such as [\"cylinder\"]");
    }
    return words;
  }

  private static CompressionRules.Correction parseCorrection(TomlSection table, double leastRatio)
      throws TomlException {
    table.allow("at-or-below", "table", "half-width");
    List<List<Double>> points = table.numberRows("table");
    if (points.size() < 2) {
      throw table.error("table", "'table' must have at least two points [ratio, factor]");
    }
    for (int i = 0; i < points.size(); i++) {
      checkPoint(table, points, i);
    }
    if (points.get(0).get(0) > leastRatio) {
      throw table.error(
          "table", "the first point must reach down to length-ratio-least, " + leastRatio);
    }
    Numbers numbers = new Numbers(table);
    double atOrBelow = numbers.positive("at-or-below");
    if (atOrBelow > points.get(points.size() - 1).get(0)) {
      throw table.error("at-or-below", "'at-or-below' must not lie beyond the table's last point");
    }
    return new CompressionRules.Correction(atOrBelow, points, numbers.notNegative("half-width"));
  }

  private static void checkPoint(TomlSection table, List<List<Double>> points, int i)
      throws TomlException {
    List<Double> point = points.get(i);
    if (point.size() != 2 || point.get(1) <= 0) {
      throw table.error("table", "each point must be [ratio, factor], but there is " + point);
    }
    if (i > 0 && point.get(0) <= points.get(i - 1).get(0)) {
      throw table.error("table", "the ratios must rise, but " + point + " does not");
    }
  }

  private static List<CompressionRules.AgeTolerance> parseAges(List<TomlSection> tables)
      throws TomlException {
    List<CompressionRules.AgeTolerance> ages = new ArrayList<>();
    for (TomlSection table : tables) {
      table.allow("days", "tolerance-hours");
      Numbers numbers = new Numbers(table);
      ages.add(
          new CompressionRules.AgeTolerance(
              numbers.positive("days"), numbers.positive("tolerance-hours")));
    }
    return List.copyOf(ages);
  }

  private static CompressionRules.RateRules parseRate(Numbers table) throws TomlException {
    table.allow(
        "low-mpa-per-second",
        "high-mpa-per-second",
        "low-psi-per-second",
        "high-psi-per-second",
        "from-share-of-peak",
        "to-share-of-peak",
        "required-share");
    double lowSi = table.positive("low-mpa-per-second");
    double lowInchPound = table.positive("low-psi-per-second");
    double from = table.within("from-share-of-peak", 0, 1);
    table.above("to-share-of-peak", from);
    return new CompressionRules.RateRules(
        new LiveView.RateBand(lowSi, table.above("high-mpa-per-second", lowSi)),
        new LiveView.RateBand(
            BothUnits.psiToMegapascals(lowInchPound),
            BothUnits.psiToMegapascals(table.above("high-psi-per-second", lowInchPound))),
        from,
        table.within("to-share-of-peak", 0, 1),
        table.within("required-share", 0, 1));
  }

  private static CompressionRules.Rounding parseRounding(Numbers table) throws TomlException {
    table.allow(
        "strength-mpa",
        "strength-psi",
        "density-kg-per-m3",
        "density-lb-per-ft3",
        "diameter-mm",
        "diameter-in",
        "load-kn",
        "load-lbf",
        "area-mm2",
        "area-in2",
        "ratio",
        "factor",
        "age-days",
        "zero-kn",
        "zero-lbf",
        "rate-mpa-per-second",
        "rate-psi-per-second");
    return new CompressionRules.Rounding(
        steps(table, "strength-mpa", "strength-psi"),
        steps(table, "density-kg-per-m3", "density-lb-per-ft3"),
        steps(table, "diameter-mm", "diameter-in"),
        steps(table, "load-kn", "load-lbf"),
        steps(table, "area-mm2", "area-in2"),
        steps(table, "zero-kn", "zero-lbf"),
        steps(table, "rate-mpa-per-second", "rate-psi-per-second"),
        table.step("ratio"),
        table.step("factor"),
        table.step("age-days"));
  }

  private static CompressionRules.Steps steps(Numbers table, String si, String inchPound)
      throws TomlException {
    return new CompressionRules.Steps(table.step(si), table.step(inchPound));
  }

  private static CompressionRules.CompanionRules parseCompanions(TomlSection table)
      throws TomlException {
    table.allow("multipliers", "precision");
    List<Double> multipliers = table.numbers("multipliers");
    if (multipliers.stream().anyMatch(multiplier -> multiplier <= 0)) {
      throw table.error("multipliers", "each of the 'multipliers' must be greater than 0");
    }
    List<CompressionRules.Precision> precisions = new ArrayList<>();
    for (TomlSection row : table.sections("precision")) {
      precisions.add(parsePrecision(row));
    }
    return new CompressionRules.CompanionRules(multipliers, List.copyOf(precisions));
  }

  private static CompressionRules.Precision parsePrecision(TomlSection row) throws TomlException {
    row.allow(
        "diameters-mm",
        "conditions",
        "cv-percent",
        "range-of-two-percent",
        "range-of-three-percent");
    List<Double> diameters = row.numbers("diameters-mm");
    if (diameters.size() != 2 || diameters.get(0) >= diameters.get(1)) {
      throw row.error("diameters-mm", "'diameters-mm' must be [least, greatest]");
    }
    Numbers numbers = new Numbers(row);
    return new CompressionRules.Precision(
        diameters.get(0),
        diameters.get(1),
        Companions.Conditions.valueOf(
            row.choice("conditions", "laboratory", "field").toUpperCase(Locale.ROOT)),
        numbers.positive("cv-percent"),
        numbers.positive("range-of-two-percent"),
        numbers.positive("range-of-three-percent"));
  }
}
