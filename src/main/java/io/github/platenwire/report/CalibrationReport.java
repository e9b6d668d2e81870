package io.github.platenwire.report;

import io.github.platenwire.calibration.CalibrationCheck;
import io.github.platenwire.calibration.ClassLimits;
import io.github.platenwire.calibration.CorrectionFit;
import io.github.platenwire.calibration.Judgement;
import io.github.platenwire.calibration.StepErrors;
import io.github.platenwire.chart.CalibrationChart;
import io.github.platenwire.chart.Theme;
import io.github.platenwire.lab.Calibration;
import io.github.platenwire.lab.Channel;
import io.github.platenwire.lab.LabException;
import io.github.platenwire.quantity.BothSystems;
import io.github.platenwire.quantity.Unit;
import java.io.IOException;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;

/**
 * The report of a calibration: certificate and due date, errors against limits, class of each
 * range, what the correction leaves over. Used once; not thread-safe.
 */
public final class CalibrationReport {
  private static final int DIGITS = 7;
  private static final int DECIMALS_OF_PERCENT = 3;

  private final ReportSetting setting;
  private final Calibration calibration;

  private CalibrationReport(ReportSetting setting, Calibration calibration) {
    this.setting = setting;
    this.calibration = calibration;
  }

  /**
   * What the runs of a calibration come to.
   *
   * @param check its figures
   * @param fit the correction in use
   * @param stated the class that its file states, if it does
   * @param judged the class against whose limits each figure is told
   * @param met whether the stated class is met, or any class where none is stated
   * @param words the same in a sentence
   */
  public record Judged(
      CalibrationCheck check,
      CorrectionFit fit,
      Optional<ClassLimits> stated,
      ClassLimits judged,
      boolean met,
      String words) {}

  /**
   * Makes the page.
   *
   * @param judged what its runs come to; empty if the file holds none
   * @throws LabException if a rig file cannot be used
   * @throws IOException if the chart cannot be drawn
   */
  public static Page of(ReportSetting setting, Calibration calibration, Optional<Judged> judged)
      throws LabException, IOException {
    return new CalibrationReport(setting, calibration).page(judged);
  }

  private Page page(Optional<Judged> judged) throws LabException, IOException {
    Page page =
        new Page(
            "Calibration " + calibration.name(),
            setting.lab().settings().labName()
                + ", certificate "
                + calibration.certificate()
                + " of "
                + calibration.laboratory(),
            "calibration " + calibration.name() + " · certificate " + calibration.certificate(),
            setting.first());
    LocalDate today = LocalDate.ofInstant(setting.now(), setting.zone());
    page.headlines(headlines(judged, today));
    due(page, today);
    judged.ifPresentOrElse(
        there -> page.note(there.met() ? Tone.GOOD : Tone.BAD, Inline.text(there.words())),
        () ->
            page.note(
                Tone.CAUTION,
                Inline.text(
                    "The file holds no runs, so nothing can be computed: what the certificate says"
                        + " is taken as it stands.")));
    facts(page);
    if (judged.isPresent()) {
      runs(page, judged.get());
    }
    LastWords.add(
        page,
        setting,
        judged.map(there -> List.of(there.check().limits().title())).orElse(List.of()));
    return page;
  }

  private List<Page.Headline> headlines(Optional<Judged> judged, LocalDate today) {
    List<Page.Headline> all = new ArrayList<>();
    calibration
        .accuracyClass()
        .ifPresent(
            name ->
                all.add(
                    new Page.Headline(
                        "Class stated",
                        Inline.text(name),
                        Inline.faint(judged.map(j -> j.check().limits().title()).orElse("")))));
    calibration
        .due()
        .ifPresent(
            due ->
                all.add(
                    new Page.Headline(
                        "Due", Inline.text(due.toString()), Inline.faint(until(due, today)))));
    calibration
        .expandedUncertaintyPercent()
        .ifPresent(
            percent ->
                all.add(
                    new Page.Headline(
                        "Uncertainty (k = 2)",
                        Inline.text(Words.plain(percent) + " %"),
                        Inline.faint("of the reading, by the certificate"))));
    return all;
  }

  private static String until(LocalDate due, LocalDate today) {
    long days = ChronoUnit.DAYS.between(today, due);
    return days < 0 ? "overdue by " + Words.days(-days) : "in " + Words.days(days);
  }

  private void due(Page page, LocalDate today) {
    calibration
        .due()
        .filter(today::isAfter)
        .ifPresent(
            due ->
                page.note(
                    Tone.BAD,
                    Inline.text(
                        "This calibration was due on "
                            + due
                            + "; until there is a new one, every test says so.")));
    if (calibration.due().isEmpty()) {
      page.note(Tone.CAUTION, Inline.text("No due date is stated."));
    }
  }

  private void facts(Page page) throws LabException {
    Facts facts = new Facts();
    facts.add("Certificate", calibration.certificate());
    facts.add("Laboratory", calibration.laboratory());
    facts.add("Date", calibration.date().toString());
    facts.add("Due", calibration.due().map(LocalDate::toString).orElse("not stated"));
    facts.add("Class stated", calibration.accuracyClass().orElse("none"));
    List<String> used = users();
    facts.add("Used by", used.isEmpty() ? "no channel of a rig" : String.join(", ", used));
    facts.add(
        "File",
        setting.link(
            setting.lab().root().resolve("calibrations").resolve(calibration.name() + ".toml")));
    page.section("Certificate").facts(facts);
  }

