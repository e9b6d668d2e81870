package io.github.platenwire.method;

import io.github.platenwire.quantity.UnitSystem;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Holds companion specimens, which are of one series and one age, against each other: the range of
 * their strengths, in percent of their mean, against the limit. For two and three the limit is the
 * one that the standard prints for their size and conditions; for more it is the multiplier of ASTM
 * C670 for their number times the printed coefficient of variation. The range is rounded to 0.1 %
 * before it is held against the limit, so that the verdict agrees with the figures shown.
 * Immutable.
 */
public final class Companions {
  private static final int FIRST_MULTIPLIER = 2;

  /**
   * The column of the specimen table that tells under what conditions a specimen was made: {@code
   * laboratory} or {@code field}.
   */
  private static final String CONDITIONS_COLUMN = "conditions";

  private final StrengthRules.CompanionRules rules;
  private final Steps stress;

  Companions(StrengthRules.CompanionRules rules, Steps stress) {
    this.rules = rules;
    this.stress = stress;
  }

  /** Under what conditions specimens were made and cured. */
  public enum Conditions {
    /** Made and cured in the laboratory. */
    LABORATORY,
    /** Made or cured on site. */
    FIELD;

    /**
     * The conditions that a row of the specimen table tells; the laboratory's where it tells none.
     *
     * @param asWritten the row, by column
     */
    public static Conditions ofRow(Map<String, String> asWritten) {
      return FIELD.word().equals(asWritten.get(CONDITIONS_COLUMN)) ? FIELD : LABORATORY;
    }

    /** The word in a method file: {@code laboratory} or {@code field}. */
    public String word() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  /**
   * How companions stand. Immutable.
   *
   * @param count how many there are
   * @param meanMegapascals mean strength, not rounded
   * @param meanRounded mean strength rounded by the method's rule, in megapascals
   * @param meanRoundedPsi the same in psi, rounded from the exact mean
   * @param rangePercent greatest less least strength in percent of the mean; 0 for a single one
   * @param limitPercent the limit, where there is one
   * @param within whether the range is within the limit, where there is one
   * @param limitSource where the limit comes from, in words; empty where there is none
   * @param words range and limit for a person
   */
  public record Verdict(
      int count,
      double meanMegapascals,
      String meanRounded,
      String meanRoundedPsi,
      double rangePercent,
      OptionalDouble limitPercent,
      Optional<Boolean> within,
      String limitSource,
      String words) {}

  /** Judges companions, SI first in words; otherwise as below. */
  public Verdict judge(
      Conditions conditions, double sizeMillimetres, List<Double> strengthsMegapascals) {
    return judge(conditions, sizeMillimetres, strengthsMegapascals, UnitSystem.SI);
  }

  /**
   * Judges companions.
   *
   * @param conditions under what conditions they were made and cured
   * @param sizeMillimetres their mean diameter, or the width of their section, which tells their
   *     nominal size
   * @param strengthsMegapascals strength of each, not rounded
   * @param first which system of units stands first in words
   * @throws IllegalArgumentException if there is none, or one is not above 0
   */
  public Verdict judge(
      Conditions conditions,
      double sizeMillimetres,
      List<Double> strengthsMegapascals,
      UnitSystem first) {
    if (strengthsMegapascals.isEmpty()
        || strengthsMegapascals.stream().anyMatch(strength -> !(strength > 0))) {
      throw new IllegalArgumentException("strengths must be above 0: " + strengthsMegapascals);
    }
    int count = strengthsMegapascals.size();
    double mean = strengthsMegapascals.stream().mapToDouble(Double::doubleValue).sum() / count;
    double range =
        (Collections.max(strengthsMegapascals) - Collections.min(strengthsMegapascals))
            / mean
            * 100;
    Limit limit = limit(conditions, sizeMillimetres, count);
    Optional<Boolean> within =
        limit.percent().isPresent()
            ? Optional.of(
                Double.parseDouble(BothUnits.rounded(range, "0.1"))
                    <= limit.percent().getAsDouble())
            : Optional.empty();
    return new Verdict(
        count,
        mean,
        BothUnits.rounded(mean, stress.si()),
        BothUnits.rounded(BothUnits.megapascalsToPsi(mean), stress.inchPound()),
        range,
        limit.percent(),
        within,
        limit.source(),
        words(
            count,
            BothUnits.stress(mean, stress, first),
            range,
            limit.percent(),
            within,
            conditions));
  }

  private record Limit(OptionalDouble percent, String source) {
    private static final Limit NONE = new Limit(OptionalDouble.empty(), "");
  }

  private Limit limit(Conditions conditions, double sizeMillimetres, int count) {
    for (StrengthRules.Precision printed : rules.precisions()) {
      if (printed.conditions() == conditions && printed.fits(sizeMillimetres)) {
        return switch (count) {
          case 1 -> Limit.NONE;
          case 2 -> printed(printed.rangeOfTwoPercent(), "two", printed);
          case 3 ->
              printed.rangeOfThreePercent().isPresent()
                  ? printed(printed.rangeOfThreePercent().getAsDouble(), "three", printed)
                  : byMultiplier(count, printed);
          default -> byMultiplier(count, printed);
        };
      }
    }
    return Limit.NONE;
  }

  private static Limit printed(double percent, String count, StrengthRules.Precision printed) {
    return new Limit(
        OptionalDouble.of(percent),
        "as printed for the range of "
            + count
            + " results of this size under "
            + printed.conditions().word()
            + " conditions");
  }

  private Limit byMultiplier(int count, StrengthRules.Precision printed) {
    int index = count - FIRST_MULTIPLIER;
    List<Double> multipliers = rules.multipliers();
    if (index >= multipliers.size()) {
      return Limit.NONE;
    }
    double multiplier = multipliers.get(index);
    return new Limit(
        OptionalDouble.of(
            Double.parseDouble(BothUnits.rounded(multiplier * printed.cvPercent(), "0.1"))),
        "the multiplier "
            + BothUnits.plain(multiplier)
            + " of ASTM C670 for "
            + count
            + " results times the coefficient of variation of "
            + BothUnits.plain(printed.cvPercent())
            + " % as printed for this size under "
            + printed.conditions().word()
            + " conditions");
  }

  private static String words(
      int count,
      String meanWords,
      double range,
      OptionalDouble limit,
      Optional<Boolean> within,
      Conditions conditions) {
    if (count == 1) {
      return "1 companion so far, " + meanWords + ": no range yet";
    }
    String seen =
        count + " companions, range " + BothUnits.tenthPercent(range) + " of the mean " + meanWords;
    if (limit.isEmpty()) {
      return seen
          + "; no limit is printed for "
          + count
          + " of this size under "
          + conditions.word()
          + " conditions";
    }
    return seen
        + ", limit "
        + BothUnits.tenthPercent(limit.getAsDouble())
        + ": "
        + (within.orElse(false) ? "within" : "beyond");
  }
}
