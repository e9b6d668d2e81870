package io.github.platenwire.commission;

import io.github.platenwire.quantity.Quantity;
import io.github.platenwire.quantity.Unit;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What devices write for the units of a load or a gauge; common practice, no source. What a person
 * says goes first. Immutable.
 */
final class UnitSpellings {
  private static final Map<String, List<String>> COMMON =
      Map.ofEntries(
          Map.entry("N", List.of("N", "NEWTON", "Newton")),
          Map.entry("kN", List.of("kN", "KN", "kn")),
          Map.entry("MN", List.of("MN")),
          Map.entry("lbf", List.of("lbf", "LBF", "Lbf", "lb", "LB", "Lb", "lbs", "LBS")),
          Map.entry("kip", List.of("kip", "KIP", "kips", "KIPS", "klbf", "klb")),
          Map.entry("kgf", List.of("kgf", "KGF", "kg", "KG", "Kg")),
          Map.entry("tf", List.of("tf", "TF")),
          Map.entry("mm", List.of("mm", "MM")),
          Map.entry(
              "µm", List.of("um", "UM", "\u00B5m", "\u00C2\u00B5m", "\u00CE\u00BCm", "\u00E6m")),
          Map.entry("in", List.of("in", "IN", "inch", "INCH")),
          Map.entry("mil", List.of("mil", "MIL", "mils", "MILS", "thou")));

  private static final Map<String, String> MORE = Map.of("cm", "cm", "CM", "cm", "m", "m");

  private final Map<String, String> units = new HashMap<>(MORE);

  UnitSpellings(Map<String, String> told) {
    COMMON.forEach((unit, spellings) -> spellings.forEach(s -> units.put(s, unit)));
    units.putAll(told);
  }

  boolean isUnit(String spelling) {
    return units.containsKey(spelling);
  }

  /** The symbol of our unit. */
  Optional<String> unit(String spelling) {
    return Optional.ofNullable(units.get(spelling));
  }

  /** The longest beginning of a word that is a unit, shorter than the word. */
  Optional<String> beginning(String word) {
    for (int length = word.length() - 1; length > 0; length--) {
      if (isUnit(word.substring(0, length))) {
        return Optional.of(word.substring(0, length));
      }
    }
    return Optional.empty();
  }

  /** What a unit of a load or of a gauge measures; empty if the symbol is neither. */
  static Optional<Quantity> quantity(String symbol) {
    for (Quantity quantity : List.of(Quantity.FORCE, Quantity.LENGTH)) {
      try {
        return Optional.of(Unit.parse(symbol, quantity).quantity());
      } catch (IllegalArgumentException e) {
        // the next quantity may have it
      }
    }
    return Optional.empty();
  }
}
