package io.github.platenwire.study;

import io.github.platenwire.lab.LabException;
import io.github.platenwire.lab.Study;
import io.github.platenwire.study.StudyComparison.AgainstReference;
import io.github.platenwire.study.StudyComparison.AgeComparison;
import io.github.platenwire.study.StudyComparison.CrackComparison;
import io.github.platenwire.study.StudyComparison.Observation;
import io.github.platenwire.study.StudyComparison.SeriesSet;
import io.github.platenwire.study.StudyComparison.SeriesTrend;
import io.github.platenwire.study.StudyComparison.SpecimenValue;
import io.github.platenwire.study.StudyComparison.Subject;
import io.github.platenwire.toml.Suggestions;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/** Answers a question about a study. Used once; not thread-safe. */
final class ComparisonMaker {
  private final StudyData data;
  private final StudyQuestion question;

  /** Each series that is compared, with its reference; the references among them too. */
  private final Map<String, String> references = new LinkedHashMap<>();

  private final List<String> sentences = new ArrayList<>();
  private final List<String> warnings;

  ComparisonMaker(StudyData data, StudyQuestion question) {
    this.data = data;
    this.question = question;
    this.warnings = new ArrayList<>(data.remarks());
  }

  StudyComparison make() throws LabException {
    choose();
    Set<String> all = involved();
    SubjectFinder finder =
        new SubjectFinder(
            data.tests().stream().filter(test -> all.contains(test.series())).toList(), question);
    Subject subject = finder.find();
    warnings.addAll(finder.warnings());
    SeriesSets sets = new SeriesSets(data, subject.figure(), subject.method());
    List<SeriesSet> found = new ArrayList<>();
    for (String series : all) {
      found.addAll(sets.of(series).stream().filter(set -> isAsked(set.ageDays())).toList());
      warnings.addAll(sets.doubts(series));
    }
    references.forEach((series, its) -> warnOfOtherMethod(series, its, subject));
    found.forEach(this::nameSuspect);
    List<AgeComparison> ages = ages(sets, found, subject);
    List<SeriesTrend> trends = trends(found, subject);
    List<CrackComparison> cracks = cracks();
    List<Observation> observations = observations(sets, all);
    addDepartures(all.stream().flatMap(series -> sets.counting(series).stream()).toList());
    return new StudyComparison(
        subject,
        question.against().orElse(data.study().reference()),
        found,
        ages,
        trends,
        cracks,
        observations,
        sentences,
        warnings);
  }

  /** Figures by different methods are never held against each other, and that is said. */
  private void warnOfOtherMethod(String series, String reference, Subject subject) {
    Set<String> own = methods(series, subject.figure());
    Set<String> its = methods(reference, subject.figure());
    boolean apart = own.contains(subject.method()) != its.contains(subject.method());
    if (!series.equals(reference) && apart && !own.isEmpty() && !its.isEmpty()) {
      warnings.add(
          series
              + " is not compared with "
              + reference
              + " in this figure ("
              + subject.figure()
              + "): the methods differ ("
              + String.join(", ", own)
              + " and "
              + String.join(", ", its)
              + ").");
    }
  }

  /** By which a series came to a figure. */
  private Set<String> methods(String series, String figure) {
    Set<String> methods = new LinkedHashSet<>();
    data.testsOf(series).stream()
        .filter(test -> test.figure(figure).isPresent())
        .forEach(test -> methods.add(test.summary().method().name()));
    return methods;
  }

  private boolean isAsked(double ageDays) {
    return question.ageDays().isEmpty() || question.ageDays().getAsDouble() == ageDays;
  }

  private void choose() throws LabException {
    if (question.series().isPresent()) {
      known(question.series().get());
    }
    if (question.against().isPresent()) {
      known(question.against().get());
    }
    for (Study.Series planned : data.study().series()) {
      String name = planned.name();
      if (question.series().isEmpty() || question.series().get().equals(name)) {
        references.put(name, question.against().orElse(data.study().referenceOf(name)));
      }
    }
    question
        .series()
        .ifPresent(
            name ->
                references.putIfAbsent(name, question.against().orElse(data.study().reference())));
    if (question.series().isPresent()
        && question.series().get().equals(references.get(question.series().get()))) {
      throw new LabException(
          "'"
              + question.series().get()
              + "' is the reference itself; name another series, or another one after --against");
    }
  }

  private void known(String name) throws LabException {
    Set<String> names = new LinkedHashSet<>();
    data.study().series().forEach(series -> names.add(series.name()));
    data.tests().forEach(test -> names.add(test.series()));
    if (!names.contains(name)) {
      throw new LabException(
          "there is no series '"
              + name
              + "'"
              + Suggestions.nearest(name, names)
                  .map(near -> ", did you mean '" + near + "'?")
                  .orElse("; there are: " + String.join(", ", names)));
    }
  }

  /** The series in the order of the plan, references among them. */
  private Set<String> involved() {
    Set<String> wanted = new LinkedHashSet<>(references.keySet());
    wanted.addAll(references.values());
    Set<String> ordered = new LinkedHashSet<>();
    data.study().series().stream()
        .map(Study.Series::name)
        .filter(wanted::contains)
        .forEach(ordered::add);
    ordered.addAll(wanted);
    return ordered;
  }

