package io.github.platenwire.report;

import io.github.platenwire.chart.SeriesChart;
import io.github.platenwire.quantity.UnitSystem;
import io.github.platenwire.statistics.Interval;
import io.github.platenwire.study.StudyComparison;
import io.github.platenwire.study.StudyComparison.AgainstReference;
import io.github.platenwire.study.StudyComparison.AgeComparison;
import io.github.platenwire.study.StudyComparison.SeriesSet;
import io.github.platenwire.study.StudyComparison.SpecimenValue;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.jfree.chart.JFreeChart;

/**
 * One figure of a study: specimens one by one beside mean and interval, companions' ranges, and
 * each series against the reference. Used once; not thread-safe.
 */
final class SetsSection {
  private final ReportSetting setting;
  private final StudyComparison comparison;
  private final Measure measure;
  private final String name;

  /**
   * The section of a comparison.
   *
   * @param name of its tables, one of its own among those of a report
   */
  SetsSection(ReportSetting setting, StudyComparison comparison, String name) {
    this.setting = setting;
    this.name = name;
    this.comparison = comparison;
    this.measure = measure(setting, comparison);
  }

  /** How the values of a comparison are shown. */
  static Measure measure(ReportSetting setting, StudyComparison comparison) {
    String printed =
        comparison.sets().stream()
            .flatMap(set -> set.values().stream())
            .map(SpecimenValue::rounded)
            .findFirst()
            .orElse("0.0");
    return Measure.like(
        printed,
        comparison.subject().unit(),
        comparison.subject().inchPoundUnit(),
        setting.first());
  }

  void add(Page page) throws IOException {
    if (comparison.sets().isEmpty()) {
      return;
    }
    page.chartSection(title(comparison) + ", series beside series");
    page.paragraph(
        "Method: "
            + comparison.subject().methodTitle()
            + " ("
            + comparison.subject().standard()
            + ").");
    page.chart(
        chart(setting, comparison),
        "Every specimen as a point; beside them the mean with its 95 % interval where there are"
            + " enough specimens");
    page.table(sets());
    page.remark(
        "s is the standard deviation, v the coefficient of variation. The range of companions is"
            + " greatest less least in percent of the mean, against the limit that the standard"
            + " prints.");
    against(page);
    page.tablePart("Specimen by specimen").table(values());
    page.remark(
        "± is the expanded uncertainty (k = 2) of the single result, the calibration of the frame"
            + " included. Each command shows how the figure comes from the rows named, with its"
            + " uncertainty line by line.");
  }

  static JFreeChart chart(ReportSetting setting, StudyComparison comparison) {
    Map<Double, List<SeriesChart.Column>> byAge = new TreeMap<>();
    for (SeriesSet set : comparison.sets()) {
      byAge
          .computeIfAbsent(set.ageDays(), age -> new ArrayList<>())
          .add(column(set, SeriesNumbers.of(comparison).getOrDefault(set.series(), 0)));
    }
    List<SeriesChart.Group> groups =
        byAge.entrySet().stream()
            .map(age -> new SeriesChart.Group(Words.days(age.getKey()), age.getValue()))
            .toList();
    return SeriesChart.of(
        title(comparison) + " by series and age",
        "points: specimens; bar and whiskers: mean and its 95 % interval",
        axes(setting, comparison),
        groups,
        setting.theme());
  }

  /** What is compared, without what may differ from test to test. */
  static String title(StudyComparison comparison) {
    return comparison.subject().title().replaceFirst(", (mean of|beyond the readings).*$", "");
  }

  /** The axes of a figure; the chart puts the unit shown first at the left. */
  static SeriesChart.Axes axes(ReportSetting setting, StudyComparison comparison) {
    return new SeriesChart.Axes(
        title(comparison), comparison.subject().unit(), comparison.subject().inchPoundUnit());
  }

  private static SeriesChart.Column column(SeriesSet set, int number) {
    Optional<String> suspect = set.suspect().map(StudyComparison.Suspect::specimen);
    List<SeriesChart.Value> values =
        set.values().stream()
            .map(
                value ->
                    new SeriesChart.Value(
                        value.value(),
                        suspect.filter(value.specimen()::equals).map(s -> "outlier?").orElse("")))
            .toList();
    return new SeriesChart.Column(
        set.series(),
        number,
        values,
        set.statistics().mean(),
        set.statistics()
            .meanInterval()
            .map(interval -> new SeriesChart.Span(interval.low(), interval.high())));
  }

