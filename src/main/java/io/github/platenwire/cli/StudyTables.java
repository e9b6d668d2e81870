package io.github.platenwire.cli;

import io.github.platenwire.quantity.Unit;
import io.github.platenwire.statistics.Interval;
import io.github.platenwire.study.CrackRatio;
import io.github.platenwire.study.StudyComparison;
import io.github.platenwire.study.StudyComparison.AgainstReference;
import io.github.platenwire.study.StudyComparison.AgeComparison;
import io.github.platenwire.study.StudyComparison.CrackComparison;
import io.github.platenwire.study.StudyComparison.SeriesSet;
import io.github.platenwire.study.StudyComparison.SeriesTrend;
import io.github.platenwire.study.StudyComparison.SpecimenValue;
import io.github.platenwire.study.StudyStatus;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.apache.commons.csv.CSVFormat;

/**
 * A study as CSV (RFC 4180) for programs and spreadsheets: SI units, figures unrounded, decimal
 * points, empty cells where there is nothing. Stateless.
 */
final class StudyTables {
  private static final List<String> DUE =
      List.of(
          "specimen",
          "series",
          "age_days",
          "due_utc",
          "tolerance_hours",
          "from_utc",
          "until_utc",
          "state");

  private static final List<String> COMPARISON =
      List.of(
          "kind",
          "series",
          "reference",
          "specimen",
          "age_days",
          "place",
          "place_unit",
          "n",
          "n_reference",
          "value",
          "low",
          "high",
          "unit",
          "deviation",
          "record",
          "row",
          "note");

  private StudyTables() {}

  /** The calendar: one row a specimen that is still to break. */
  static List<String> due(StudyStatus status) {
    List<String> lines = new ArrayList<>(List.of(line(DUE)));
    for (StudyStatus.DueBreak due : status.due()) {
      Cells cells = new Cells(DUE);
      cells.put("specimen", due.specimen()).put("series", due.series());
      cells.put("age_days", due.ageDays());
      due.due().ifPresent(time -> cells.put("due_utc", time.toString()));
      due.tolerance().ifPresent(by -> cells.put("tolerance_hours", by.toMinutes() / 60.0));
      due.from().ifPresent(time -> cells.put("from_utc", time.toString()));
      due.until().ifPresent(time -> cells.put("until_utc", time.toString()));
      lines.add(cells.put("state", due.standing().words()).line());
    }
    return lines;
  }

  /** Everything that was compared: one row a fact, its kind in the first column. */
  static List<String> comparison(StudyComparison comparison) {
    String unit = comparison.subject().unit().symbol();
    List<String> lines = new ArrayList<>(List.of(line(COMPARISON)));
    for (SeriesSet set : comparison.sets()) {
      set.values().forEach(value -> lines.add(specimen(set, value, unit).line()));
    }
    comparison.sets().forEach(set -> lines.add(mean(set, unit).line()));
    for (AgeComparison age : comparison.ages()) {
      for (AgainstReference one : age.series()) {
        lines.add(ratio(age, one).line());
        lines.add(difference(age, one, unit).line());
      }
    }
    comparison.trends().forEach(trend -> lines.add(trend(trend).line()));
    for (CrackComparison crack : comparison.cracks()) {
      crack.atLoads().forEach(at -> lines.add(crack("width ratio", crack, at, Unit.NEWTON).line()));
      crack
          .atWidths()
          .forEach(at -> lines.add(crack("load ratio", crack, at, Unit.MILLIMETRE).line()));
    }
    comparison
        .observations()
        .forEach(
            seen ->
                seen.counts()
                    .forEach(
                        count ->
                            lines.add(
                                new Cells(COMPARISON)
                                    .put("kind", "seen")
                                    .put("series", count.series())
                                    .put("age_days", seen.ageDays())
                                    .put("n", Integer.toString(count.looked()))
                                    .put("value", Integer.toString(count.seen()))
                                    .put("note", seen.what())
                                    .line())));
    return lines;
  }

  private static Cells specimen(SeriesSet set, SpecimenValue value, String unit) {
    Cells cells =
        new Cells(COMPARISON)
            .put("kind", "specimen")
            .put("series", set.series())
            .put("specimen", value.specimen())
            .put("age_days", set.ageDays())
            .put("value", value.value())
            .put("unit", unit)
            .put("record", value.record())
            .put(
                "row", value.rows().stream().map(String::valueOf).collect(Collectors.joining(" ")));
    value.uncertainty().ifPresent(budget -> cells.put("deviation", budget.combined()));
    return cells.put("note", value.uncertainty().isPresent() ? "standard uncertainty" : "");
  }

