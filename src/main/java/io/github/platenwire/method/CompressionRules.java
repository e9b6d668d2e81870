package io.github.platenwire.method;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;

/** The numbers by which cylinders are tested in compression, as their method file has them. */
record CompressionRules(
    String name,
    String title,
    String standard,
    SpecimenRules specimen,
    Correction correction,
    List<AgeTolerance> ages,
    RateRules rate,
    LoadRules load,
    Rounding rounding,
    double machineAccuracyPercent,
    CompanionRules companions) {

  record SpecimenRules(
      List<String> shapes,
      List<String> ends,
      int diameters,
      double differencePercent,
      double readingMillimetres,
      double leastRatio,
      double greatestRatio) {}

  record AgeTolerance(double days, double hours) {}

  record RateRules(
      LiveView.RateBand si,
      LiveView.RateBand inchPound,
      double fromShare,
      double toShare,
      double requiredShare) {}

  /** Steps in each unit in which a figure is printed. */
  record Rounding(
      Steps stress,
      Steps density,
      Steps diameter,
      Steps load,
      Steps area,
      Steps zero,
      Steps rate,
      BigDecimal ratio,
      BigDecimal factor,
      BigDecimal ageDays) {}

  /** A step in the SI unit and one in the inch-pound unit. */
  record Steps(BigDecimal si, BigDecimal inchPound) {}

  /** Correction of the strength of short specimens: points in rising order, linear in between. */
  record Correction(double atOrBelow, List<List<Double>> table, double halfWidth) {

    /** The factor, or empty where no correction is called for. */
    Optional<Double> factor(double lengthRatio) {
      if (lengthRatio > atOrBelow) {
        return Optional.empty();
      }
      for (int i = 1; i < table.size(); i++) {
        if (lengthRatio <= table.get(i).get(0)) {
          return Optional.of(between(table.get(i - 1), table.get(i), lengthRatio));
        }
      }
      return Optional.of(table.get(table.size() - 1).get(1));
    }

    private static double between(List<Double> left, List<Double> right, double at) {
      double part = (at - left.get(0)) / (right.get(0) - left.get(0));
      return part == 1 ? right.get(1) : left.get(1) + part * (right.get(1) - left.get(1));
    }
  }

  record CompanionRules(List<Double> multipliers, List<Precision> precisions) {}

  record Precision(
      double leastDiameterMillimetres,
      double greatestDiameterMillimetres,
      Companions.Conditions conditions,
      double cvPercent,
      double rangeOfTwoPercent,
      double rangeOfThreePercent) {

    boolean fits(double diameterMillimetres) {
      return diameterMillimetres >= leastDiameterMillimetres
          && diameterMillimetres <= greatestDiameterMillimetres;
    }
  }
}
