package io.github.platenwire.method;

import io.github.platenwire.quantity.Unit;
import io.github.platenwire.toml.TomlException;
import io.github.platenwire.toml.TomlSection;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/**
 * Reads the table {@code [rate]} of a method file. A standard has its rates by the second or by the
 * minute, and not always in both systems of units; the file has them as the standard does.
 * Stateless.
 */
final class RateParser {
  private static final String MINUTE = "minute";

  private RateParser() {}

  /** {@code second} or {@code minute}. */
  static String per(TomlSection rate) {
    return rate.has("low-mpa-per-minute") ? MINUTE : "second";
  }

  static StrengthRules.RateRules parse(TomlSection section, Numbers rounding) throws TomlException {
    String per = per(section);
    section.allow(
        "low-mpa-per-" + per,
        "high-mpa-per-" + per,
        "low-psi-per-" + per,
        "high-psi-per-" + per,
        "from-share-of-peak",
        "to-share-of-peak",
        "required-share",
        "constant-within-percent");
    Numbers table = new Numbers(section);
    List<StrengthRules.Band> bands = bands(section, rounding);
    double from = table.within("from-share-of-peak", 0, 1);
    table.above("to-share-of-peak", from);
    return new StrengthRules.RateRules(
        bands,
        from,
        table.within("to-share-of-peak", 0, 1),
        table.within("required-share", 0, 1),
        section.has("constant-within-percent")
            ? OptionalDouble.of(table.positive("constant-within-percent"))
            : OptionalDouble.empty(),
        unit(per),
        inchPoundUnit(per));
  }

  private static Unit unit(String per) {
    return per.equals(MINUTE) ? Unit.MEGAPASCAL_PER_MINUTE : Unit.MEGAPASCAL_PER_SECOND;
  }

  private static Unit inchPoundUnit(String per) {
    return per.equals(MINUTE) ? Unit.PSI_PER_MINUTE : Unit.PSI_PER_SECOND;
  }

  /** One band for each system of units in which the table has one, SI first. */
  static List<StrengthRules.Band> bands(TomlSection section, Numbers rounding)
      throws TomlException {
    String per = per(section);
    Numbers table = new Numbers(section);
    List<StrengthRules.Band> bands = new ArrayList<>();
    bands.add(band(table, "mpa-per-" + per, unit(per), rounding));
    if (section.has("low-psi-per-" + per)) {
      bands.add(band(table, "psi-per-" + per, inchPoundUnit(per), rounding));
    }
    return List.copyOf(bands);
  }

  private static StrengthRules.Band band(Numbers table, String name, Unit unit, Numbers rounding)
      throws TomlException {
    double low = table.positive("low-" + name);
    double high = table.above("high-" + name, low);
    return new StrengthRules.Band(
        new LiveView.RateBand(unit.toBase(low), unit.toBase(high)),
        unit,
        rounding.step("rate-" + name));
  }
}
