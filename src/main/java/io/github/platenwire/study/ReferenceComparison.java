package io.github.platenwire.study;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Several series against one reference, with intervals that hold all at once. Immutable.
 *
 * @param procedure which intervals these are
 * @param reason why these and no others, in one line for a person
 * @param differences each series less the reference, in the order given
 */
public record ReferenceComparison(
    Procedure procedure, String reason, List<Difference> differences) {
  /** Below this probability of one common spread, each series keeps its own (our choice). */
  private static final double SPREADS_DIFFER = 0.05;

  /** Makes the list immutable. */
  public ReferenceComparison {
    differences = List.copyOf(differences);
  }

  /** Kinds of simultaneous intervals. */
  public enum Procedure {
    /**
     * Dunnett 1955: one pooled spread, each series against the reference only. The ratios have
     * Fieller's sets with the quantile that holds for all of them (Dilba and others 2004).
     */
    DUNNETT,
    /**
     * Games and Howell 1976: each series keeps its spread; covers all pairs. The ratios have
     * Fieller's sets, each at the level that adds up to the one for all (Bonferroni).
     */
    GAMES_HOWELL,
    /** Too few specimens: figures without intervals. */
    NONE
  }

  /**
   * One series less the reference.
   *
   * @param series name of the series
   * @param difference of the means, in the unit of the values
   * @param interval simultaneous with the others; empty when there are too few specimens
   * @param ratio the series' mean over the reference's, its set simultaneous with the others
   */
  public record Difference(
      String series, double difference, Optional<Interval> interval, FiellerRatio ratio) {}

  /** All series against the reference at 95 % for all of them together. */
  public static ReferenceComparison against(
      SeriesStatistics reference, Map<String, SeriesStatistics> others) {
    return against(reference, others, Values.LEVEL);
  }

  /**
   * All series against the reference. Dunnett's intervals where Bartlett's test does not speak
   * against one spread for all (p at least 0.05), else those of Games and Howell. Bartlett's test
   * finds only gross differences among three or four specimens; so does any other.
   *
   * @param others by name, in the order to report them; at least one
   * @param level confidence level for all intervals together, between 0 and 1
   */
  public static ReferenceComparison against(
      SeriesStatistics reference, Map<String, SeriesStatistics> others, double level) {
    Values.requireLevel(level);
    if (others.isEmpty()) {
      throw new IllegalArgumentException("nothing to compare with the reference");
    }
    Map<String, SeriesStatistics> ordered = new LinkedHashMap<>(others);
    List<SeriesStatistics> all = new ArrayList<>(ordered.values());
    all.add(reference);
    if (!all.stream().allMatch(SeriesStatistics::allowsVerdict)) {
      return figuresOnly(reference, ordered);
    }
    OneWayAnalysis analysis = OneWayAnalysis.of(all);
    return analysis.equalSpreadProbability() >= SPREADS_DIFFER
        ? dunnett(reference, ordered, analysis, level)
        : gamesHowell(reference, ordered, analysis, level);
  }

  private static ReferenceComparison figuresOnly(
      SeriesStatistics reference, Map<String, SeriesStatistics> others) {
    List<Difference> differences = new ArrayList<>();
    others.forEach(
        (name, series) ->
            differences.add(
                new Difference(
                    name,
                    series.mean() - reference.mean(),
                    Optional.empty(),
                    FiellerRatio.unequalVariances(series, reference))));
    return new ReferenceComparison(
        Procedure.NONE,
        "No simultaneous intervals: a series has fewer than three specimens.",
        differences);
  }

  private static ReferenceComparison dunnett(
      SeriesStatistics reference,
      Map<String, SeriesStatistics> others,
      OneWayAnalysis analysis,
      double level) {
    int[] counts = others.values().stream().mapToInt(SeriesStatistics::n).toArray();
    double[] ratios =
        others.values().stream().mapToDouble(one -> one.mean() / reference.mean()).toArray();
    int degrees = analysis.withinDegrees();
    double d = new DunnettDistribution(reference.n(), counts, degrees).quantile(level);
    double ofRatios =
        new DunnettDistribution(reference.n(), counts, ratios, degrees).quantile(level);
    List<Difference> differences = new ArrayList<>();
    others.forEach(
        (name, series) -> {
          double error =
              Math.sqrt(analysis.withinVariance() * (1.0 / series.n() + 1.0 / reference.n()));
          FiellerRatio ratio =
              FiellerRatio.withSpread(
                  series, reference, analysis.withinVariance(), degrees, ofRatios);
          differences.add(difference(name, series, reference, d * error, ratio));
        });
    String reason =
        "Dunnett's simultaneous intervals with one pooled spread: the spreads of the series do not"
            + " differ beyond chance (Bartlett p "
            + Figures.probability(analysis.equalSpreadProbability())
            + ").";
    return new ReferenceComparison(Procedure.DUNNETT, reason, differences);
  }

  private static ReferenceComparison gamesHowell(
      SeriesStatistics reference,
      Map<String, SeriesStatistics> others,
      OneWayAnalysis analysis,
      double level) {
    List<Difference> differences = new ArrayList<>();
    others.forEach(
        (name, series) -> {
          double degrees =
              StudentT.welchDegreesOfFreedom(
                  series.meanVariance(),
                  series.degreesOfFreedom(),
                  reference.meanVariance(),
                  reference.degreesOfFreedom());
          double q = StudentizedRange.quantile(level, others.size() + 1, degrees);
          double error = Math.sqrt((series.meanVariance() + reference.meanVariance()) / 2);
          FiellerRatio ratio =
              FiellerRatio.unequalVariances(series, reference, 1 - (1 - level) / others.size());
          differences.add(difference(name, series, reference, q * error, ratio));
        });
    String reason =
        "Games and Howell's simultaneous intervals, each series with its own spread: the spreads"
            + " differ beyond chance (Bartlett p "
            + Figures.probability(analysis.equalSpreadProbability())
            + ").";
    return new ReferenceComparison(Procedure.GAMES_HOWELL, reason, differences);
  }

  private static Difference difference(
      String name,
      SeriesStatistics series,
      SeriesStatistics reference,
      double halfWidth,
      FiellerRatio ratio) {
    double difference = series.mean() - reference.mean();
    return new Difference(
        name, difference, Optional.of(Interval.around(difference, halfWidth)), ratio);
  }
}