  private static Cells mean(SeriesSet set, String unit) {
    Cells cells =
        new Cells(COMPARISON)
            .put("kind", "mean")
            .put("series", set.series())
            .put("age_days", set.ageDays())
            .put("n", Integer.toString(set.statistics().n()))
            .put("value", set.statistics().mean())
            .put("unit", unit)
            .put("deviation", set.statistics().standardDeviation())
            .put(set.statistics().meanInterval());
    set.companions().ifPresent(verdict -> cells.put("note", verdict.words()));
    return cells;
  }

  private static Cells ratio(AgeComparison age, AgainstReference one) {
    return against("ratio", age, one)
        .put("value", one.ratio().ratio())
        .put(one.ratioInterval())
        .put("unit", "1")
        .put("note", age.choice());
  }

  private static Cells difference(AgeComparison age, AgainstReference one, String unit) {
    return against("difference", age, one)
        .put("value", one.difference().difference())
        .put(one.differenceInterval())
        .put("unit", unit);
  }

  private static Cells against(String kind, AgeComparison age, AgainstReference one) {
    return new Cells(COMPARISON)
        .put("kind", kind)
        .put("series", one.series())
        .put("reference", age.reference())
        .put("age_days", age.ageDays())
        .put("n", Integer.toString(one.ratio().nFirst()))
        .put("n_reference", Integer.toString(one.ratio().nSecond()));
  }

  private static Cells trend(SeriesTrend trend) {
    Cells cells =
        new Cells(COMPARISON)
            .put("kind", "slope on ln(age)")
            .put("series", trend.series())
            .put("n", Integer.toString(trend.trend().n()))
            .put("unit", Unit.MEGAPASCAL.symbol())
            .put("note", trend.sentences().get(0));
    trend
        .trend()
        .line()
        .ifPresent(
            line -> cells.put("value", line.slope()).put("deviation", line.slopeStandardError()));
    return cells.put(trend.slopeInterval());
  }

  private static Cells crack(String kind, CrackComparison crack, CrackRatio.At at, Unit unit) {
    Cells cells =
        new Cells(COMPARISON)
            .put("kind", kind)
            .put("series", crack.series())
            .put("reference", crack.reference())
            .put("age_days", crack.ageDays())
            .put("place", at.place())
            .put("place_unit", unit.symbol())
            .put("unit", "1");
    if (at.outcome() instanceof CrackRatio.Found found) {
      return counts(cells, found.nFirst(), found.nSecond())
          .put("value", found.ratio())
          .put(Optional.of(found.interval()));
    }
    if (at.outcome() instanceof CrackRatio.FigureOnly figure) {
      return counts(cells, figure.nFirst(), figure.nSecond()).put("value", figure.ratio());
    }
    CrackRatio.NearNoise noise = (CrackRatio.NearNoise) at.outcome();
    return counts(cells, noise.nFirst(), noise.nSecond()).put("note", "near the noise");
  }

  private static Cells counts(Cells cells, int first, int second) {
    return cells.put("n", Integer.toString(first)).put("n_reference", Integer.toString(second));
  }

  private static String line(Iterable<String> cells) {
    List<Object> all = new ArrayList<>();
    cells.forEach(all::add);
    return CSVFormat.RFC4180.format(all.toArray());
  }

  /** The cells of one row, by column. */
  private static final class Cells {
    private final Map<String, String> byColumn = new LinkedHashMap<>();

    Cells(List<String> columns) {
      columns.forEach(column -> byColumn.put(column, ""));
    }

    Cells put(String column, String text) {
      byColumn.put(column, text);
      return this;
    }

    Cells put(String column, double value) {
      return put(column, Double.isFinite(value) ? Double.toString(value) : "");
    }

    Cells put(String column, OptionalDouble value) {
      return value.isPresent() ? put(column, value.getAsDouble()) : this;
    }

    Cells put(Optional<Interval> interval) {
      interval.ifPresent(ends -> put("low", ends.low()).put("high", ends.high()));
      return this;
    }

    String line() {
      return StudyTables.line(byColumn.values());
    }
  }
}
