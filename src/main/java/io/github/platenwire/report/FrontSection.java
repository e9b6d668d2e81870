package io.github.platenwire.report;

import io.github.platenwire.chart.AbsorptionChart;
import io.github.platenwire.chart.FrontChart;
import io.github.platenwire.chart.FrontTrace;
import io.github.platenwire.method.FrontAdvance;
import io.github.platenwire.method.FrontPart;
import io.github.platenwire.quantity.Quantity;
import io.github.platenwire.quantity.Unit;
import io.github.platenwire.quantity.UnitSystem;
import io.github.platenwire.study.MeasurementSentences;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jfree.chart.JFreeChart;

/** How far a front has gone, or what mass was read: the chart and every reading. Used once. */
final class FrontSection {
  private static final int MOST_READINGS = 60;

  /** The name of a time's figure: the depth, and along which line. */
  private static final Pattern TIME_TO =
      Pattern.compile("time-to-([0-9.]+)-mm-in-(root-time|time)");

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
    Optional<JFreeChart> absorption = AbsorptionChart.of(trace, setting.theme());
    if (absorption.isPresent()) {
      page.chart(
          absorption.get(),
          "Absorption over the square root of time, every reading that counts, with the lines whose"
              + " slopes are its rates");
    }
    page.chart(
        FrontChart.of(trace, setting.theme()),
        isDepth()
            ? "Depth over time, every reading that counts, with the line in time and the line in its"
                + " square root"
            : "Mass over time, every reading that counts");
    page.list(sentences().stream().map(Inline::text).toList());
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

  /** Which line the front follows, and when it was at the depths that the result tells of. */
  private List<String> sentences() {
    List<String> sentences = new ArrayList<>();
    if (trace.result().figure("rate-in-time").isEmpty() || !isDepth()) {
      return sentences;
    }
    List<FrontPart.Reading> readings = trace.front().readings();
    FrontAdvance front =
        FrontAdvance.of(
            readings.stream().mapToDouble(FrontPart.Reading::seconds).toArray(),
            readings.stream().mapToDouble(FrontPart.Reading::base).toArray());
    sentences.add(MeasurementSentences.shape(front, setting.first()));
    trace.result().figures().stream()
        .map(figure -> TIME_TO.matcher(figure.name()))
        .filter(Matcher::matches)
        .sorted(Comparator.comparingDouble(FrontSection::depthMillimetres))
        .forEach(time -> sentences.add(timeTo(front, time)));
    return sentences;
  }

  private static double depthMillimetres(MatchResult time) {
    return Double.parseDouble(time.group(1));
  }

  private String timeTo(FrontAdvance front, MatchResult time) {
    FrontAdvance.Shape shape =
        time.group(2).equals("time") ? FrontAdvance.Shape.LINEAR : FrontAdvance.Shape.SQUARE_ROOT;
    String line = shape == FrontAdvance.Shape.LINEAR ? "time" : "root time";
    String along = front.better().isPresent() ? "" : "Along the line in " + line + ": ";
    double depth = depthMillimetres(time);
    return along + MeasurementSentences.timeTo(depth, front.timeTo(depth, shape), setting.first());
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
    return Cell.of(siFirst ? si + " (" + inches + ")" : inches + " (" + si + ")", reading.base());
  }

  private static Cell mass(FrontPart.Reading reading) {
    double grams = Unit.GRAM.fromBase(reading.base());
    return Cell.of(Words.decimals(grams, 2) + " g", grams);
  }
}
