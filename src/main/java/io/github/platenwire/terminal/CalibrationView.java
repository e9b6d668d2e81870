package io.github.platenwire.terminal;

import io.github.platenwire.calibration.CalibrationCheck;
import io.github.platenwire.calibration.ClassLimits;
import io.github.platenwire.calibration.Correction;
import io.github.platenwire.calibration.CorrectionFit;
import io.github.platenwire.calibration.Judgement;
import io.github.platenwire.calibration.StepErrors;
import io.github.platenwire.quantity.BothSystems;
import io.github.platenwire.quantity.Unit;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Collectors;

/** Shows a calibration held against its limits. Pure; each call to {@link #lines} stands alone. */
public final class CalibrationView {
  private final CalibrationCheck check;
  private final Page page;
  private final Look look;
  private final Unit unit;

  private CalibrationView(CalibrationCheck check, int columns, Look look) {
    this.check = check;
    this.page = new Page(columns, look);
    this.look = look;
    this.unit = check.runs().unit();
  }

  /**
   * The lines.
   *
   * @param title the calibration with its certificate and dates
   * @param check its figures
   * @param fit the correction in use
   * @param judged the class against whose limits each figure is told
   * @param verdict what it comes to, in a sentence
   * @param met whether that is well
   * @param columns width of the terminal
   * @param look how it looks
   */
  public static List<String> lines(
      String title,
      CalibrationCheck check,
      CorrectionFit fit,
      ClassLimits judged,
      String verdict,
      boolean met,
      int columns,
      Look look) {
    CalibrationView view = new CalibrationView(check, columns, look);
    view.page.paragraph(" ", Style.STRONG, title);
    view.page.paragraph(" ", Style.PLAIN, view.basis(fit)).blank();
    view.page.table(view.table()).blank();
    view.page.paragraph(
        " ",
        Style.PLAIN,
        "q error of indication, b repeatability, v reversibility, a resolution; in percent of the"
            + " applied value");
    view.ranges();
    view.leftOver(fit);
    view.judgements(judged);
    view.remarks();
    view.page.blank();
    String mark = met ? look.glyphs().passed() : look.glyphs().failed();
    view.page.paragraph(" " + mark + " ", met ? Style.GOOD : Style.BAD, verdict);
    return view.page.lines();
  }

  private String basis(CorrectionFit fit) {
    String how =
        fit.correction().equals(Correction.NONE)
            ? "as indicated, nothing is corrected"
            : "after the correction: " + fit.correction().words();
    return "Held against " + check.limits().title() + ", " + how + ".";
  }

  private TextTable table() {
    TextTable table =
        TextTable.empty()
            .numbers("applied " + unit.symbol())
            .numbers("shown " + unit.symbol())
            .numbers("q %")
            .numbers("b %")
            .numbers("v %")
            .numbers("a %")
            .numbers("class");
    for (StepErrors step : check.steps()) {
      table.row(
          plain(step.applied(), 7),
          plain(step.indicated(), 7),
          Shown.decimal(step.errorPercent(), 3),
          percent(step.repeatabilityPercent()),
          percent(step.reversibilityPercent()),
          percent(step.resolutionPercent()),
          check.classOf(step).map(ClassLimits::name).orElse("none"));
    }
    return table;
  }

  private static String percent(OptionalDouble value) {
    return value.isPresent() ? Shown.decimal(value.getAsDouble(), 3) : "--";
  }

  private void ranges() {
    page.heading("Classes");
    List<CalibrationCheck.Range> ranges = check.ranges();
    if (ranges.isEmpty()) {
      page.item("none: the greatest applied value is in no class");
    }
    for (CalibrationCheck.Range range : ranges) {
      OptionalDouble lower = range.lowerLimit();
      page.item(
          "class "
              + range.className()
              + " from "
              + both(range.from())
              + " to "
              + both(range.to())
              + (lower.isPresent() && lower.getAsDouble() > 0
                  ? "; the resolution allows it from " + both(lower.getAsDouble()) + " up"
                  : ""));
    }
  }

  private void leftOver(CorrectionFit fit) {
    OptionalDouble standard = fit.standardUncertainty();
    OptionalDouble percent = fit.standardUncertaintyPercent(0);
    page.heading("Left over at the calibrated steps");
    page.item(
        standard.isPresent() && percent.isPresent()
            ? "standard uncertainty "
                + ResultView.twoDigits(standard.getAsDouble())
                + " "
                + unit.symbol()
                + ", or "
                + ResultView.twoDigits(percent.getAsDouble())
                + " % of the reading, from "
                + fit.residuals().size()
                + " readings less "
                + fit.parameters()
                + " fitted"
            : "unknown: there are no more readings than the correction has numbers");
  }

  private void judgements(ClassLimits judged) {
    page.heading("Each figure against " + check.limits().title() + " class " + judged.name());
    check
        .zeroJudgement(judged)
        .ifPresent(zero -> page.item(zero.words() + " of the greatest applied value"));
    for (StepErrors step : check.steps()) {
      page.item(
          "at "
              + both(step.applied())
              + ": "
              + check.judgements(step, judged).stream()
                  .map(Judgement::words)
                  .collect(Collectors.joining("; ")));
    }
  }

  private void remarks() {
    if (!check.remarks().isEmpty()) {
      page.heading("Remarks");
      check.remarks().forEach(page::item);
    }
  }

  private String both(double value) {
    return BothSystems.words(unit.toBase(value), unit.quantity(), look.first());
  }

  private static String plain(double value, int digits) {
    BigDecimal rounded =
        BigDecimal.valueOf(value).round(new MathContext(digits, RoundingMode.HALF_EVEN));
    return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
  }
}
