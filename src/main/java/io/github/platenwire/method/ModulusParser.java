package io.github.platenwire.method;

import io.github.platenwire.toml.TomlException;
import io.github.platenwire.toml.TomlSection;
import java.util.Arrays;
import java.util.stream.Stream;

/** Reads a method file of the kind {@code modulus-cylinder}. Stateless. */
final class ModulusParser {
  private static final double MICRO = 1e-6;
  private static final double MICROS_PER_SECOND = 1e6;
  private static final double SHARE_PER_PERCENT = 0.01;

  private final TomlSection file;

  private ModulusParser(TomlSection file) {
    this.file = file;
  }

  static ModulusRules parse(TomlSection file) throws TomlException {
    file.allow(
        "format",
        "kind",
        "name",
        "title",
        "standard",
        "specimen",
        "ages",
        "chord",
        "cycles",
        "rate",
        "window",
        "alignment",
        "zero",
        "load",
        "gauge",
        "machine",
        "rounding");
    return new ModulusParser(file).rules();
  }

  private ModulusRules rules() throws TomlException {
    file.section("specimen").allow(with(CylinderShape.specimenKeys(), "shapes", "ends"));
    Numbers rounding = new Numbers(file.section("rounding"));
    Numbers machine = table("machine", "accuracy-percent");
    ModulusRules.Chord chord = chord();
    return new ModulusRules(
        file.string("name"),
        file.string("title"),
        file.string("standard"),
        StrengthParser.parseSpecimen(file.section("specimen")),
        CylinderShape.parse(file, CylinderShape.Load.ALONG_AXIS),
        StrengthParser.parseAges(file.sections("ages")),
        chord,
        cycles(chord),
        rate(rounding),
        LoadRules.parseWithoutBreak(file),
        new CrackParser(file).timing(),
        gauge(),
        machine.positive("accuracy-percent"),
        rounding(rounding));
  }

  private static String[] with(String[] some, String... others) {
    return Stream.concat(Arrays.stream(others), Arrays.stream(some)).toArray(String[]::new);
  }

  private Numbers table(String name, String... keys) throws TomlException {
    Numbers table = new Numbers(file.section(name));
    table.allow(keys);
    return table;
  }

  private ModulusRules.Chord chord() throws TomlException {
    Numbers table = table("chord", "first-microstrain", "second-percent-of-strength");
    return new ModulusRules.Chord(
        table.positive("first-microstrain") * MICRO,
        table.within("second-percent-of-strength", 0, 100) * SHARE_PER_PERCENT);
  }

  private ModulusRules.Cycles cycles(ModulusRules.Chord chord) throws TomlException {
    Numbers table =
        table(
            "cycles",
            "planned",
            "unload-percent",
            "lowest-band-mpa",
            "hysteresis-microstrain",
            "short-percent",
            "beyond-percent-of-strength",
            "agree-percent",
            "tail-seconds");
    return new ModulusRules.Cycles(
        table.wholeWithin("planned", 2, 100),
        table.within("unload-percent", 0, 90) * SHARE_PER_PERCENT,
        table.positive("lowest-band-mpa"),
        table.positive("hysteresis-microstrain") * MICRO,
        table.within("short-percent", 0, 50),
        table.above("beyond-percent-of-strength", chord.secondShare() / SHARE_PER_PERCENT)
            * SHARE_PER_PERCENT,
        table.positive("agree-percent"),
        Math.round(table.notNegative("tail-seconds") * MICROS_PER_SECOND));
  }

  private ModulusRules.Rate rate(Numbers rounding) throws TomlException {
    Numbers table =
        table(
            "rate",
            "low-mpa-per-second",
            "high-mpa-per-second",
            "low-psi-per-second",
            "high-psi-per-second",
            "required-share");
    return new ModulusRules.Rate(
        RateParser.bands(file.section("rate"), rounding), table.within("required-share", 0, 1));
  }

  private ModulusRules.Gauge gauge() throws TomlException {
    Numbers table =
        table(
            "gauge",
            "greatest-slope-microstrain-per-second",
            "jump-microstrain",
            "accuracy-percent",
            "gauge-length-percent",
            "lever-percent");
    return new ModulusRules.Gauge(
        table.positive("greatest-slope-microstrain-per-second") * MICRO,
        table.positive("jump-microstrain") * MICRO,
        table.positive("accuracy-percent"),
        table.notNegative("gauge-length-percent"),
        table.notNegative("lever-percent"));
  }

  private static ModulusRules.Rounding rounding(Numbers table) throws TomlException {
    table.allow(
        with(
            CylinderShape.roundingKeys(false),
            "modulus-mpa",
            "modulus-psi",
            "poisson",
            "size-mm",
            "size-in",
            "stress-mpa",
            "stress-psi",
            "strain-microstrain",
            "load-kn",
            "load-lbf",
            "age-days",
            "zero-kn",
            "zero-lbf",
            "rate-mpa-per-second",
            "rate-psi-per-second"));
    return new ModulusRules.Rounding(
        Steps.parse(table, "modulus-mpa", "modulus-psi"),
        table.step("poisson"),
        Steps.parse(table, "stress-mpa", "stress-psi"),
        table.step("strain-microstrain"),
        Steps.parse(table, "load-kn", "load-lbf"),
        Steps.parse(table, "zero-kn", "zero-lbf"),
        Steps.parse(table, "rate-mpa-per-second", "rate-psi-per-second"),
        table.step("age-days"));
  }
}