  private PageTable sets() {
    PageTable table =
        PageTable.named(name + "-by-series", "")
            .names("Series")
            .numbers("Age, days", "age_days")
            .numbers("n", "n")
            .numbers(measure.heading("Mean"), "mean")
            .numbers(measure.heading("s"), "standard_deviation")
            .numbers("v, %", "coefficient_of_variation_percent")
            .numbers("95 % interval of the mean")
            .words("Range of companions");
    for (SeriesSet set : comparison.sets()) {
      int n = set.statistics().n();
      table.row(
          Cell.of(Inline.lines(List.of(Inline.strong(set.series()), Inline.faint(set.label())))),
          Words.ageCell(set.ageDays()),
          Cell.of(n + (set.planned() > n ? " of " + set.planned() : "")),
          measure.cell(set.statistics().mean()),
          set.statistics().standardDeviation().isPresent()
              ? measure.cell(set.statistics().standardDeviation().getAsDouble())
              : none(),
          set.statistics().coefficientOfVariation().isPresent()
              ? percent(set.statistics().coefficientOfVariation().getAsDouble())
              : none(),
          set.statistics().meanInterval().map(measure::interval).map(Cell::of).orElse(none()),
          range(set));
    }
    return table;
  }

  private static Cell percent(double share) {
    return Cell.of(Words.decimals(100 * share, 1), 100 * share);
  }

  static Cell none() {
    return Cell.of("–", Double.NaN);
  }

  static Cell range(SeriesSet set) {
    if (set.companions().isEmpty() || set.statistics().n() < 2) {
      return none();
    }
    var verdict = set.companions().get();
    String words = Words.decimals(verdict.rangePercent(), 1) + " %";
    if (verdict.limitPercent().isEmpty()) {
      return Cell.of(words);
    }
    words += ", limit " + Words.decimals(verdict.limitPercent().getAsDouble(), 1) + " %: ";
    boolean within = verdict.within().orElse(true);
    return Cell.of(words + (within ? "within" : "beyond")).in(within ? Tone.PLAIN : Tone.BAD);
  }

  private void against(Page page) {
    if (comparison.ages().isEmpty()) {
      return;
    }
    page.part("Against the reference");
    PageTable table =
        PageTable.named(name + "-against-reference", "")
            .numbers("Age, days", "age_days")
            .names("Series")
            .names("Reference")
            .numbers("n")
            .numbers("Ratio", "ratio")
            .numbers("95 % interval of the ratio")
            .numbers(measure.heading("Difference"), "difference")
            .numbers("95 % interval of the difference");
    for (AgeComparison age : comparison.ages()) {
      age.series().forEach(one -> table.row(cells(age, one)));
    }
    page.table(table);
    comparison.ages().stream().map(AgeComparison::choice).distinct().forEach(page::remark);
  }

  private Cell[] cells(AgeComparison age, AgainstReference one) {
    Optional<Interval> interval = one.ratioInterval();
    return new Cell[] {
      Words.ageCell(age.ageDays()),
      Cell.of(one.series()),
      Cell.of(age.reference()),
      Cell.of(one.ratio().nFirst() + " and " + one.ratio().nSecond()),
      Cell.of(Words.decimals(one.ratio().ratio(), 2), one.ratio().ratio()),
      interval
          .map(
              there ->
                  Cell.of(
                      Words.decimals(there.low(), 2) + " to " + Words.decimals(there.high(), 2)))
          .orElse(Cell.of("none with two ends")),
      measure.cell(one.difference().difference()),
      one.differenceInterval().map(measure::interval).map(Cell::of).orElse(none())
    };
  }

  private PageTable values() {
    PageTable table =
        PageTable.named(name + "-by-specimen", "")
            .words("Specimen, and the command that explains it")
            .numbers("True age, days", "true_age_days")
            .numbers(measure.heading("Result"), "value")
            .numbers(measure.heading("± (k = 2)"), "expanded_uncertainty")
            .words("Rows")
            .hidden("series")
            .hidden("age_days")
            .hidden("record");
    for (SeriesSet set : comparison.sets()) {
      table.group(Inline.text(set.series() + Words.atAge(set.ageDays())));
      for (SpecimenValue value : set.values()) {
        table.row(
            Cell.of(origin(value)),
            value.trueAgeDays().isPresent()
                ? Cell.of(
                    Words.decimals(value.trueAgeDays().getAsDouble(), 2),
                    value.trueAgeDays().getAsDouble())
                : none(),
            result(value),
            value.uncertainty().map(budget -> measure.deviation(budget.expanded())).orElse(none()),
            Cell.of(Words.rows(value.rows())),
            Cell.of(set.series()),
            Words.ageCell(set.ageDays()),
            Cell.of(value.record()));
      }
    }
    return table;
  }

  private Inline origin(SpecimenValue value) {
    return Inline.lines(
        List.of(
            setting.record(value.record(), Inline.text(value.specimen())),
            Inline.code(
                "platenwire explain "
                    + RecordsSection.test(value.record())
                    + " "
                    + comparison.subject().figure())));
  }

  private Cell result(SpecimenValue value) {
    boolean si = setting.first() == UnitSystem.SI;
    String shown = si ? value.rounded() : value.inchPoundRounded();
    String other = si ? value.inchPoundRounded() : value.rounded();
    Inline both =
        measure.unit() == measure.other()
            ? Inline.text(shown)
            : Inline.lines(List.of(Inline.text(shown), Inline.faint(other)));
    return new Cell(both, Double.toString(value.value()), Tone.PLAIN);
  }
}
