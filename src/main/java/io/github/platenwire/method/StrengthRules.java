package io.github.platenwire.method;

import io.github.platenwire.quantity.Unit;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/** The numbers by which specimens of one shape are broken, as their method file has them. */
record StrengthRules(
    String name,
    String title,
    String standard,
    String resultTitle,
    SpecimenRules specimen,
    Shape shape,
    List<AgeTolerance> ages,
    RateRules rate,
    LoadRules load,
    Rounding rounding,
    double machineAccuracyPercent,
    Optional<CompanionRules> companions,
    Set<AfterTest> ask) {

  /** Which specimens a method is for; without ends it does not ask how they were prepared. */
  record SpecimenRules(List<String> shapes, List<String> ends) {}

  record AgeTolerance(double days, double hours) {}

  /**
   * The rate asked for.
   *
   * @param bands one for each system of units in which the standard has one
   * @param constantWithinPercent by how much the rate may leave its own mean, if that is limited
   */
  record RateRules(
      List<Band> bands,
      double fromShare,
      double toShare,
      double requiredShare,
      OptionalDouble constantWithinPercent,
      Unit unit,
      Unit inchPoundUnit) {

    /** The band in SI units, which is shown. */
    LiveView.RateBand shown() {
      return bands.get(0).limits();
    }
  }

  /**
   * Limits of the rate.
   *
   * @param unit the unit in which the standard has them
   * @param step to what they are printed in that unit
   */
  record Band(LiveView.RateBand limits, Unit unit, BigDecimal step) {}

  /** Steps in each unit in which a figure is printed. */
  record Rounding(Steps stress, Steps load, Steps zero, Steps rate, BigDecimal ageDays) {}

  record CompanionRules(List<Double> multipliers, List<Precision> precisions) {}

  record Precision(
      double leastMillimetres,
      double greatestMillimetres,
      Companions.Conditions conditions,
      double cvPercent,
      double rangeOfTwoPercent,
      OptionalDouble rangeOfThreePercent) {

    boolean fits(double millimetres) {
      return millimetres >= leastMillimetres && millimetres <= greatestMillimetres;
    }
  }
}
