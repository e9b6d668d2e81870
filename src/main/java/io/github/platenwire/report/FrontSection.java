package io.github.platenwire.report;

import io.github.platenwire.chart.FrontChart;
import io.github.platenwire.chart.FrontTrace;
import io.github.platenwire.method.FrontPart;
import io.github.platenwire.quantity.Quantity;
import io.github.platenwire.quantity.Unit;
import io.github.platenwire.quantity.UnitSystem;
import java.io.IOException;
import java.util.List;

/** How far a front has gone, or what mass was read: the chart and every reading. Used once. */
final class FrontSection {
  private static final int MOST_READINGS = 60;

  private final ReportSetting setting;
  private final FrontTrace trace;

  FrontSection(ReportSetting setting, FrontTrace trace) {
    this.setting = setting;
    this.trace = trace;
  }

  private boolean isDepth() {
    return trace.front().quantity() == Quantity.LENGTH;
  }

  void add(Page page) throws IOException {
    page.chart(
        FrontChart.of(trace, setting.theme()),
        isDepth()
            ? "Depth over time, every reading that counts, with the line in time and the line in its"
                + " square root"
            : "Mass over time, every reading that counts");
    List<FrontPart.Reading> readings = trace.front().readings();
    page.table(table(readings.stream().limit(MOST_READINGS).toList()));
    if (readings.size() > MOST_READINGS) {
      page.remark(
          "These are the first "
              + MOST_READINGS
              + " of "
              + readings.size()
              + " readings that count; the raw file has them all.");
    }
  }

  private PageTable table(List<FrontPart.Reading> readings) {
    PageTable table =
        PageTable.named("readings-that-count", "Readings that count")
            .numbers("Row", "row")
            .numbers("Time since the first, min", "seconds")
            .numbers(isDepth() ? "Depth" : "Mass", isDepth() ? "depth_mm" : "mass_g");
    for (FrontPart.Reading reading : readings) {
      table.row(
          Cell.of(Long.toString(reading.seq())),
          Cell.of(Words.decimals(Unit.MINUTE.fromBase(reading.seconds()), 2), reading.seconds()),
          isDepth() ? depth(reading) : mass(reading));
    }
    return table;
  }

  private Cell depth(FrontPart.Reading reading) {
    String si = Words.decimals(reading.base(), 2) + " mm";
    String inches = Words.decimals(Unit.INCH.fromBase(reading.base()), 3) + " in";
    boolean siFirst = setting.first() == UnitSystem.SI;
    return Cell.of(
        siFirst ? si + " (" + inches + ")" : inches + " (" + si + ")", reading.base());
  }

  private static Cell mass(FrontPart.Reading reading) {
    double grams = Unit.GRAM.fromBase(reading.base());
    return Cell.of(Words.decimals(grams, 2) + " g", grams);
  }
}
