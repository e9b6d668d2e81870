package io.github.platenwire.report;

import io.github.platenwire.lab.Study;
import io.github.platenwire.study.StudyData;
import io.github.platenwire.study.StudyStatus;
import io.github.platenwire.study.StudyStatus.DueBreak;
import io.github.platenwire.study.StudyStatus.Progress;
import io.github.platenwire.study.StudyStatus.Standing;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/** Series, plan and state of a study. Used once; not thread-safe. */
final class PlanSection {
  private static final int MOST_DUE = 30;

  private final StudyData data;
  private final StudyStatus status;

  PlanSection(StudyData data, StudyStatus status) {
    this.data = data;
    this.status = status;
  }

  void add(Page page) {
    page.section("Series and plan").table(series());
    page.section("How far it has come").table(progress());
    page.table(due());
    if (status.due().size() > MOST_DUE) {
      page.remark(
          "These are the first " + MOST_DUE + " of " + status.due().size() + " still to break.");
    }
    List<Inline> more = new ArrayList<>();
    status
        .unplanned()
        .forEach(
            one ->
                more.add(
                    Inline.text(one.specimen() + " of " + one.series() + ": " + one.reason())));
    status.remarks().forEach(words -> more.add(Inline.text(words)));
    page.list(more);
  }

  private PageTable series() {
    PageTable table =
        PageTable.named("series", "")
            .names("Series")
            .words("What it is")
            .words("Made and cured")
            .words("Ages, days")
            .numbers("At each");
    for (Study.Series one : data.study().series()) {
      boolean reference = one.name().equals(data.study().reference());
      table.row(
          Cell.of(Inline.strong(one.name()).and(reference ? " (reference)" : "")),
          Cell.of(one.label()),
          Cell.of(made(one)),
          Cell.of(one.agesDays().stream().map(Words::plain).collect(Collectors.joining(", "))),
          Cell.of(Integer.toString(one.replicates())));
    }
    return table;
  }

  private static String made(Study.Series series) {
    List<String> parts = new ArrayList<>();
    series.mix().ifPresent(words -> parts.add("mix " + words));
    series.placing().ifPresent(parts::add);
    series.curing().ifPresent(parts::add);
    series.bar().ifPresent(words -> parts.add("bar: " + words));
    return String.join(", ", parts);
  }

  private PageTable progress() {
    PageTable table =
        PageTable.named("progress", "")
            .names("Series")
            .numbers("Age, days")
            .numbers("Planned")
            .numbers("Listed")
            .numbers("Tested")
            .numbers("Outside the age's tolerance");
    for (Progress one : status.progress()) {
      table.row(
          Cell.of(one.series()),
          Cell.of(Words.plain(one.ageDays())),
          Cell.of(Integer.toString(one.planned())),
          Cell.of(Integer.toString(one.listed())),
          Cell.of(Integer.toString(one.broken())),
          Cell.of(Integer.toString(one.outsideTolerance()))
              .in(one.outsideTolerance() > 0 ? Tone.CAUTION : Tone.PLAIN));
    }
    return table;
  }

  private PageTable due() {
    PageTable table =
        PageTable.named("due", "Still to test, soonest first")
            .names("Specimen")
            .numbers("Age, days")
            .names("Due")
            .names("Tolerance")
            .names("State");
    for (DueBreak one : status.due().stream().limit(MOST_DUE).toList()) {
      table.row(
          Cell.of(one.specimen()),
          Cell.of(Words.plain(one.ageDays())),
          Cell.of(one.due().map(due -> Words.minute(due, data.zone())).orElse("not known")),
          Cell.of(
              one.tolerance()
                  .map(tolerance -> "± " + Words.plain(tolerance.toMinutes() / 60.0) + " h")
                  .orElse("none printed")),
          Cell.of(one.standing().words()).in(tone(one.standing())));
    }
    return table;
  }

  private static Tone tone(Standing standing) {
    return switch (standing) {
      case OVERDUE -> Tone.BAD;
      case NOW -> Tone.GOOD;
      case NOT_KNOWN -> Tone.CAUTION;
      case LATER -> Tone.PLAIN;
    };
  }
}