  private void nameSuspect(SeriesSet set) {
    set.suspect()
        .flatMap(
            suspect ->
                PlainSentences.outlier(suspect.specimen(), set.statistics().n(), suspect.finding()))
        .ifPresent(sentences::add);
  }

  private List<AgeComparison> ages(SeriesSets sets, List<SeriesSet> found, Subject subject) {
    FigureText text = FigureText.of(subject, data.unitsFirst());
    Set<Double> all = new TreeSet<>();
    found.forEach(set -> all.add(set.ageDays()));
    List<AgeComparison> comparisons = new ArrayList<>();
    for (double age : all) {
      Map<String, SeriesSet> here = AgeComparer.bySeries(found, age);
      for (String reference : new LinkedHashSet<>(references.values())) {
        List<SeriesSet> others = others(here, reference);
        Optional<SeriesSet> its = Optional.ofNullable(here.get(reference));
        if (its.isPresent() && its.get().statistics().mean() != 0 && !others.isEmpty()) {
          AgeComparison made =
              new AgeComparer(sets, subject.figure(), text, its.get()).compare(others);
          made.series().forEach((AgainstReference one) -> sentences.addAll(one.sentences()));
          comparisons.add(made);
        } else if (!lonely(others).isEmpty()) {
          warnings.add(
              (Double.isNaN(age) ? "Without an age" : "At " + Figures.age(age))
                  + " there is no test of "
                  + reference
                  + " that came to this figure ("
                  + subject.figure()
                  + ") by this method to hold "
                  + String.join(", ", lonely(others))
                  + " against.");
        }
      }
    }
    return comparisons;
  }

  /** Those that hold up nothing either: a reference of other series needs none of its own. */
  private List<String> lonely(List<SeriesSet> others) {
    return others.stream()
        .map(SeriesSet::series)
        .filter(series -> !references.containsValue(series))
        .toList();
  }

  private List<SeriesSet> others(Map<String, SeriesSet> here, String reference) {
    return here.values().stream()
        .filter(set -> reference.equals(references.get(set.series())))
        .filter(set -> !set.series().equals(reference))
        .toList();
  }

  private List<SeriesTrend> trends(List<SeriesSet> found, Subject subject) {
    if (!subject.figure().equals(StudyQuestion.STRENGTH)) {
      return List.of();
    }
    Map<String, List<SeriesSet>> bySeries = new LinkedHashMap<>();
    found.forEach(set -> bySeries.computeIfAbsent(set.series(), any -> new ArrayList<>()).add(set));
    List<SeriesTrend> trends = new ArrayList<>();
    bySeries.forEach(
        (series, sets) -> {
          if (sets.size() > 1) {
            trends.add(trend(series, sets, subject));
          }
        });
    return trends;
  }

  private SeriesTrend trend(String series, List<SeriesSet> sets, Subject subject) {
    double[] ages =
        sets.stream()
            .flatMapToDouble(set -> set.values().stream().mapToDouble(value -> set.ageDays()))
            .toArray();
    double[] strengths =
        sets.stream()
            .flatMap(set -> set.values().stream())
            .mapToDouble(SpecimenValue::value)
            .map(subject.unit()::toBase)
            .toArray();
    AgeTrend trend = AgeTrend.of(ages, strengths);
    Optional<AgeCurves.AciFit> aci = AgeCurves.fitAci(ages, strengths);
    Optional<AgeCurves.EnFit> en = AgeCurves.fitEn(ages, strengths);
    List<String> words =
        List.of(
            PlainSentences.trend(series, trend, data.unitsFirst()),
            PlainSentences.curves(series, aci, en, data.unitsFirst()));
    sentences.addAll(words);
    return new SeriesTrend(series, trend, aci, en, words);
  }

  private List<CrackComparison> cracks() {
    List<CrackComparison> cracks = new ArrayList<>();
    references.forEach(
        (series, reference) -> {
          if (!series.equals(reference)) {
            cracks.addAll(new CrackComparer(data, series, reference).compare(question.ageDays()));
          }
        });
    cracks.forEach(crack -> sentences.addAll(crack.sentences()));
    return cracks;
  }

  private List<Observation> observations(SeriesSets sets, Set<String> all) {
    List<ClosedTest> counting = new ArrayList<>();
    all.forEach(series -> counting.addAll(sets.counting(series)));
    List<ClosedTest> asked =
        counting.stream().filter(test -> isAsked(test.ageDays().orElse(Double.NaN))).toList();
    List<Observation> observations = new ArrayList<>();
    for (String reference : new LinkedHashSet<>(references.values())) {
      List<String> family = new ArrayList<>();
      references.forEach(
          (series, its) -> {
            if (its.equals(reference) && !series.equals(reference)) {
              family.add(series);
            }
          });
      family.add(reference);
      observations.addAll(new ObservationCounter(asked, family).count());
    }
    observations.forEach(observation -> sentences.add(observation.sentence()));
    return observations;
  }

  private void addDepartures(List<ClosedTest> tests) {
    Map<String, List<String>> whose = new LinkedHashMap<>();
    for (ClosedTest test : tests) {
      for (String departure : test.summary().result().departures()) {
        whose.computeIfAbsent(departure, any -> new ArrayList<>()).add(test.specimen());
      }
    }
    whose.forEach((departure, names) -> warnings.add(String.join(", ", names) + ": " + departure));
  }
}
