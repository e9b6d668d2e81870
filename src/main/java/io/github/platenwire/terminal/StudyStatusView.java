package io.github.platenwire.terminal;

import io.github.platenwire.study.StudyStatus;
import io.github.platenwire.study.StudyStatus.DueBreak;
import io.github.platenwire.study.StudyStatus.Progress;
import io.github.platenwire.study.StudyStatus.Standing;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Locale;

/** Shows how far a study has come. Pure; each call to {@link #lines} stands alone. */
public final class StudyStatusView {
  private static final int ROOM_FOR_TABLES = 76;

  private static final DateTimeFormatter DAY =
      DateTimeFormatter.ofPattern("EEE uuuu-MM-dd", Locale.ENGLISH);
  private static final DateTimeFormatter WEEKDAY =
      DateTimeFormatter.ofPattern("EEE", Locale.ENGLISH);
  private static final DateTimeFormatter TIME =
      DateTimeFormatter.ofPattern("HH:mm", Locale.ENGLISH);

  private final StudyStatus status;
  private final Page page;

  /** Whether tables become lists, in which every entry must stand for itself. */
  private final boolean narrow;

  private StudyStatusView(StudyStatus status, int columns, Look look) {
    this.status = status;
    this.page = new Page(columns, look);
    this.narrow = columns < ROOM_FOR_TABLES;
  }

  /**
   * The lines.
   *
   * @param status what is shown
   * @param columns width of the terminal
   * @param look how it looks
   */
  public static List<String> lines(StudyStatus status, int columns, Look look) {
    StudyStatusView view = new StudyStatusView(status, columns, look);
    view.page.paragraph(" ", Style.STRONG, status.title());
    view.page.paragraph(
        " ",
        Style.PLAIN,
        "As of " + view.day(status.now()) + " " + view.time(status.now()) + ", " + status.zone());
    view.calendar();
    view.progress();
    view.companions();
    view.unplanned();
    view.remarks();
    view.verdict();
    return view.page.lines();
  }

  private void calendar() {
    if (status.due().isEmpty()) {
      page.heading("Nothing is left to break");
      return;
    }
    page.heading("Still to break, soonest first");
    TextTable table =
        TextTable.empty()
            .words("due")
            .numbers("at")
            .numbers("tolerance")
            .words("specimen")
            .numbers("age")
            .words("state");
    String before = "";
    for (DueBreak due : status.due()) {
      String day = due.due().map(this::day).orElse("not known");
      table.row(
          day.equals(before) && !narrow ? "" : day,
          due.due().map(this::time).orElse("--"),
          due.tolerance().map(StudyStatusView::tolerance).orElse("--"),
          due.specimen(),
          days(due.ageDays()),
          state(due));
      before = day;
    }
    page.table(table);
  }

  private String state(DueBreak due) {
    return switch (due.standing()) {
      case OVERDUE ->
          page.look().glyphs().failed()
              + " overdue since "
              + due.until().map(time -> near(time, due)).orElse("");
      case NOW ->
          page.look().glyphs().arrow()
              + " now"
              + due.tolerance()
                  .flatMap(any -> due.until())
                  .map(time -> ", until " + near(time, due))
                  .orElse("");
      case LATER -> due.from().map(time -> "from " + near(time, due)).orElse("");
      case NOT_KNOWN -> "its cast time is not given";
    };
  }

  /** A moment beside a day: by its time alone on that day, with its weekday in that week. */
  private String near(Instant moment, DueBreak due) {
    LocalDate row = due.due().map(this::date).orElse(date(status.now()));
    long days = Math.abs(ChronoUnit.DAYS.between(row, date(moment)));
    if (days == 0) {
      return time(moment);
    }
    return (days < 7 ? WEEKDAY.format(moment.atZone(status.zone())) : day(moment))
        + " "
        + time(moment);
  }

  private LocalDate date(Instant moment) {
    return LocalDate.ofInstant(moment, status.zone());
  }

  private String day(Instant moment) {
    return DAY.format(moment.atZone(status.zone()));
  }

  private String time(Instant moment) {
    return TIME.format(moment.atZone(status.zone()));
  }

  /** In the unit in which it is a handy number: 30 min, 6 h, 2 d. */
  private static String tolerance(Duration tolerance) {
    if (tolerance.compareTo(Duration.ofHours(1)) < 0) {
      return "± " + tolerance.toMinutes() + " min";
    }
    boolean days = tolerance.toHours() >= 48 && tolerance.toHours() % 24 == 0;
    return days ? "± " + tolerance.toDays() + " d" : "± " + tolerance.toHours() + " h";
  }

  static String days(double ageDays) {
    if (Double.isNaN(ageDays)) {
      return "age not known";
    }
    return BigDecimal.valueOf(ageDays)
            .setScale(2, RoundingMode.HALF_EVEN)
            .stripTrailingZeros()
            .toPlainString()
        + " d";
  }

  private void progress() {
    page.heading("Done");
    TextTable table =
        TextTable.empty()
            .words("series")
            .numbers("age")
            .numbers("broken")
            .numbers("planned")
            .numbers("in the table")
            .words("state");
    String before = "";
    for (Progress one : status.progress()) {
      table.row(
          one.series().equals(before) && !narrow ? "" : one.series(),
          days(one.ageDays()),
          Integer.toString(one.broken()),
          one.planned() == 0 ? "--" : Integer.toString(one.planned()),
          Integer.toString(one.listed()),
          remark(one));
      before = one.series();
    }
    page.table(table);
  }

  private String remark(Progress one) {
    String outside =
        one.outsideTolerance() == 0
            ? ""
            : ", " + one.outsideTolerance() + " outside the age's tolerance";
    boolean complete = one.planned() > 0 && one.broken() >= one.planned();
    return complete ? page.look().glyphs().passed() + " complete" + outside : open(one) + outside;
  }

  private static String open(Progress one) {
    int left = Math.max(0, one.planned() - one.broken());
    return left == 0 ? "none planned" : left + " to break";
  }

  private void companions() {
    if (!status.outOfRange().isEmpty()) {
      page.heading("Companion sets out of range");
      status
          .outOfRange()
          .forEach(
              set ->
                  page.item(
                      set.series() + " at " + days(set.ageDays()) + ": " + set.verdict().words()));
    }
  }

  private void unplanned() {
    if (!status.unplanned().isEmpty()) {
      page.heading("In the table, but not in the plan");
      status.unplanned().forEach(one -> page.item(one.specimen() + ": " + one.reason()));
    }
  }

  private void remarks() {
    if (!status.remarks().isEmpty()) {
      page.heading("Remarks");
      status.remarks().forEach(page::item);
    }
  }

  private void verdict() {
    long now = status.due().stream().filter(due -> due.standing() == Standing.NOW).count();
    long overdue = status.overdue();
    boolean fine = overdue == 0 && status.outOfRange().isEmpty();
    String breaks =
        (overdue == 0
                ? "Nothing is overdue"
                : count(overdue, "break is", "breaks are") + " overdue")
            + (now == 0 ? "" : ", " + now + " may be done now");
    String sets =
        status.outOfRange().isEmpty()
            ? "no companion set is out of range."
            : count(status.outOfRange().size(), "companion set is", "companion sets are")
                + " out of range.";
    String mark = fine ? page.look().glyphs().passed() : page.look().glyphs().failed();
    page.blank().paragraph(" " + mark + " ", fine ? Style.GOOD : Style.BAD, breaks + "; " + sets);
  }

  private static String count(long count, String one, String several) {
    return count + " " + (count == 1 ? one : several);
  }
}
