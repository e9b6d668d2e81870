package io.github.platenwire.report;

import io.github.platenwire.audit.AuditReport;
import io.github.platenwire.audit.AuditReport.RecordSeen;
import io.github.platenwire.audit.AuditReport.RegisterSeen;
import io.github.platenwire.audit.Check;
import io.github.platenwire.audit.Finding;
import io.github.platenwire.audit.Severity;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * The page of an audit for a lab's manager: the verdict, the archive day by day, each finding by
 * its weight with its place and what to do, the witnesses, and what was looked at. Not thread-safe.
 */
public final class AuditPage {
  /** More findings of one check than this fill pages without telling more. */
  private static final int MOST_OF_A_CHECK = 200;

  private static final List<Severity> HEAVIEST_FIRST =
      List.of(Severity.FAULT, Severity.DOUBT, Severity.NOTE);

  private final ReportSetting setting;
  private final AuditReport report;
  private final Page page;
  private final Map<String, RecordSeen> records = new HashMap<>();
  private final Set<LocalDate> anchored = new HashSet<>();

  private AuditPage(ReportSetting setting, AuditReport report) {
    this.setting = setting;
    this.report = report;
    String made = Words.day(report.made(), report.zone());
    this.page =
        new Page(
            "Audit of " + report.lab(),
            capital(report.scope()) + ", looked at on " + made,
            "Audit of " + report.lab() + " · " + made,
            setting.first());
    report.records().forEach(record -> records.put(record.test(), record));
  }

  /** Makes the page. */
  public static Page of(ReportSetting setting, AuditReport report) {
    AuditPage audit = new AuditPage(setting, report);
    audit.headlines();
    audit.verdict();
    audit.calendar();
    HEAVIEST_FIRST.forEach(audit::findings);
    audit.witnesses();
    audit.lookedAt();
    return audit.page;
  }

  private void headlines() {
    List<Page.Headline> headlines = new ArrayList<>();
    headlines.add(
        new Page.Headline(
            "Records", Inline.text(grouped(report.records().size())), Inline.faint(period())));
    for (Severity severity : HEAVIEST_FIRST) {
      headlines.add(
          new Page.Headline(
              capital(severity.word()) + "s",
              Inline.text(grouped(report.count(severity))),
              Inline.faint(meaning(severity))));
    }
    page.headlines(headlines);
  }

  private String period() {
    if (report.from().isEmpty() || report.to().isEmpty()) {
      return "none with a start";
    }
    return Words.day(report.from().get(), report.zone())
        + " to "
        + Words.day(report.to().get(), report.zone());
  }

  private static String meaning(Severity severity) {
    return switch (severity) {
      case FAULT -> "cannot be trusted as it stands";
      case DOUBT -> "look before you defend it";
      case NOTE -> "good to know";
    };
  }

  private void verdict() {
    Optional<Severity> worst = report.worst();
    long touched = report.records().stream().filter(record -> record.worst().isPresent()).count();
    if (worst.isEmpty()) {
      page.note(
          Tone.GOOD,
          Inline.text(
              "Nothing was found. Every record that was looked at stands as it was closed."));
      return;
    }
    String words =
        grouped(touched)
            + " of "
            + grouped(report.records().size())
            + " records have findings; the heaviest is a "
            + worst.get().word()
            + ". ";
    Inline start =
        Inline.link(
            "#" + worst.get().word(), Inline.text("Begin with the " + worst.get().word() + "s"));
    page.note(AuditCalendar.tone(worst), Inline.text(words).and(start).and("."));
  }

  private void calendar() {
    AuditCalendar calendar = new AuditCalendar(report);
    if (calendar.isEmpty()) {
      return;
    }
    page.section("The archive day by day");
    page.markup(calendar.markup());
    long elsewhere = report.findings().stream().filter(f -> day(f).isEmpty()).count();
    if (elsewhere > 0) {
      page.remark(
          grouped(elsewhere)
              + (elsewhere == 1 ? " finding belongs" : " findings belong")
              + " to no day, such as those of a register or of a file whose head cannot be read;"
              + " they are listed below with the others.");
    }
  }

  private Optional<LocalDate> day(Finding finding) {
    return finding
        .test()
        .flatMap(test -> Optional.ofNullable(records.get(test)))
        .flatMap(RecordSeen::start)
        .map(start -> start.atZone(report.zone()).toLocalDate());
  }

