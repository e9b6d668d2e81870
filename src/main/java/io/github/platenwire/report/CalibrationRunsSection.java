package io.github.platenwire.report;

import io.github.platenwire.calibration.CalibrationCheck;
import io.github.platenwire.calibration.ClassLimits;
import io.github.platenwire.calibration.CorrectionFit;
import io.github.platenwire.calibration.Judgement;
import io.github.platenwire.calibration.StepErrors;
import io.github.platenwire.chart.CalibrationChart;
import io.github.platenwire.chart.Theme;
import io.github.platenwire.quantity.BothSystems;
import io.github.platenwire.quantity.Unit;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Collectors;

/** What the runs of a calibration show: errors, classes, residuals. Used once. */
final class CalibrationRunsSection {
  private static final int DIGITS = 7;
  private static final int DECIMALS_OF_PERCENT = 3;

  private final ReportSetting setting;
  private final String name;
  private final CalibrationReport.Judged judged;

  CalibrationRunsSection(ReportSetting setting, String name, CalibrationReport.Judged judged) {
    this.setting = setting;
    this.name = name;
    this.judged = judged;
  }

  void add(Page page) throws IOException {
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
            name + " against " + check.limits().title(),
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