  private List<String> users() throws LabException {
    List<String> users = new ArrayList<>();
    for (String rig : setting.lab().rigNames()) {
      for (Channel channel : setting.lab().rig(rig).channels()) {
        if (channel.calibration().equals(Optional.of(calibration.name()))) {
          users.add(rig + " " + channel.name());
        }
      }
    }
    return users;
  }

  private void runs(Page page, Judged judged) throws IOException {
    CalibrationCheck check = judged.check();
    page.section("Errors against the limits");
    page.paragraph(
        "Held against "
            + check.limits().title()
            + ", correction: "
            + check.correction().words()
            + ".");
    page.chart(
        CalibrationChart.of(
            check,
            calibration.name() + " against " + check.limits().title(),
            "correction: " + check.correction().words(),
            judged.stated(),
            Theme.LIGHT),
        "Relative error of indication over the applied value, each run, against the limits");
    page.table(steps(check));
    page.remark(
        "Error, repeatability, reversibility and resolution are in percent of the applied value.");
    page.section("Classes").list(ranges(check));
    page.section("Each figure against class " + judged.judged().name())
        .list(judgements(check, judged.judged()));
    page.section("Left over after the correction").paragraph(leftOver(judged.fit(), check));
    page.table(residuals(judged.fit(), check.runs().unit()));
    page.list(check.remarks().stream().map(Inline::text).toList());
  }

  private PageTable steps(CalibrationCheck check) {
    String unit = check.runs().unit().symbol();
    PageTable table =
        PageTable.named("steps", "")
            .numbers("Applied, " + unit, "applied")
            .numbers("Indicated, " + unit, "indicated")
            .numbers("Error, %", "error_percent")
            .numbers("Repeatability, %", "repeatability_percent")
            .numbers("Reversibility, %", "reversibility_percent")
            .numbers("Resolution, %", "resolution_percent")
            .names("Class");
    for (StepErrors step : check.steps()) {
      table.row(
          number(step.applied()),
          number(step.indicated()),
          percent(OptionalDouble.of(step.errorPercent())),
          percent(step.repeatabilityPercent()),
          percent(step.reversibilityPercent()),
          percent(step.resolutionPercent()),
          Cell.of(check.classOf(step).map(ClassLimits::name).orElse("none")));
    }
    return table;
  }

  private static Cell number(double value) {
    return Cell.of(Words.shortest(value, DIGITS), value);
  }

  private static Cell percent(OptionalDouble value) {
    return value.isPresent()
        ? Cell.of(Words.decimals(value.getAsDouble(), DECIMALS_OF_PERCENT), value.getAsDouble())
        : Cell.of("–", Double.NaN);
  }

  private List<Inline> ranges(CalibrationCheck check) {
    List<Inline> items = new ArrayList<>();
    for (CalibrationCheck.Range range : check.ranges()) {
      OptionalDouble lower = range.lowerLimit();
      items.add(
          Inline.strong("Class " + range.className())
              .and(
                  " from "
                      + both(check, range.from())
                      + " to "
                      + both(check, range.to())
                      + (lower.isPresent() && lower.getAsDouble() > 0
                          ? "; the resolution allows it from "
                              + both(check, lower.getAsDouble())
                              + " up"
                          : "")));
    }
    return items.isEmpty()
        ? List.of(Inline.text("None: the greatest applied value is in no class."))
        : items;
  }

  private List<Inline> judgements(CalibrationCheck check, ClassLimits judged) {
    List<Inline> items = new ArrayList<>();
    check
        .zeroJudgement(judged)
        .ifPresent(zero -> items.add(Inline.text(zero.words() + " of the greatest applied value")));
    for (StepErrors step : check.steps()) {
      items.add(
          Inline.text(
              "at "
                  + both(check, step.applied())
                  + ": "
                  + check.judgements(step, judged).stream()
                      .map(Judgement::words)
                      .collect(Collectors.joining("; "))));
    }
    return items;
  }

  private String both(CalibrationCheck check, double value) {
    Unit unit = check.runs().unit();
    return BothSystems.words(unit.toBase(value), unit.quantity(), setting.first());
  }

  private static String leftOver(CorrectionFit fit, CalibrationCheck check) {
    OptionalDouble standard = fit.standardUncertainty();
    OptionalDouble percent = fit.standardUncertaintyPercent(0);
    return standard.isPresent() && percent.isPresent()
        ? "Standard uncertainty by the residuals "
            + Words.significant(standard.getAsDouble(), 2)
            + " "
            + check.runs().unit().symbol()
            + ", or "
            + Words.significant(percent.getAsDouble(), 2)
            + " % of the reading, from "
            + fit.residuals().size()
            + " readings less "
            + fit.parameters()
            + " fitted."
        : "Unknown: there are no more readings than the correction has numbers.";
  }

  private static PageTable residuals(CorrectionFit fit, Unit unit) {
    String symbol = unit.symbol();
    PageTable table =
        PageTable.named("residuals", "Residuals: corrected less applied")
            .numbers("Applied, " + symbol, "applied")
            .numbers("Indicated, " + symbol, "indicated")
            .numbers("Residual, " + symbol, "residual")
            .numbers("Residual, %", "residual_percent");
    for (CorrectionFit.Residual residual : fit.residuals()) {
      table.row(
          number(residual.point().applied()),
          number(residual.point().indicated()),
          Cell.of(Words.shortest(residual.value(), 3), residual.value()),
          percent(OptionalDouble.of(residual.percent())));
    }
    return table;
  }
}
