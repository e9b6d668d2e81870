package io.github.platenwire.study;

import io.github.platenwire.lab.Study;
import io.github.platenwire.method.Method;
import io.github.platenwire.method.Specimen;
import io.github.platenwire.study.StudyStatus.DueBreak;
import io.github.platenwire.study.StudyStatus.OutOfRange;
import io.github.platenwire.study.StudyStatus.Progress;
import io.github.platenwire.study.StudyStatus.Standing;
import io.github.platenwire.study.StudyStatus.Unplanned;
import io.github.platenwire.toml.Suggestions;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;

/** Holds a study's plan against its table and its records. Used once; not thread-safe. */
final class StatusMaker {
  private static final double SECONDS_PER_DAY = 86_400;
  private static final double SECONDS_PER_HOUR = 3600;

  /** How late a break may be where no tolerance is printed (common practice, no source). */
  private static final Duration WITHOUT_TOLERANCE = Duration.ofDays(1);

  private final StudyData data;
  private final Instant now;
  private final Set<String> broken;
  private final List<DueBreak> due = new ArrayList<>();
  private final List<Progress> progress = new ArrayList<>();
  private final List<OutOfRange> outOfRange = new ArrayList<>();
  private final List<Unplanned> unplanned = new ArrayList<>();
  private final List<String> remarks;

  StatusMaker(StudyData data, Instant now) {
    this.data = data;
    this.now = now;
    this.broken =
        data.tests().stream()
            .filter(this::isDone)
            .map(ClosedTest::specimen)
            .collect(Collectors.toSet());
    this.remarks = new ArrayList<>(data.remarks());
  }

  StudyStatus make() {
    for (Study.Series series : data.study().series()) {
      agesOf(series).forEach(age -> addSet(series, age));
      addOutOfRange(series.name());
    }
    data.specimens().forEach(this::addUnplanned);
    due.sort(
        Comparator.comparing((DueBreak one) -> one.due().orElse(Instant.MAX))
            .thenComparing(DueBreak::specimen));
    return new StudyStatus(
        data.study().title(), now, data.zone(), due, progress, outOfRange, unplanned, remarks);
  }

  private boolean isDone(ClosedTest test) {
    return test.isDone(data.study().find(test.series()).flatMap(Study.Series::method));
  }

  /** The ages of the plan; where it gives none, those of the table. */
  private List<Double> agesOf(Study.Series series) {
    if (!series.agesDays().isEmpty()) {
      return series.agesDays();
    }
    Set<Double> ages = new TreeSet<>();
    data.specimens().stream()
        .filter(specimen -> specimen.series().equals(series.name()))
        .forEach(specimen -> specimen.plannedAgeDays().ifPresent(ages::add));
    return List.copyOf(ages);
  }

  private void addSet(Study.Series series, double ageDays) {
    List<Specimen> listed =
        data.specimens().stream()
            .filter(specimen -> specimen.series().equals(series.name()))
            .filter(specimen -> specimen.plannedAgeDays().equals(OptionalDouble.of(ageDays)))
            .toList();
    List<ClosedTest> done = done(series.name(), ageDays);
    boolean byPlan = series.agesDays().contains(ageDays);
    int planned = byPlan ? series.replicates() : 0;
    Optional<Method> method = data.methodOf(series.name());
    long outside = done.stream().filter(test -> isOutside(test, ageDays, method)).count();
    progress.add(
        new Progress(
            series.name(),
            series.label(),
            ageDays,
            planned,
            listed.size(),
            done.size(),
            (int) outside));
    List<Specimen> open = listed.stream().filter(s -> !broken.contains(s.name())).toList();
    int needed = byPlan ? Math.max(0, planned - done.size()) : open.size();
    addOpen(open, needed, ageDays, method);
    if (open.size() < needed) {
      remarks.add(missing(series.name(), ageDays, needed, open.size()));
    }
  }

  /** The first of the open specimens are due, as many as are needed; the rest are spares. */
  private void addOpen(List<Specimen> open, int needed, double ageDays, Optional<Method> method) {
    for (int i = 0; i < open.size(); i++) {
      Specimen specimen = open.get(i);
      if (i < needed) {
        due.add(dueBreak(specimen, ageDays, method));
      } else {
        String reason =
            needed == 0
                ? "a spare: as many as the plan asks for at %s are broken"
                : "a spare: the specimens before it in the table make up the plan's number at %s";
        unplanned.add(
            new Unplanned(
                specimen.name(), specimen.series(), reason.replace("%s", Figures.age(ageDays))));
      }
    }
  }

