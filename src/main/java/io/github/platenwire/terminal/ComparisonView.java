package io.github.platenwire.terminal;

import io.github.platenwire.quantity.Quantity;
import io.github.platenwire.quantity.Unit;
import io.github.platenwire.quantity.UnitSystem;
import io.github.platenwire.statistics.Interval;
import io.github.platenwire.study.CrackRatio;
import io.github.platenwire.study.StudyComparison;
import io.github.platenwire.study.StudyComparison.AgeComparison;
import io.github.platenwire.study.StudyComparison.CrackComparison;
import io.github.platenwire.study.StudyComparison.SeriesSet;
import io.github.platenwire.study.StudyComparison.SpecimenValue;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.List;
import java.util.OptionalDouble;

/** Shows series held against their reference. Pure; each call to {@link #lines} stands alone. */
public final class ComparisonView {
  private final StudyComparison comparison;
  private final Page page;
  private final Look look;
  private final Unit unit;
  private final Unit other;

  private ComparisonView(StudyComparison comparison, int columns, Look look) {
    this.comparison = comparison;
    this.page = new Page(columns, look);
    this.look = look;
    boolean siFirst = look.first() == UnitSystem.SI;
    this.unit = siFirst ? comparison.subject().unit() : comparison.subject().inchPoundUnit();
    this.other = siFirst ? comparison.subject().inchPoundUnit() : comparison.subject().unit();
  }

  /**
   * The lines.
   *
   * @param title the study's title
   * @param comparison what is shown
   * @param columns width of the terminal
   * @param look how it looks
   */
  public static List<String> lines(
      String title, StudyComparison comparison, int columns, Look look) {
    ComparisonView view = new ComparisonView(comparison, columns, look);
    view.page.paragraph(" ", Style.STRONG, title);
    view.page.paragraph(" ", Style.PLAIN, view.subject());
    view.sets();
    view.strip();
    view.against();
    view.trends();
    comparison.cracks().forEach(view::cracks);
    view.observations();
    view.list("Mind", comparison.warnings());
    view.page
        .blank()
        .paragraph(
            " ",
            Style.PLAIN,
            "Platenwire computes and warns; the specified standard and a licensed engineer decide.");
    return view.page.lines();
  }

  private String subject() {
    StudyComparison.Subject subject = comparison.subject();
    return subject.title().replaceFirst(" \\(.*$", "")
        + " by "
        + subject.standard()
        + ", in "
        + unit.symbol()
        + (other == unit ? "" : " (" + other.symbol() + ")")
        + "; 95 % intervals";
  }

  private void sets() {
    page.heading("Each series at each age");
    TextTable table =
        TextTable.empty()
            .words("series")
            .numbers("age")
            .numbers("n")
            .numbers("mean")
            .numbers("s")
            .numbers("CoV")
            .numbers("interval of the mean");
    for (SeriesSet set : comparison.sets()) {
      table.row(
          set.series(),
          StudyStatusView.days(set.ageDays()),
          Integer.toString(set.statistics().n()),
          both(set.statistics().mean()),
          number(set.statistics().standardDeviation()),
          percent(set.statistics().coefficientOfVariation()),
          set.statistics().meanInterval().map(this::both).orElse("--"));
    }
    page.table(table);
    page.blank();
    comparison
        .sets()
        .forEach(
            set ->
                set.companions()
                    .ifPresent(
                        verdict ->
                            page.item(
                                set.series()
                                    + " at "
                                    + StudyStatusView.days(set.ageDays())
                                    + ": "
                                    + verdict.words()
                                    + ".")));
    page.item("s in " + unit.symbol() + "; CoV is s in percent of the mean.");
  }

  private void strip() {
    SpreadStrip strip = new SpreadStrip();
    for (SeriesSet set : comparison.sets()) {
      strip.add(
          set.series() + " " + StudyStatusView.days(set.ageDays()),
          set.values().stream().map(SpecimenValue::value).toList(),
          set.statistics().mean(),
          set.statistics().meanInterval());
    }
    List<Line> lines = strip.lines(page.room(), look, this::withUnits);
    if (!lines.isEmpty()) {
      page.heading("Each specimen, with the mean | and its interval");
      lines.forEach(page::line);
    }
  }

  private void against() {
    String said = "";
    for (AgeComparison age : comparison.ages()) {
      page.heading(
          "Against "
              + age.reference()
              + (Double.isNaN(age.ageDays()) ? ", " : " at ")
              + StudyStatusView.days(age.ageDays()));
      age.series().forEach(one -> one.sentences().forEach(page::item));
      if (!age.choice().equals(said)) {
        page.blank().paragraph("   ", Style.PLAIN, age.choice());
      }
      said = age.choice();
    }
    List<String> suspects =
        comparison.sentences().stream()
            .filter(sentence -> sentence.contains("standard deviations from the mean of its set"))
            .toList();
    list("Suspected outliers", suspects);
  }

