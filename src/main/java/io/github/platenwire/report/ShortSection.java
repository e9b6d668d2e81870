package io.github.platenwire.report;

import io.github.platenwire.lab.Study;
import io.github.platenwire.quantity.BothSystems;
import io.github.platenwire.quantity.Quantity;
import io.github.platenwire.statistics.Interval;
import io.github.platenwire.study.CrackRatio;
import io.github.platenwire.study.StudyComparison;
import io.github.platenwire.study.StudyComparison.AgainstReference;
import io.github.platenwire.study.StudyComparison.AgeComparison;
import io.github.platenwire.study.StudyComparison.CrackComparison;
import io.github.platenwire.study.StudyData;
import io.github.platenwire.study.StudyStatus;
import io.github.platenwire.study.StudyStatus.Progress;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** What a study comes to, on one sheet, for somebody who never saw it. Used once. */
final class ShortSection {
  private static final int MOST_RATIOS = 2;
  private static final int MOST_HEADLINES = 4;

  private final StudyData data;
  private final StudyStatus status;
  private final List<StudyComparison> comparisons;
  private final Set<String> said = new LinkedHashSet<>();

  ShortSection(StudyData data, StudyStatus status, List<StudyComparison> comparisons) {
    this.data = data;
    this.status = status;
    this.comparisons = comparisons;
  }

  void add(Page page) {
    page.headlines(headlines());
    page.paragraph(series());
    page.section("In short");
    if (comparisons.isEmpty()) {
      page.paragraph("There is nothing to compare yet.");
    }
    for (StudyComparison comparison : comparisons) {
      part(page, heading(comparison), strengths(comparison));
      part(page, "Growth with age", trends(comparison));
      part(page, "Cracks", cracks(comparison));
      part(page, "What people saw", observations(comparison));
      List<String> rest = new ArrayList<>(comparison.sentences());
      comparison.trends().forEach(trend -> rest.removeAll(trend.sentences()));
      rest.removeAll(said);
      part(page, "Also", rest);
    }
    page.remark(
        "Intervals are 95 % intervals: of a hundred such studies about 95 would give intervals that"
            + " hold the true value. n is the number of specimens; with fewer than three figures are"
            + " given, and no verdict.");
  }

  /** The figure; its method too where several methods give figures. */
  private String heading(StudyComparison comparison) {
    boolean several =
        comparisons.stream().map(one -> one.subject().method()).distinct().count() > 1;
    String title = SetsSection.title(comparison);
    return several ? title + " (" + comparison.subject().standard() + ")" : title;
  }

  /** The figure as it stands within a sentence. */
  private static String title(StudyComparison comparison) {
    String title = SetsSection.title(comparison).replaceFirst(" \\(.*$", "");
    return title.substring(0, 1).toLowerCase(Locale.ROOT) + title.substring(1);
  }

  private void part(Page page, String heading, List<String> sentences) {
    List<String> news = sentences.stream().filter(words -> !said.contains(words)).toList();
    if (!news.isEmpty()) {
      page.part(heading).list(news.stream().map(Inline::text).toList());
      said.addAll(news);
    }
  }

  private Inline series() {
    String words =
        data.study().series().stream()
            .map(one -> one.name() + " is " + one.label() + reference(one))
            .collect(Collectors.joining("; "));
    return Inline.text("The series: " + words + ".");
  }

  private String reference(Study.Series one) {
    return one.name().equals(data.study().reference()) ? " (the reference)" : "";
  }

  private static List<String> strengths(StudyComparison comparison) {
    return comparison.ages().stream()
        .flatMap(age -> age.series().stream())
        .flatMap(one -> one.sentences().stream())
        .toList();
  }

  private static List<String> trends(StudyComparison comparison) {
    return comparison.trends().stream()
        .flatMap(trend -> trend.sentences().stream().limit(1))
        .toList();
  }

  private static List<String> cracks(StudyComparison comparison) {
    return comparison.cracks().stream().flatMap(crack -> crack.sentences().stream()).toList();
  }

  private static List<String> observations(StudyComparison comparison) {
    return comparison.observations().stream().map(StudyComparison.Observation::sentence).toList();
  }

  private List<Page.Headline> headlines() {
    List<Page.Headline> all = new ArrayList<>();
    for (StudyComparison comparison : comparisons) {
      ratios(comparison).stream().limit(MOST_RATIOS).forEach(all::add);
    }
    List<Page.Headline> cracks =
        comparisons.stream()
            .flatMap(comparison -> comparison.cracks().stream())
            .map(this::crack)
            .flatMap(Optional::stream)
            .limit(1)
            .toList();
    all.subList(Math.min(all.size(), MOST_HEADLINES - 1 - cracks.size()), all.size()).clear();
    all.addAll(cracks);
    int planned = status.progress().stream().mapToInt(Progress::planned).sum();
    int broken = status.progress().stream().mapToInt(Progress::broken).sum();
    long overdue = status.overdue();
    all.add(
        new Page.Headline(
            "Specimens tested",
            Inline.text(broken + " of " + planned),
            Inline.faint(overdue == 0 ? "none overdue" : overdue + " overdue")));
    return all;
  }

  /** Those of the oldest age that has any. */
  private List<Page.Headline> ratios(StudyComparison comparison) {
    List<Page.Headline> ratios = new ArrayList<>();
    double oldest =
        comparison.ages().stream()
            .mapToDouble(AgeComparison::ageDays)
            .filter(Double::isFinite)
            .max()
            .orElse(Double.NaN);
    String in = comparisons.size() == 1 ? "" : ", " + title(comparison);
    for (AgeComparison age : comparison.ages()) {
      if (Double.compare(age.ageDays(), oldest) == 0) {
        age.series().forEach(one -> ratios.add(ratio(age, one, in)));
      }
    }
    return ratios;
  }

  private static Page.Headline ratio(AgeComparison age, AgainstReference one, String in) {
    Optional<Interval> interval = one.ratioInterval();
    return new Page.Headline(
        one.series() + " over " + age.reference() + Words.atAge(age.ageDays()) + in,
        Inline.text(Words.decimals(one.ratio().ratio(), 2) + " ×"),
        Inline.faint(
            interval
                .map(
                    there ->
                        "95 %: "
                            + Words.decimals(there.low(), 2)
                            + " to "
                            + Words.decimals(there.high(), 2))
                .orElse("no interval with two ends")));
  }

  /** The ratio of widths at the greatest load that all reached. */
  private Optional<Page.Headline> crack(CrackComparison crack) {
    return crack.atLoads().stream()
        .filter(at -> at.outcome() instanceof CrackRatio.Found)
        .reduce((before, after) -> after)
        .map(
            at -> {
              CrackRatio.Found found = (CrackRatio.Found) at.outcome();
              return new Page.Headline(
                  "Crack of " + crack.series() + " over " + crack.reference(),
                  Inline.text(Words.decimals(found.ratio(), 1) + " ×"),
                  Inline.faint(
                      "95 %: "
                          + Words.decimals(found.interval().low(), 1)
                          + " to "
                          + Words.decimals(found.interval().high(), 1)
                          + " at "
                          + BothSystems.words(at.place(), Quantity.FORCE, data.unitsFirst())));
            });
  }
}