  private static String missing(String series, double ageDays, int needed, int open) {
    return series
        + " at "
        + Figures.age(ageDays)
        + ": "
        + needed
        + " are still to break, but specimens.csv lists "
        + (open == 0 ? "none" : "only " + open)
        + ". Add the specimens, or change ages-days or replicates in study.toml.";
  }

  /** The first test of each specimen of that age that used it up. */
  private List<ClosedTest> done(String series, double ageDays) {
    Set<String> seen = new LinkedHashSet<>();
    return data.testsOf(series).stream()
        .filter(this::isDone)
        .filter(test -> test.ageDays().equals(OptionalDouble.of(ageDays)))
        .filter(test -> seen.add(test.specimen()))
        .toList();
  }

  private static boolean isOutside(ClosedTest test, double ageDays, Optional<Method> method) {
    OptionalDouble hours =
        method.map(rules -> rules.ageToleranceHours(ageDays)).orElse(OptionalDouble.empty());
    return hours.isPresent()
        && test.trueAgeDays().isPresent()
        && Math.abs(test.trueAgeDays().getAsDouble() - ageDays) * 24 > hours.getAsDouble() + 1e-9;
  }

  private DueBreak dueBreak(Specimen specimen, double ageDays, Optional<Method> method) {
    Optional<Duration> tolerance =
        method.flatMap(
            rules -> {
              OptionalDouble hours = rules.ageToleranceHours(ageDays);
              return hours.isPresent()
                  ? Optional.of(seconds(hours.getAsDouble() * SECONDS_PER_HOUR))
                  : Optional.empty();
            });
    Optional<Instant> time =
        specimen
            .cast()
            .map(cast -> cast.atZone(data.zone()).toInstant())
            .map(cast -> cast.plus(seconds(ageDays * SECONDS_PER_DAY)));
    return new DueBreak(
        specimen.name(), specimen.series(), ageDays, time, tolerance, standing(time, tolerance));
  }

  private static Duration seconds(double seconds) {
    return Duration.ofSeconds(Math.round(seconds));
  }

  private Standing standing(Optional<Instant> time, Optional<Duration> tolerance) {
    if (time.isEmpty()) {
      return Standing.NOT_KNOWN;
    }
    if (now.isBefore(time.get().minus(tolerance.orElse(Duration.ZERO)))) {
      return Standing.LATER;
    }
    return now.isAfter(time.get().plus(tolerance.orElse(WITHOUT_TOLERANCE)))
        ? Standing.OVERDUE
        : Standing.NOW;
  }

  private void addOutOfRange(String series) {
    for (String method : data.methods().keySet()) {
      for (StudyComparison.SeriesSet set :
          new SeriesSets(data, StudyQuestion.STRENGTH, method).of(series)) {
        set.companions()
            .filter(verdict -> !verdict.within().orElse(true))
            .ifPresent(verdict -> outOfRange.add(new OutOfRange(series, set.ageDays(), verdict)));
      }
    }
  }

  private void addUnplanned(Specimen specimen) {
    whyUnplanned(specimen)
        .ifPresent(why -> unplanned.add(new Unplanned(specimen.name(), specimen.series(), why)));
  }

  private Optional<String> whyUnplanned(Specimen specimen) {
    Optional<Study.Series> series = data.study().find(specimen.series());
    if (series.isEmpty()) {
      List<String> names = data.study().series().stream().map(Study.Series::name).toList();
      return Optional.of(
          "the plan has no series '"
              + specimen.series()
              + "'"
              + Suggestions.nearest(specimen.series(), names)
                  .map(near -> ", did you mean '" + near + "'?")
                  .orElse(""));
    }
    if (specimen.plannedAgeDays().isEmpty()) {
      return Optional.of("its age_days is empty, so it has no time in the plan");
    }
    double age = specimen.plannedAgeDays().getAsDouble();
    return agesOf(series.get()).contains(age)
        ? Optional.empty()
        : Optional.of("the plan breaks none of " + specimen.series() + " at " + Figures.age(age));
  }
}
