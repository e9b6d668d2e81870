package io.github.platenwire.study;

import io.github.platenwire.statistics.ConfidenceSet;
import io.github.platenwire.statistics.Interval;
import io.github.platenwire.study.StudyComparison.AgainstReference;
import io.github.platenwire.study.StudyComparison.AgeComparison;
import io.github.platenwire.study.StudyComparison.SeriesSet;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Holds the series that have one reference against it at one age. With several, the intervals hold
 * for all of them at once; a series with fewer than three specimens has figures only and does not
 * widen those of the others. Used once; not thread-safe.
 */
final class AgeComparer {
  private static final String TWO_SERIES =
      "One series against its reference: Fieller's interval of the ratio and Welch's of the"
          + " difference, each series with its own spread.";
  private static final String TOO_FEW =
      "Fewer than three specimens in a series: figures, no interval, no verdict.";

  private final SeriesSets sets;
  private final String figure;
  private final FigureText text;
  private final SeriesSet reference;
  private final Set<String> reasons = new LinkedHashSet<>();

  AgeComparer(SeriesSets sets, String figure, FigureText text, SeriesSet reference) {
    this.sets = sets;
    this.figure = figure;
    this.text = text;
    this.reference = reference;
  }

  AgeComparison compare(List<SeriesSet> others) {
    Map<String, SeriesStatistics> eligible = new LinkedHashMap<>();
    if (reference.statistics().allowsVerdict()) {
      others.stream()
          .filter(other -> other.statistics().allowsVerdict())
          .forEach(other -> eligible.put(other.series(), other.statistics()));
    }
    Optional<ReferenceComparison> simultaneous =
        eligible.size() > 1
            ? Optional.of(ReferenceComparison.against(reference.statistics(), eligible))
            : Optional.empty();
    List<AgainstReference> compared = new ArrayList<>();
    for (SeriesSet other : others) {
      compared.add(
          simultaneous
              .filter(all -> eligible.containsKey(other.series()))
              .map(all -> ofSeveral(other, all))
              .orElseGet(() -> alone(other)));
    }
    reasons.add(
        simultaneous
            .map(ReferenceComparison::reason)
            .orElse(eligible.isEmpty() ? TOO_FEW : TWO_SERIES));
    List<String> choice = new ArrayList<>(reasons);
    choice.add(0, choice.remove(choice.size() - 1));
    return new AgeComparison(
        reference.ageDays(), reference.series(), compared, String.join(" ", choice));
  }

  private AgainstReference ofSeveral(SeriesSet other, ReferenceComparison all) {
    ReferenceComparison.Difference own =
        all.differences().stream()
            .filter(difference -> difference.series().equals(other.series()))
            .findFirst()
            .orElseThrow();
    return against(
        other, own.ratio(), own.interval(), PlainSentences.intervalOfAll(all.differences().size()));
  }

  private AgainstReference alone(SeriesSet other) {
    return against(
        other,
        FiellerRatio.unequalVariances(other.statistics(), reference.statistics()),
        WelchDifference.between(other.statistics(), reference.statistics())
            .inference()
            .map(WelchDifference.Inference::interval),
        PlainSentences.INTERVAL);
  }

  private AgainstReference against(
      SeriesSet other, FiellerRatio ratio, Optional<Interval> interval, String intervalName) {
    SharedCalibration own = SharedCalibration.of(sets.testsOf(other), figure);
    SharedCalibration its = SharedCalibration.of(sets.testsOf(reference), figure);
    Optional<CalibratedRatio> calibrated = calibrated(ratio, own, its);
    calibrated.ifPresent(with -> reasons.add(with.reason()));
    WelchDifference difference =
        WelchDifference.between(other.statistics(), reference.statistics());
    Optional<Interval> widened =
        interval.map(
            bare ->
                own.ofDifference(
                    bare, other.statistics().mean(), reference.statistics().mean(), its));
    double age = reference.ageDays();
    return new AgainstReference(
        other.series(),
        ratio,
        calibrated,
        difference,
        widened,
        List.of(
            PlainSentences.ratio(
                age, other.series(), reference.series(), ratio, calibrated, intervalName, text),
            PlainSentences.difference(
                age, other.series(), reference.series(), difference, widened, intervalName, text)));
  }

  private static Optional<CalibratedRatio> calibrated(
      FiellerRatio ratio, SharedCalibration own, SharedCalibration its) {
    boolean known = own.systematic().shared() > 0 && its.systematic().shared() > 0;
    // Equal values give a set of no width, which rounding may put beside the ratio.
    return known
            && ratio.ratio() > 0
            && ratio.set() instanceof ConfidenceSet.Bounded bounded
            && bounded.contains(ratio.ratio())
        ? Optional.of(
            CalibratedRatio.of(
                ratio.ratio(),
                bounded.interval(),
                own.systematic(),
                its.systematic(),
                own.against(its)))
        : Optional.empty();
  }

  /** All sets of an age, by the series. */
  static Map<String, SeriesSet> bySeries(List<SeriesSet> sets, double ageDays) {
    return sets.stream()
        .filter(set -> Double.compare(set.ageDays(), ageDays) == 0)
        .collect(
            Collectors.toMap(
                SeriesSet::series, set -> set, (one, other) -> one, LinkedHashMap::new));
  }
}
