package io.github.platenwire.report;

import io.github.platenwire.lab.LabException;
import io.github.platenwire.study.StudyComparison;
import io.github.platenwire.study.StudyData;
import io.github.platenwire.study.StudyStatus;
import java.io.IOException;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/**
 * The report of a study: what is compared and how far it has come, series held against the
 * reference, strength over age, cracks, what people saw, and the records all of it rests on.
 * Stateless.
 */
public final class StudyReport {
  private StudyReport() {}

  /**
   * Makes the page.
   *
   * @param data the study
   * @param status how far it has come
   * @param comparisons what was computed, the most important first
   * @throws LabException if the lab's registers cannot be used
   * @throws IOException if a chart cannot be drawn or a register not be read
   */
  public static Page of(
      ReportSetting setting, StudyData data, StudyStatus status, List<StudyComparison> comparisons)
      throws IOException, LabException {
    Page page =
        new Page(
            data.study().title(),
            "Study of " + data.labName() + ", " + Words.day(setting.now(), data.zone()),
            data.study().title() + " · " + Words.day(setting.now(), data.zone()),
            setting.first());
    new ShortSection(data, status, comparisons).add(page);
    warnings(page, data, status, comparisons);
    for (StudyComparison comparison : comparisons) {
      String name = name(comparison, comparisons);
      new SetsSection(setting, comparison, name).add(page);
      new AgeSection(setting, data, comparison, name).add(page);
    }
    CracksSection.add(page, setting, data, comparisons);
    observations(page, comparisons);
    PhotographsSection.add(page, setting, data);
    new PlanSection(data, status).add(page);
    RecordsSection.add(page, setting, data);
    LastWords.add(page, setting, standards(data));
    return page;
  }

  /** The figure, and its method too where several give it. */
  private static String name(StudyComparison comparison, List<StudyComparison> all) {
    StudyComparison.Subject subject = comparison.subject();
    boolean alone =
        all.stream().filter(one -> one.subject().figure().equals(subject.figure())).count() == 1;
    return alone ? subject.figure() : subject.figure() + "-" + subject.method();
  }

  private static void warnings(
      Page page, StudyData data, StudyStatus status, List<StudyComparison> comparisons) {
    Set<String> warnings = new LinkedHashSet<>();
    comparisons.forEach(comparison -> warnings.addAll(comparison.warnings()));
    status
        .outOfRange()
        .forEach(
            set ->
                warnings.add(
                    set.series()
                        + Words.atAge(set.ageDays())
                        + ": "
                        + set.verdict().words()
                        + "."));
    warnings.addAll(data.remarks());
    if (!warnings.isEmpty()) {
      page.section("What to bear in mind");
      warnings.forEach(words -> page.note(Tone.CAUTION, Inline.text(words)));
    }
  }

  private static void observations(Page page, List<StudyComparison> comparisons) {
    Set<StudyComparison.Observation> all = new LinkedHashSet<>();
    comparisons.forEach(comparison -> all.addAll(comparison.observations()));
    page.section("What people saw");
    if (all.isEmpty()) {
      page.paragraph("Nothing was noted that could be compared.");
      return;
    }
    PageTable table =
        PageTable.named("observations", "")
            .words("What")
            .numbers("Age, days", "age_days")
            .names("Series")
            .numbers("Seen in", "seen")
            .numbers("Of", "looked");
    for (StudyComparison.Observation one : all) {
      for (StudyComparison.Count count : one.counts()) {
        table.row(
            Cell.of(one.what()),
            one.ageDays().isPresent()
                ? Cell.of(Words.plain(one.ageDays().getAsDouble()), one.ageDays().getAsDouble())
                : Cell.of("", Double.NaN),
            Cell.of(count.series()),
            Cell.of(Integer.toString(count.seen())),
            Cell.of(Integer.toString(count.looked())));
      }
    }
    page.table(table);
  }

  private static List<String> standards(StudyData data) {
    return data.tests().stream()
        .map(test -> test.summary().method().standard())
        .distinct()
        .toList();
  }
}
