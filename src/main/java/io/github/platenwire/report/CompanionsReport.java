package io.github.platenwire.report;

import io.github.platenwire.lab.LabException;
import io.github.platenwire.study.StudyComparison;
import io.github.platenwire.study.StudyData;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * The report of companions: specimens of one series and one age, one by one beside their mean, and
 * their range against the limit. Stateless.
 */
public final class CompanionsReport {
  private CompanionsReport() {}

  /**
   * Makes the page.
   *
   * @param whole the comparison in which the set stands
   * @param series its series
   * @param ageDays its planned age
   * @throws ReportException if there is no such set
   * @throws LabException if the lab's registers cannot be used
   * @throws IOException if the chart cannot be drawn or a register not be read
   */
  public static Page of(
      ReportSetting setting, StudyData data, StudyComparison whole, String series, double ageDays)
      throws IOException, LabException, ReportException {
    StudyComparison.SeriesSet set =
        whole.sets().stream()
            .filter(one -> one.series().equals(series) && one.ageDays() == ageDays)
            .findFirst()
            .orElseThrow(() -> new ReportException(missing(whole, series, ageDays)));
    StudyComparison only =
        new StudyComparison(
            whole.subject(),
            whole.reference(),
            List.of(set),
            List.of(),
            List.of(),
            List.of(),
            List.of(),
            List.of(),
            List.of());
    Page page =
        new Page(
            set.series() + " at " + Words.days(ageDays) + ": companions",
            data.labName() + ", " + set.label(),
            set.series() + " at " + Words.days(ageDays) + " · " + data.labName(),
            setting.first());
    page.headlines(headlines(set, SetsSection.measure(setting, only)));
    verdict(page, set);
    new SetsSection(setting, only, only.subject().figure()).add(page);
    PhotographsSection.add(page, setting, only(data, set));
    RecordsSection.add(page, setting, only(data, set));
    LastWords.add(page, setting, List.of(whole.subject().standard()));
    return page;
  }

  private static String missing(StudyComparison whole, String series, double ageDays) {
    String there =
        whole.sets().stream()
            .map(set -> set.series() + " " + Words.plain(set.ageDays()))
            .collect(Collectors.joining(", "));
    return "no companions of "
        + series
        + " at "
        + Words.days(ageDays)
        + " are broken; there are: "
        + (there.isEmpty() ? "none at all" : there);
  }

  private static List<Page.Headline> headlines(StudyComparison.SeriesSet set, Measure measure) {
    List<Page.Headline> all = new ArrayList<>();
    double mean = set.statistics().mean();
    String beside = measure.beside(mean);
    all.add(
        new Page.Headline(
            "Mean",
            Inline.text(Words.with(measure.shown(mean), measure.shownUnit())),
            Inline.text(beside.isEmpty() ? "" : Words.with(beside, measure.besideUnit()))));
    all.add(
        new Page.Headline(
            "Specimens",
            Inline.text(Integer.toString(set.statistics().n())),
            Inline.faint(set.planned() == 0 ? "" : set.planned() + " planned")));
    set.companions()
        .filter(verdict -> verdict.count() > 1)
        .ifPresent(
            verdict ->
                all.add(
                    new Page.Headline(
                        "Range",
                        Inline.text(Words.decimals(verdict.rangePercent(), 1) + " %"),
                        Inline.faint(
                            verdict.limitPercent().isPresent()
                                ? "limit "
                                    + Words.decimals(verdict.limitPercent().getAsDouble(), 1)
                                    + " %"
                                : "no limit is printed"))));
    return all;
  }

  private static void verdict(Page page, StudyComparison.SeriesSet set) {
    set.companions()
        .ifPresent(
            verdict ->
                page.note(
                    verdict.within().isEmpty()
                        ? Tone.PLAIN
                        : verdict.within().get() ? Tone.GOOD : Tone.BAD,
                    Inline.text(verdict.words() + ".")));
    set.suspect()
        .ifPresent(
            suspect ->
                page.note(
                    Tone.CAUTION,
                    Inline.text(
                        suspect.specimen()
                            + " stands far from the others by Grubbs' test. It is kept in every"
                            + " figure; look for a cause.")));
  }

  private static StudyData only(StudyData data, StudyComparison.SeriesSet set) {
    Set<String> records =
        set.values().stream()
            .map(StudyComparison.SpecimenValue::record)
            .collect(Collectors.toSet());
    return new StudyData(
        data.labName(),
        data.zone(),
        data.unitsFirst(),
        data.study(),
        data.specimens(),
        data.tests().stream().filter(test -> records.contains(test.record())).toList(),
        data.methods(),
        data.remarks());
  }
}
