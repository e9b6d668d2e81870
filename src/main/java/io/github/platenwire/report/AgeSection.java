package io.github.platenwire.report;

import io.github.platenwire.chart.AgeChart;
import io.github.platenwire.chart.SeriesChart;
import io.github.platenwire.quantity.Unit;
import io.github.platenwire.quantity.UnitSystem;
import io.github.platenwire.study.AgeCurves;
import io.github.platenwire.study.StudyComparison;
import io.github.platenwire.study.StudyComparison.SeriesSet;
import io.github.platenwire.study.StudyComparison.SeriesTrend;
import io.github.platenwire.study.StudyData;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import org.jfree.chart.JFreeChart;

/** How a figure grows with age, with fitted curves. Used once; not thread-safe. */
final class AgeSection {
  /** How many points a curve is drawn through. */
  private static final int PLACES = 80;

  private final ReportSetting setting;
  private final StudyData data;
  private final StudyComparison comparison;
  private final String name;

  AgeSection(ReportSetting setting, StudyData data, StudyComparison comparison, String name) {
    this.name = name;
    this.setting = setting;
    this.data = data;
    this.comparison = comparison;
  }

  void add(Page page) throws IOException {
    if (comparison.trends().isEmpty()) {
      return;
    }
    page.chartSection(SetsSection.title(comparison) + " with age");
    page.chart(chart(), "Every specimen over its age, with the curve fitted to its series");
    page.list(
        comparison.trends().stream()
            .flatMap(trend -> trend.sentences().stream().skip(1))
            .map(Inline::text)
            .toList());
    page.table(curves());
  }

  private JFreeChart chart() {
    Map<String, Integer> numbers = SeriesNumbers.of(comparison);
    List<AgeChart.Trend> trends = new ArrayList<>();
    List<Double> ages = new ArrayList<>();
    for (SeriesTrend trend : comparison.trends()) {
      List<SeriesSet> sets =
          comparison.sets().stream().filter(set -> set.series().equals(trend.series())).toList();
      sets.forEach(set -> ages.add(set.ageDays()));
      trends.add(
          new AgeChart.Trend(
              trend.series(),
              numbers.getOrDefault(trend.series(), 0),
              points(sets),
              intervals(sets),
              curve(trend)));
    }
    return AgeChart.of(
        SetsSection.title(comparison) + " with age",
        "curves: ACI 209R fitted to each series, its EN 1992-1-1 fit where there is none",
        SetsSection.axes(setting, comparison),
        ages.stream().distinct().sorted().toList(),
        trends,
        setting.theme());
  }

  private static List<AgeChart.Point> points(List<SeriesSet> sets) {
    return sets.stream()
        .flatMap(
            set ->
                set.values().stream()
                    .map(
                        value ->
                            new AgeChart.Point(
                                value.trueAgeDays().orElse(set.ageDays()), value.value())))
        .toList();
  }

  private static List<AgeChart.Interval> intervals(List<SeriesSet> sets) {
    List<AgeChart.Interval> intervals = new ArrayList<>();
    for (SeriesSet set : sets) {
      set.statistics()
          .meanInterval()
          .ifPresent(
              interval ->
                  intervals.add(
                      new AgeChart.Interval(
                          set.ageDays(), new SeriesChart.Span(interval.low(), interval.high()))));
    }
    return intervals;
  }

  private static List<AgeChart.Point> curve(SeriesTrend trend) {
    Optional<DoubleUnaryOperator> fitted =
        trend
            .aci()
            .<DoubleUnaryOperator>map(fit -> fit::megapascalsAt)
            .or(() -> trend.en().map(fit -> fit::megapascalsAt));
    List<AgeChart.Point> points = new ArrayList<>();
    double from = trend.trend().firstAgeDays();
    double step = Math.log(trend.trend().lastAgeDays() / from) / PLACES;
    for (int i = 0; fitted.isPresent() && i <= PLACES; i++) {
      double age = from * Math.exp(i * step);
      points.add(new AgeChart.Point(age, fitted.get().applyAsDouble(age)));
    }
    return points;
  }

  private PageTable curves() {
    PageTable table =
        PageTable.named(name + "-age-curves", "Curves fitted")
            .words("Series")
            .names("Curve")
            .words("What was found")
            .numbers(measure().heading("Scatter about it"), "residual_deviation_mpa")
            .numbers("Degrees of freedom", "degrees_of_freedom");
    for (SeriesTrend trend : comparison.trends()) {
      String name = trend.series() + ", " + data.label(trend.series());
      trend.aci().ifPresent(fit -> table.row(aci(name, fit)));
      trend.en().ifPresent(fit -> table.row(en(name, fit)));
    }
    return table;
  }

  private Cell[] aci(String series, AgeCurves.AciFit fit) {
    return new Cell[] {
      Cell.of(series),
      Cell.of("ACI 209R"),
      Cell.of(
          "f28 "
              + strength(fit.strength28Megapascals())
              + ", a "
              + found(fit.aDays(), 2)
              + " d, b "
              + found(fit.b(), 3)),
      measure().deviation(fit.residualDeviationMegapascals()),
      Cell.of(Integer.toString(fit.degreesOfFreedom()))
    };
  }

  private Cell[] en(String series, AgeCurves.EnFit fit) {
    return new Cell[] {
      Cell.of(series),
      Cell.of("EN 1992-1-1"),
      Cell.of("f28 " + strength(fit.strength28Megapascals()) + ", s " + found(fit.s(), 3)),
      measure().deviation(fit.residualDeviationMegapascals()),
      Cell.of(Integer.toString(fit.degreesOfFreedom()))
    };
  }

  private Measure measure() {
    return new Measure(Unit.MEGAPASCAL, Unit.PSI, 1, 0, setting.first());
  }

  /** A strength in both systems of units. */
  private String strength(AgeCurves.Coefficient coefficient) {
    double error = coefficient.standardError();
    return both(
            Words.decimals(coefficient.value(), 1) + " MPa",
            Words.decimals(Unit.PSI.fromBase(coefficient.value()), 0) + " psi")
        + ", standard error "
        + both(
            Words.significant(error, 2) + " MPa",
            Words.significant(Unit.PSI.fromBase(error), 2) + " psi");
  }

  private String both(String si, String inchPound) {
    return setting.first() == UnitSystem.SI
        ? si + " (" + inchPound + ")"
        : inchPound + " (" + si + ")";
  }

  private static String found(AgeCurves.Coefficient coefficient, int decimals) {
    return Words.decimals(coefficient.value(), decimals)
        + " (standard error "
        + Words.significant(coefficient.standardError(), 2)
        + ")";
  }
}
