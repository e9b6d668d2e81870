package io.github.platenwire.report;

import io.github.platenwire.chart.CracksChart;
import io.github.platenwire.quantity.BothSystems;
import io.github.platenwire.quantity.Quantity;
import io.github.platenwire.quantity.Unit;
import io.github.platenwire.quantity.UnitSystem;
import io.github.platenwire.study.CrackRatio;
import io.github.platenwire.study.StudyComparison;
import io.github.platenwire.study.StudyComparison.CrackComparison;
import io.github.platenwire.study.StudyComparison.SpecimenCurve;
import io.github.platenwire.study.StudyData;
import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jfree.chart.JFreeChart;

/** Cracks by series: width under load, and their ratios over the shared range. Stateless. */
final class CracksSection {
  private CracksSection() {}

  static void add(
      Page page, ReportSetting setting, StudyData data, List<StudyComparison> comparisons)
      throws IOException {
    Set<CrackComparison> all = new LinkedHashSet<>();
    comparisons.forEach(comparison -> all.addAll(comparison.cracks()));
    if (all.isEmpty()) {
      return;
    }
    page.section("Cracks");
    int number = 0;
    for (CrackComparison one : all) {
      number++;
      add(page, setting, data, one, all.size() == 1 ? "" : "-" + number);
    }
    page.table(specimens(all, setting));
  }

  private static void add(
      Page page, ReportSetting setting, StudyData data, CrackComparison one, String ending)
      throws IOException {
    page.part(
        one.series()
            + ", "
            + data.label(one.series())
            + ", against "
            + one.reference()
            + ", "
            + data.label(one.reference()));
    page.chart(
        chart(setting, one),
        "Load over crack width on first loading: " + one.series() + " and " + one.reference());
    page.table(
        ratios(
            PageTable.named("crack-width-at-load" + ending, "Width at the same load")
                .numbers("Load", "load_n"),
            one.atLoads(),
            Quantity.FORCE,
            setting));
    page.table(
        ratios(
            PageTable.named("load-at-crack-width" + ending, "Load at the same width")
                .numbers("Crack width", "width_mm"),
            one.atWidths(),
            Quantity.LENGTH,
            setting));
    page.remark(
        one.calibration()
            + " A ratio is of geometric means, "
            + one.series()
            + " over "
            + one.reference()
            + ". Standard uncertainty of one width without calibration: "
            + small(one.widthUncertaintyMillimetres(), setting)
            + ".");
  }

  private static JFreeChart chart(ReportSetting setting, CrackComparison one) {
    List<CracksChart.Curve> curves = new ArrayList<>();
    one.second()
        .forEach(curve -> curves.add(new CracksChart.Curve(one.reference(), 0, curve.curve())));
    one.first().forEach(curve -> curves.add(new CracksChart.Curve(one.series(), 1, curve.curve())));
    return CracksChart.of(
        "Crack width under load",
        one.series() + " against " + one.reference() + ", first loading, one line a specimen",
        curves,
        setting.theme());
  }

  private static PageTable ratios(
      PageTable table, List<CrackRatio.At> places, Quantity quantity, ReportSetting setting) {
    table.numbers("Ratio", "ratio").numbers("95 % interval").numbers("n").words("Remark");
    for (CrackRatio.At at : places) {
      Cell place =
          new Cell(
              Inline.text(BothSystems.words(at.place(), quantity, setting.first())),
              Double.toString(at.place()),
              Tone.PLAIN);
      row(table, place, at.outcome(), setting);
    }
    return table;
  }

  private static void row(
      PageTable table, Cell place, CrackRatio.Outcome outcome, ReportSetting setting) {
    if (outcome instanceof CrackRatio.Found found) {
      String interval =
          Words.decimals(found.interval().low(), 2)
              + " to "
              + Words.decimals(found.interval().high(), 2);
      table.row(
          place,
          Cell.of(Words.decimals(found.ratio(), 2), found.ratio()),
          Cell.of(interval),
          Cell.of(found.nFirst() + " and " + found.nSecond()),
          Cell.of(""));
    } else if (outcome instanceof CrackRatio.FigureOnly figure) {
      table.row(
          place,
          Cell.of(Words.decimals(figure.ratio(), 2), figure.ratio()),
          SetsSection.none(),
          Cell.of(figure.nFirst() + " and " + figure.nSecond()),
          Cell.of("too few for an interval"));
    } else if (outcome instanceof CrackRatio.NearNoise near) {
      table.row(
          place,
          SetsSection.none(),
          SetsSection.none(),
          Cell.of(near.nFirst() + " and " + near.nSecond()),
          Cell.of(
              "near the noise: at least "
                  + small(near.leastUsableMillimetres(), setting)
                  + " are needed"));
    }
  }

  /** A very small width in both systems of units. */
  private static String small(double millimetres, ReportSetting setting) {
    String si = Words.significant(millimetres * 1000, 2) + " µm";
    String inchPound = Words.significant(Unit.INCH.fromBase(millimetres), 2) + " in";
    return setting.first() == UnitSystem.SI
        ? si + " (" + inchPound + ")"
        : inchPound + " (" + si + ")";
  }

  private static PageTable specimens(Set<CrackComparison> all, ReportSetting setting) {
    Map<String, SpecimenCurve> curves = new LinkedHashMap<>();
    for (CrackComparison one : all) {
      one.second().forEach(curve -> curves.putIfAbsent(curve.record(), curve));
      one.first().forEach(curve -> curves.putIfAbsent(curve.record(), curve));
    }
    PageTable table =
        PageTable.named("crack-records", "Where the curves come from")
            .names("Specimen")
            .names("Record")
            .words("Command");
    for (SpecimenCurve curve : curves.values()) {
      String test = RecordsSection.test(curve.record());
      table.row(
          Cell.of(curve.specimen()),
          Cell.of(setting.record(curve.record(), Inline.text(test))),
          Cell.of(Inline.code("platenwire reduce " + test)));
    }
    return table;
  }
}