  private void findings(Severity severity) {
    Map<Check, List<Finding>> byCheck = new LinkedHashMap<>();
    for (Finding finding : report.findings()) {
      if (finding.severity() == severity) {
        byCheck.computeIfAbsent(finding.check(), check -> new ArrayList<>()).add(finding);
      }
    }
    if (byCheck.isEmpty()) {
      return;
    }
    page.markup("<div id=\"" + severity.word() + "\"></div>\n");
    page.section(
        AuditCalendar.mark(Optional.of(severity))
            + " "
            + grouped(report.count(severity))
            + " "
            + severity.word()
            + (report.count(severity) == 1 ? "" : "s"));
    byCheck.forEach(this::check);
  }

  private void check(Check check, List<Finding> findings) {
    page.part(check.meaning());
    page.paragraph(Inline.strong("What to do: ").and(check.advice()));
    PageTable table =
        PageTable.named(check.id(), "")
            .words("Record")
            .words("Place")
            .words("Expected")
            .words("Seen");
    findings.stream().limit(MOST_OF_A_CHECK).forEach(finding -> row(table, finding));
    page.markup("<div class=\"findings\">\n").table(table).markup("</div>\n");
    if (findings.size() > MOST_OF_A_CHECK) {
      page.remark(
          "and "
              + grouped(findings.size() - MOST_OF_A_CHECK)
              + " more of the same; 'platenwire audit --csv' lists them all");
    }
  }

  private void row(PageTable table, Finding finding) {
    table.row(
        Cell.of(record(finding)),
        Cell.of(place(finding)),
        Cell.of(finding.expected()),
        Cell.of(finding.seen()));
  }

  /** The record, and the place that its day in the calendar leads to. */
  private Inline record(Finding finding) {
    if (finding.test().isEmpty()) {
      return Inline.faint("of no record");
    }
    String test = finding.test().get();
    RecordSeen record = records.get(test);
    Inline anchor =
        day(finding)
            .filter(anchored::add)
            .map(
                date ->
                    Inline.ofMarkup("<span id=\"" + AuditCalendar.anchor(date) + "\"></span>", ""))
            .orElse(Inline.EMPTY);
    if (record == null) {
      return anchor.and(Inline.code(test));
    }
    Inline name = setting.record(record.file(), Inline.text(record.specimen().orElse(test)));
    Inline day =
        Inline.faint(record.start().map(at -> Words.minute(at, report.zone())).orElse(test));
    return anchor.and(Inline.lines(List.of(name, day)));
  }

  private Inline place(Finding finding) {
    String file = finding.location().file();
    String name = file.substring(file.lastIndexOf('/') + 1);
    StringBuilder where = new StringBuilder();
    finding.location().line().ifPresent(line -> where.append("line ").append(line));
    finding
        .location()
        .offset()
        .ifPresent(
            bytes -> where.append(where.isEmpty() ? "" : ", ").append("byte ").append(bytes));
    Inline link = setting.record(file, Inline.code(name));
    return where.isEmpty() ? link : Inline.lines(List.of(link, Inline.faint(where.toString())));
  }

  private void witnesses() {
    if (report.registers().isEmpty()) {
      return;
    }
    page.section("Registers and their witnesses");
    page.paragraph(
        "The witness stands for every line of a register up to its last. Copy it, or keep this"
            + " page: a register that was written anew would have another.");
    PageTable table =
        PageTable.named("registers", "")
            .words("Rig")
            .numbers("Lines", "lines")
            .words("Witness of the last line");
    for (RegisterSeen register : report.registers()) {
      table.row(
          Cell.of(register.rig()),
          Cell.of(grouped(register.lines()), (double) register.lines()),
          Cell.of(register.witness().map(Inline::code).orElse(Inline.faint("no line yet"))));
    }
    page.table(table);
  }

  private void lookedAt() {
    page.section("What was looked at");
    page.facts(
        new Facts()
            .add("Scope", report.scope())
            .add("Records", grouped(report.records().size()) + ", " + period())
            .add("Files", grouped(report.files()))
            .add("Rows of readings", grouped(report.rows()))
            .add("Read in all", megabytes(report.bytes()))
            .add("Made", Words.moment(report.made(), report.zone()))
            .add("With", report.program()));
    page.paragraph(
        "Each raw file was read from its first byte to its last and held against its own seals, its"
            + " summary, the register and its signatures, its calibration and method, and the other"
            + " records. Nothing was written.");
    page.remark(
        "An audit shows what was changed after a test, not whether a specimen was the right one or"
            + " the frame was sound. Whether concrete is accepted is for the specified standard and"
            + " a licensed engineer to say.");
  }

  private static String grouped(long number) {
    return String.format(Locale.ROOT, "%,d", number).replace(',', '\u2009');
  }

  private static String megabytes(long bytes) {
    return String.format(Locale.ROOT, "%.1f MB", bytes / 1e6);
  }

  private static String capital(String words) {
    return words.isEmpty()
        ? words
        : words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
  }
}
