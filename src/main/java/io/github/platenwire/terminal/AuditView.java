package io.github.platenwire.terminal;

import io.github.platenwire.audit.AuditReport;
import io.github.platenwire.audit.AuditReport.RegisterSeen;
import io.github.platenwire.audit.Check;
import io.github.platenwire.audit.Finding;
import io.github.platenwire.audit.Severity;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** Shows what an audit found, the heaviest first. Pure. */
public final class AuditView {
  private static final int INDENT = 2;
  private static final int DETAIL = 6;
  private static final int LABEL = 10;

  /** More of one kind would push everything else off the screen. */
  private static final int MOST_OF_A_CHECK = 12;

  private static final double MEGABYTE = 1e6;
  private static final DateTimeFormatter TIME =
      DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm", Locale.ROOT);

  private final AuditReport report;
  private final int room;
  private final Look look;
  private final List<String> lines = new ArrayList<>();

  private AuditView(AuditReport report, int columns, Look look) {
    this.report = report;
    this.room = Math.max(40, columns - 1);
    this.look = look;
  }

  /**
   * The lines.
   *
   * @param columns width of the terminal
   */
  public static List<String> lines(AuditReport report, int columns, Look look) {
    AuditView view = new AuditView(report, columns, look);
    view.lookedAt();
    Severity[] severities = Severity.values();
    for (int i = severities.length - 1; i >= 0; i--) {
      view.findings(severities[i]);
    }
    view.verdict();
    return List.copyOf(view.lines);
  }

  private void lookedAt() {
    plain(Style.STRONG, 0, "Audit of " + report.lab() + ": " + report.scope());
    String dots = " " + look.glyphs().dot() + " ";
    plain(Style.PLAIN, 0, count(report.records().size(), "record") + span());
    plain(
        Style.PLAIN,
        0,
        count(report.rows(), "row")
            + dots
            + count(report.files(), "file")
            + dots
            + String.format(Locale.ROOT, "%.1f MB", report.bytes() / MEGABYTE));
    for (RegisterSeen register : report.registers()) {
      plain(
          Style.PLAIN,
          0,
          "Register "
              + register.rig()
              + ": "
              + count(register.lines(), "line")
              + register.witness().map(witness -> ", witness " + witness).orElse(""));
    }
  }

  private String span() {
    if (report.from().isEmpty() || report.to().isEmpty()) {
      return "";
    }
    return " from " + time(report.from().get()) + " to " + time(report.to().get());
  }

  private String time(Instant instant) {
    ZoneId zone = report.zone();
    return TIME.format(instant.atZone(zone));
  }

  private static String count(long number, String word) {
    return String.format(Locale.ROOT, "%,d", number).replace(',', ' ')
        + " "
        + word
        + (number == 1 ? "" : "s");
  }

  /** Check by check: what it means and what to do is said once. */
  private void findings(Severity severity) {
    if (report.count(severity) == 0) {
      return;
    }
    Map<Check, List<Finding>> byCheck = new LinkedHashMap<>();
    for (Finding finding : report.findings()) {
      if (finding.severity() == severity) {
        byCheck.computeIfAbsent(finding.check(), check -> new ArrayList<>()).add(finding);
      }
    }
    lines.add("");
    lines.add(
        look.palette().paint(style(severity), count(report.count(severity), severity.word())));
    byCheck.forEach(this::check);
  }

  private void check(Check check, List<Finding> findings) {
    lines.add("");
    Style style = style(check.severity());
    labelled(style, "", INDENT, INDENT, check.meaning() + " [" + check.id() + "]");
    String arrow = look.glyphs().arrow();
    labelled(Style.PLAIN, arrow, INDENT, INDENT + arrow.length() + 1, check.advice());
    findings.stream().limit(MOST_OF_A_CHECK).forEach(this::finding);
    if (findings.size() > MOST_OF_A_CHECK) {
      labelled(
          Style.PLAIN,
          "",
          DETAIL,
          DETAIL,
          "and " + (findings.size() - MOST_OF_A_CHECK) + " more; --csv and --json list them all");
    }
  }

  private static Style style(Severity severity) {
    return switch (severity) {
      case NOTE -> Style.STRONG;
      case DOUBT -> Style.WARNING;
      case FAULT -> Style.BAD;
    };
  }

  private void finding(Finding finding) {
    String offset =
        finding.location().offset().isPresent()
            ? ", byte " + finding.location().offset().getAsLong()
            : "";
    labelled(Style.STRONG, "", DETAIL, DETAIL, finding.location().words() + offset);
    labelled(Style.PLAIN, "expected", DETAIL, DETAIL + LABEL, finding.expected());
    labelled(Style.PLAIN, "seen", DETAIL, DETAIL + LABEL, finding.seen());
  }

  private void verdict() {
    lines.add("");
    if (report.findings().isEmpty()) {
      plain(
          Style.GOOD,
          0,
          look.glyphs().passed() + " Nothing was found: every record, summary and register holds.");
      return;
    }
    List<String> parts = new ArrayList<>();
    Severity[] severities = Severity.values();
    for (int i = severities.length - 1; i >= 0; i--) {
      parts.add(count(report.count(severities[i]), severities[i].word()));
    }
    boolean notesOnly = report.worst().filter(worst -> worst == Severity.NOTE).isPresent();
    plain(
        notesOnly ? Style.GOOD : Style.STRONG,
        0,
        "Together: "
            + String.join(", ", parts)
            + (notesOnly ? ". Every record, summary and register holds." : "."));
  }

  private void plain(Style style, int indent, String text) {
    for (String line : TextWidth.wrap(look.glyphs().text(text), room - indent)) {
      lines.add(" ".repeat(indent) + look.palette().paint(style, line));
    }
  }

  private void labelled(Style style, String name, int indent, int column, String text) {
    String before = TextWidth.padRight(" ".repeat(indent) + name, column);
    for (String line : TextWidth.wrap(look.glyphs().text(text), room - column)) {
      lines.add(before + look.palette().paint(style, line));
      before = " ".repeat(column);
    }
  }
}
