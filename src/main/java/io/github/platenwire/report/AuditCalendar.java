package io.github.platenwire.report;

import io.github.platenwire.audit.AuditReport;
import io.github.platenwire.audit.AuditReport.RecordSeen;
import io.github.platenwire.audit.Severity;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.YearMonth;
import java.time.format.TextStyle;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * The calendar of an archive: each day with how many tests were made, marked by the worst finding
 * of any of them. Weeks begin on Monday (ISO 8601, from memory). Not thread-safe.
 */
final class AuditCalendar {
  /** A longer archive shows only the months in which something was tested. */
  private static final int MOST_MONTHS = 24;

  private final Map<LocalDate, Day> days = new TreeMap<>();

  /**
   * One day.
   *
   * @param tests how many were started on it
   * @param worst the heaviest finding of any of them
   */
  private record Day(int tests, Optional<Severity> worst) {
    Day and(RecordSeen record) {
      Optional<Severity> heavier =
          worst.isEmpty()
                  || (record.worst().isPresent() && record.worst().get().isAtLeast(worst.get()))
              ? record.worst()
              : worst;
      return new Day(tests + 1, heavier);
    }
  }

  AuditCalendar(AuditReport report) {
    for (RecordSeen record : report.records()) {
      record
          .start()
          .map(start -> start.atZone(report.zone()).toLocalDate())
          .ifPresent(
              date ->
                  days.merge(
                      date,
                      new Day(0, Optional.empty()).and(record),
                      (before, none) -> before.and(record)));
    }
  }

  /** The place on the page that a day with findings leads to. */
  static String anchor(LocalDate date) {
    return "day-" + date;
  }

  boolean isEmpty() {
    return days.isEmpty();
  }

  /** The mark of a day, which says the same without colour. */
  static String mark(Optional<Severity> worst) {
    return worst
        .map(
            severity ->
                switch (severity) {
                  case FAULT -> "✕";
                  case DOUBT -> "?";
                  case NOTE -> "i";
                })
        .orElse("✓");
  }

  /** How a day is to be taken. */
  static Tone tone(Optional<Severity> worst) {
    return worst
        .map(
            severity ->
                switch (severity) {
                  case FAULT -> Tone.BAD;
                  case DOUBT -> Tone.CAUTION;
                  case NOTE -> Tone.PLAIN;
                })
        .orElse(Tone.GOOD);
  }

  String markup() {
    StringBuilder out = new StringBuilder("<div class=\"months\">\n");
    months().forEach(month -> month(out, month));
    return out.append("</div>\n").append(legend()).toString();
  }

  private Collection<YearMonth> months() {
    List<YearMonth> with = days.keySet().stream().map(YearMonth::from).distinct().toList();
    YearMonth first = with.stream().min(Comparator.naturalOrder()).orElseThrow();
    YearMonth last = with.stream().max(Comparator.naturalOrder()).orElseThrow();
    if (first.plusMonths(MOST_MONTHS).isBefore(last)) {
      return with;
    }
    List<YearMonth> all = new ArrayList<>();
    for (YearMonth month = first; !month.isAfter(last); month = month.plusMonths(1)) {
      all.add(month);
    }
    return all;
  }

  private void month(StringBuilder out, YearMonth month) {
    String name = month.getMonth().getDisplayName(TextStyle.FULL, Locale.ENGLISH);
    out.append("<table class=\"month\"><thead><tr><th colspan=\"7\">");
    out.append(name).append(' ').append(month.getYear()).append("</th></tr>\n<tr>");
    for (DayOfWeek day : DayOfWeek.values()) {
      String letter = day.getDisplayName(TextStyle.SHORT, Locale.ENGLISH);
      out.append("<th class=\"weekday\" scope=\"col\">").append(letter, 0, 2).append("</th>");
    }
    out.append("</tr></thead><tbody>\n");
    LocalDate monday = month.atDay(1).with(DayOfWeek.MONDAY);
    for (; !monday.isAfter(month.atEndOfMonth()); monday = monday.plusWeeks(1)) {
      out.append("<tr>");
      for (int i = 0; i < 7; i++) {
        LocalDate date = monday.plusDays(i);
        out.append(YearMonth.from(date).equals(month) ? cell(date) : "<td class=\"none\"></td>");
      }
      out.append("</tr>\n");
    }
    out.append("</tbody></table>\n");
  }

  private String cell(LocalDate date) {
    Day day = days.get(date);
    String number = "<span class=\"date\">" + date.getDayOfMonth() + "</span>";
    if (day == null) {
      return "<td class=\"day\">" + number + "</td>";
    }
    String tests = day.tests + (day.tests == 1 ? " test" : " tests");
    String worst = day.worst.map(severity -> ", worst: " + severity.word()).orElse(", no finding");
    String inside =
        number
            + "<span class=\"mark\">"
            + mark(day.worst)
            + "</span><span class=\"tests\">"
            + day.tests
            + "</span>";
    return "<td class=\"day "
        + tone(day.worst).style()
        + "\" title=\""
        + date
        + ": "
        + tests
        + worst
        + "\">"
        + (day.worst.isPresent() ? "<a href=\"#" + anchor(date) + "\">" + inside + "</a>" : inside)
        + "</td>";
  }

  private static String legend() {
    StringBuilder out = new StringBuilder("<p class=\"legend\">");
    key(out, Optional.empty(), "no finding");
    key(out, Optional.of(Severity.NOTE), "a note");
    key(out, Optional.of(Severity.DOUBT), "a doubt");
    key(out, Optional.of(Severity.FAULT), "a fault");
    return out.append(
            "<span class=\"faint\">The number is how many tests began that day.</span></p>\n")
        .toString();
  }

  private static void key(StringBuilder out, Optional<Severity> worst, String words) {
    out.append("<span class=\"key ").append(tone(worst).style()).append("\">");
    out.append(mark(worst)).append("</span> ").append(words).append(" &#160; ");
  }
}
