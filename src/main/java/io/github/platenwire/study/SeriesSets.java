package io.github.platenwire.study;

import io.github.platenwire.lab.Study;
import io.github.platenwire.method.Companions;
import io.github.platenwire.method.Method;
import io.github.platenwire.method.MethodResult.Figure;
import io.github.platenwire.study.StudyComparison.SeriesSet;
import io.github.platenwire.study.StudyComparison.SpecimenValue;
import io.github.platenwire.study.StudyComparison.Suspect;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;

/**
 * Puts the specimens of a series together by age: one figure of one method. A specimen counts once,
 * by its first test that came to the figure. Immutable.
 */
final class SeriesSets {
  private final StudyData data;
  private final String figure;
  private final String method;

  SeriesSets(StudyData data, String figure, String method) {
    this.data = data;
    this.figure = figure;
    this.method = method;
  }

  /**
   * The sets of one series, by rising age. Tests of which no age is known are left out, or make a
   * set of their own where the figure has less to do with age; its age is NaN then.
   */
  List<SeriesSet> of(String series) {
    Map<Double, List<ClosedTest>> byAge = new TreeMap<>();
    for (ClosedTest test : counting(series)) {
      OptionalDouble age = test.ageDays();
      if (age.isPresent() || MainFigures.mayLackAge(figure)) {
        byAge.computeIfAbsent(age.orElse(Double.NaN), any -> new ArrayList<>()).add(test);
      }
    }
    List<SeriesSet> sets = new ArrayList<>();
    byAge.forEach((age, tests) -> sets.add(set(series, age, tests)));
    return sets;
  }

  /** The tests behind a set. */
  List<ClosedTest> testsOf(SeriesSet set) {
    return set.values().stream()
        .map(
            value ->
                data.tests().stream()
                    .filter(test -> test.record().equals(value.record()))
                    .findFirst()
                    .orElseThrow())
        .toList();
  }

  /** What is left out of the sets of one series, or counted with a doubt, in whole sentences. */
  List<String> doubts(String series) {
    List<String> doubts = new ArrayList<>();
    Map<String, Integer> times = new LinkedHashMap<>();
    for (ClosedTest test : candidates(series)) {
      times.merge(test.specimen(), 1, Integer::sum);
      if (test.ageDays().isEmpty()) {
        doubts.add(
            test.specimen()
                + " has neither a planned age nor a cast time and is "
                + (MainFigures.mayLackAge(figure) ? "compared without an age (" : "left out (")
                + test.record()
                + ").");
      }
    }
    times.forEach(
        (specimen, count) -> {
          if (count > 1) {
            doubts.add(specimen + " has " + count + " tests; the first counts.");
          }
        });
    without(series).ifPresent(doubts::add);
    counting(series)
        .forEach(
            test -> departureFromAge(test).ifPresent(words -> doubts.add(test.specimen() + words)));
    return doubts;
  }

  /** Specimens that never came to the figure are not seldom the strongest, or the weakest. */
  private Optional<String> without(String series) {
    List<String> with = counting(series).stream().map(ClosedTest::specimen).toList();
    List<String> without =
        data.testsOf(series).stream()
            .filter(test -> test.summary().method().name().equals(method))
            .map(ClosedTest::specimen)
            .distinct()
            .filter(specimen -> !with.contains(specimen))
            .toList();
    return with.isEmpty() || without.isEmpty()
        ? Optional.empty()
        : Optional.of(
            String.join(", ", without)
                + " did not come to this figure ("
                + figure
                + "); the mean of "
                + series
                + " is that of the others only.");
  }

  /** The first test of each specimen that came to the figure. */
  List<ClosedTest> counting(String series) {
    Map<String, ClosedTest> first = new LinkedHashMap<>();
    candidates(series).forEach(test -> first.putIfAbsent(test.specimen(), test));
    return List.copyOf(first.values());
  }

  private List<ClosedTest> candidates(String series) {
    return data.testsOf(series).stream()
        .filter(test -> test.summary().method().name().equals(method))
        .filter(test -> test.figure(figure).isPresent())
        .toList();
  }

  private Optional<String> departureFromAge(ClosedTest test) {
    OptionalDouble planned = test.summary().specimen().plannedAgeDays();
    OptionalDouble real = test.trueAgeDays();
    Optional<Method> rules = Optional.ofNullable(data.methods().get(method));
    if (planned.isEmpty() || real.isEmpty() || rules.isEmpty()) {
      return Optional.empty();
    }
    OptionalDouble hours = rules.get().ageToleranceHours(planned.getAsDouble());
    double offHours = (real.getAsDouble() - planned.getAsDouble()) * 24;
    return hours.isPresent() && Math.abs(offHours) > hours.getAsDouble() + 1e-9
        ? Optional.of(
            " was tested "
                + Figures.plain(Math.abs(offHours))
                + " h "
                + (offHours < 0 ? "before" : "after")
                + " its planned "
                + Figures.age(planned.getAsDouble())
                + ", which is outside the tolerance of "
                + Figures.fixed(hours.getAsDouble(), hours.getAsDouble() < 1 ? 1 : 0)
                + " h; it is kept.")
        : Optional.empty();
  }

  private SeriesSet set(String series, double ageDays, List<ClosedTest> tests) {
    List<SpecimenValue> values = tests.stream().map(this::value).toList();
    double[] numbers = values.stream().mapToDouble(SpecimenValue::value).toArray();
    return new SeriesSet(
        series,
        data.label(series),
        ageDays,
        planned(series, ageDays),
        values,
        SeriesStatistics.of(numbers),
        companions(tests, values),
        Grubbs.test(numbers)
            .filter(Grubbs.Finding::suspected)
            .map(finding -> new Suspect(values.get(finding.index()).specimen(), finding)));
  }

  private SpecimenValue value(ClosedTest test) {
    Figure found = test.figure(figure).orElseThrow();
    return new SpecimenValue(
        test.specimen(),
        found.exact(),
        found.rounded(),
        found.inchPoundRounded(),
        found.uncertainty(),
        test.trueAgeDays(),
        test.record(),
        found.rows());
  }

  private int planned(String series, double ageDays) {
    return data.study()
        .find(series)
        .filter(plan -> plan.agesDays().contains(ageDays))
        .map(Study.Series::replicates)
        .orElse(0);
  }

  private Optional<Companions.Verdict> companions(
      List<ClosedTest> tests, List<SpecimenValue> values) {
    Optional<Companions> rules =
        Optional.ofNullable(data.methods().get(method)).flatMap(Method::companions);
    ClosedTest first = tests.get(0);
    Optional<Figure> size =
        first.summary().result().figure("diameter").or(() -> first.figure("width"));
    boolean judged =
        figure.equals("strength") && values.stream().allMatch(value -> value.value() > 0);
    if (rules.isEmpty() || size.isEmpty() || !judged) {
      return Optional.empty();
    }
    return Optional.of(
        rules
            .get()
            .judge(
                Companions.Conditions.ofRow(first.summary().specimen().asWritten()),
                size.get().exact(),
                values.stream().map(SpecimenValue::value).toList(),
                data.unitsFirst()));
  }
}