  private void trends() {
    list(
        "With age",
        comparison.trends().stream().flatMap(trend -> trend.sentences().stream()).toList());
  }

  private void cracks(CrackComparison crack) {
    page.heading(
        "Cracks of "
            + crack.series()
            + " against "
            + crack.reference()
            + (crack.ageDays().isPresent()
                ? " at " + StudyStatusView.days(crack.ageDays().getAsDouble())
                : ""));
    crack.sentences().forEach(page::item);
    page.blank().paragraph("   ", Style.PLAIN, crack.calibration());
    ratios("load", Quantity.FORCE, "times as wide", crack.atLoads());
    ratios("width", Quantity.LENGTH, "times the load", crack.atWidths());
  }

  private void ratios(String place, Quantity quantity, String title, List<CrackRatio.At> all) {
    if (all.isEmpty()) {
      return;
    }
    TextTable table =
        TextTable.empty().numbers(place).numbers(title).numbers("interval").numbers("n");
    for (CrackRatio.At at : all) {
      String where = place(at.place(), quantity);
      CrackRatio.Outcome outcome = at.outcome();
      if (outcome instanceof CrackRatio.Found found) {
        table.row(
            where,
            digits(found.ratio(), 3),
            digits(found.interval().low(), 3) + " to " + digits(found.interval().high(), 3),
            found.nFirst() + ", " + found.nSecond());
      } else if (outcome instanceof CrackRatio.FigureOnly figure) {
        table.row(
            where, digits(figure.ratio(), 3), "--", figure.nFirst() + ", " + figure.nSecond());
      } else if (outcome instanceof CrackRatio.NearNoise noise) {
        table.row(where, "near the noise", "--", noise.nFirst() + ", " + noise.nSecond());
      }
    }
    page.blank().table(table);
  }

  private String place(double base, Quantity quantity) {
    boolean load = quantity == Quantity.FORCE;
    Unit si = load ? Unit.KILONEWTON : Unit.MILLIMETRE;
    Unit inchPound = load ? Unit.POUND_FORCE : Unit.INCH;
    Unit first = look.first() == UnitSystem.SI ? si : inchPound;
    Unit second = first == si ? inchPound : si;
    return one(base, first) + " (" + one(base, second) + ")";
  }

  private static String one(double base, Unit shown) {
    int decimals =
        switch (shown) {
          case POUND_FORCE -> 0;
          case KILONEWTON -> 2;
          case MILLIMETRE -> 3;
          default -> 4;
        };
    return Shown.decimal(shown.fromBase(base), decimals) + " " + shown.symbol();
  }

  private void observations() {
    list(
        "What people saw",
        comparison.observations().stream().map(StudyComparison.Observation::sentence).toList());
  }

  private void list(String title, List<String> sentences) {
    if (!sentences.isEmpty()) {
      page.heading(title);
      sentences.forEach(page::item);
    }
  }

  private String both(double value) {
    String first = rounded(value, unit);
    return other == unit ? first : first + " (" + rounded(value, other) + ")";
  }

  private String withUnits(double value) {
    String first = rounded(value, unit) + " " + unit.symbol();
    return other == unit
        ? first
        : first + " (" + rounded(value, other) + " " + other.symbol() + ")";
  }

  private String both(Interval interval) {
    String first = rounded(interval.low(), unit) + " to " + rounded(interval.high(), unit);
    return other == unit
        ? first
        : first
            + " ("
            + rounded(interval.low(), other)
            + " to "
            + rounded(interval.high(), other)
            + ")";
  }

  /** Stresses to the steps of ASTM C39 (0.1 MPa, 10 psi; from memory), others to three digits. */
  private String rounded(double value, Unit shown) {
    double converted = comparison.subject().unit().convert(value, shown);
    return switch (shown) {
      case MEGAPASCAL -> Shown.decimal(converted, 1);
      case PSI -> Shown.decimal(Math.rint(converted / 10) * 10, 0);
      default -> digits(converted, 3);
    };
  }

  private String number(OptionalDouble value) {
    if (value.isEmpty()) {
      return "--";
    }
    double converted = comparison.subject().unit().convert(value.getAsDouble(), unit);
    return switch (unit) {
      case MEGAPASCAL -> Shown.decimal(converted, 2);
      case PSI -> Shown.decimal(converted, 0);
      default -> digits(converted, 2);
    };
  }

  private static String percent(OptionalDouble share) {
    return share.isPresent() ? Shown.decimal(share.getAsDouble() * 100, 1) + " %" : "--";
  }

  private static String digits(double value, int digits) {
    if (!Double.isFinite(value)) {
      return "--";
    }
    BigDecimal rounded =
        BigDecimal.valueOf(value).round(new MathContext(digits, RoundingMode.HALF_EVEN));
    int most = Math.max(0, digits - (rounded.precision() - rounded.scale()));
    return rounded.signum() == 0
        ? "0"
        : rounded.setScale(most, RoundingMode.HALF_EVEN).toPlainString();
  }
}
