package io.github.platenwire.chart;

import io.github.platenwire.chart.CrackMarks.Kind;
import io.github.platenwire.chart.CrackMarks.Mark;
import io.github.platenwire.quantity.Unit;
import io.github.platenwire.record.RawHeader;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.geom.Ellipse2D;
import java.util.Arrays;
import java.util.List;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.annotations.XYLineAnnotation;
import org.jfree.chart.annotations.XYTextAnnotation;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.CombinedDomainXYPlot;
import org.jfree.chart.plot.IntervalMarker;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.chart.ui.Layer;
import org.jfree.chart.ui.RectangleAnchor;
import org.jfree.chart.ui.RectangleInsets;
import org.jfree.chart.ui.TextAnchor;
import org.jfree.data.xy.XYSeries;
import org.jfree.data.xy.XYSeriesCollection;

/**
 * The two pictures of a crack: load against width with its first cracks, thresholds and cycles, and
 * width over time with its holds, the load below it. Used once; not thread-safe.
 */
public final class CrackChart {
  private static final double DOT = 10;

  /** Rows of words that fit one above the other into the height of the plot. */
  private static final double WORD_ROWS = 23;

  private final LoadTrace test;
  private final CrackTrace trace;
  private final CrackMarks marks;
  private final Theme theme;
  private final double[] kilonewtons;
  private final double[] millimetres;

  private CrackChart(LoadTrace test, CrackTrace trace, Theme theme) {
    this.test = test;
    this.trace = trace;
    this.theme = theme;
    marks = new CrackMarks(trace, test.result(), theme);
    kilonewtons = Arrays.stream(trace.newtons()).map(Unit.KILONEWTON::fromBase).toArray();
    millimetres = trace.millimetres();
  }

  /**
   * Load against width.
   *
   * @throws IllegalArgumentException if the test followed no crack
   */
  public static JFreeChart ofLoad(LoadTrace test, Theme theme) {
    return new CrackChart(test, crack(test), theme).loadOnWidth();
  }

  /**
   * Width over time.
   *
   * @throws IllegalArgumentException if the test followed no crack
   */
  public static JFreeChart ofTime(LoadTrace test, Theme theme) {
    return new CrackChart(test, crack(test), theme).widthOverTime();
  }

  private static CrackTrace crack(LoadTrace test) {
    return test.crack()
        .orElseThrow(() -> new IllegalArgumentException("this test followed no crack"));
  }

  private String subtitle() {
    RawHeader header = test.header();
    return HouseStyle.whichTest(header)
        + test.result()
            .figure("peak-load")
            .map(figure -> ", greatest load " + HouseStyle.words(figure, theme))
            .orElse("");
  }

  private JFreeChart chart(String what, XYPlot plot) {
    String title = test.header().specimen().name() + ": " + what;
    return HouseStyle.chart(title, subtitle(), plot, theme);
  }

  private static double greatest(double[] values) {
    return Arrays.stream(values).filter(Double::isFinite).max().orElse(1);
  }

  private static double least(double[] values) {
    return Math.min(0, Arrays.stream(values).filter(Double::isFinite).min().orElse(0));
  }

  /** An axis with room below and above what it shows. */
  private NumberAxis axis(String label, double[] values, double above) {
    double low = least(values);
    double span = Math.max(greatest(values) - low, 1e-6);
    return HouseStyle.axis(label, low - 0.03 * span, low + (1 + above) * span, theme);
  }

  private JFreeChart loadOnWidth() {
    NumberAxis width = axis("Crack width, mm", millimetres, 0.35);
    NumberAxis load = axis("Load, kN", kilonewtons, 0.06);
    XYPlot plot = new XYPlot(path(), width, load, line(theme.first(), 2));
    HouseStyle.style(plot, theme);
    plot.setDomainAxis(
        1, HouseStyle.beside("Crack width, in", width, Unit.MILLIMETRE, Unit.INCH, theme));
    plot.setRangeAxis(
        1, HouseStyle.beside("Load, lbf", load, Unit.KILONEWTON, Unit.POUND_FORCE, theme));
    addDots(plot, marks.all(), /* overTime= */ false);
    label(plot, marks.all(), width, load);
    return chart("load against crack width", plot);
  }

  /** The whole way of load and width, thinned to what can be seen along the width of the chart. */
  private XYSeriesCollection path() {
    double[] steps = new double[millimetres.length];
    for (int i = 1; i < steps.length; i++) {
      double across = change(millimetres, i) / (greatest(millimetres) - least(millimetres));
      double up = change(kilonewtons, i) / (greatest(kilonewtons) - least(kilonewtons));
      steps[i] = steps[i - 1] + Math.hypot(across, up);
    }
    return new XYSeriesCollection(
        Decimation.path(
            "load against width, cycles in it",
            steps,
            millimetres,
            kilonewtons,
            4 * ChartWriter.WIDTH));
  }

  private static double change(double[] values, int at) {
    double change = values[at] - values[at - 1];
    return Double.isFinite(change) ? change : 0;
  }

  private static XYLineAndShapeRenderer line(Color color, double thick) {
    XYLineAndShapeRenderer renderer =
        new XYLineAndShapeRenderer(/* lines= */ true, /* shapes= */ false);
    renderer.setDrawSeriesLineAsPath(true);
    renderer.setSeriesPaint(0, color);
    renderer.setSeriesStroke(0, HouseStyle.solid(thick));
    return renderer;
  }

  private Color color(Kind kind) {
    return switch (kind) {
      case FIRST_CRACK -> theme.bad();
      case THRESHOLD -> theme.second();
      case CYCLE -> theme.good();
    };
  }

  private static String name(Kind kind) {
    return switch (kind) {
      case FIRST_CRACK -> "first crack";
      case THRESHOLD -> "load at a width";
      case CYCLE -> "width left by a cycle";
    };
  }

  private void addDots(XYPlot plot, List<Mark> all, boolean overTime) {
    int at = plot.getDatasetCount();
    for (Kind kind : Kind.values()) {
      XYSeries dots = new XYSeries(name(kind), /* autoSort= */ false);
      for (Mark mark : all) {
        if (mark.kind() == kind) {
          double load = Unit.KILONEWTON.fromBase(mark.newtons());
          dots.add(
              overTime ? mark.seconds() : mark.millimetres(), overTime ? mark.millimetres() : load);
        }
      }
      if (dots.getItemCount() > 0) {
        XYLineAndShapeRenderer renderer =
            new XYLineAndShapeRenderer(/* lines= */ false, /* shapes= */ true);
        renderer.setSeriesPaint(0, color(kind));
        renderer.setSeriesShape(0, new Ellipse2D.Double(-DOT / 2, -DOT / 2, DOT, DOT));
        plot.setDataset(at, new XYSeriesCollection(dots));
        plot.setRenderer(at, renderer);
        at++;
      }
    }
  }

  /** Words to the right of and below each mark, moved down where they would meet. */
  private void label(XYPlot plot, List<Mark> all, NumberAxis width, NumberAxis load) {
    double row = load.getRange().getLength() / WORD_ROWS;
    double right = width.getRange().getLength() * 0.025;
    double highest = Double.POSITIVE_INFINITY;
    for (Mark mark : all) {
      double at = Unit.KILONEWTON.fromBase(mark.newtons());
      double words = Math.min(at - 0.4 * row, highest);
      highest = words - row;
      double x = mark.millimetres() + right;
      if (at - words > row) {
        plot.addAnnotation(
            new XYLineAnnotation(
                mark.millimetres(),
                at,
                x - 0.15 * right,
                words,
                new BasicStroke(1),
                theme.faintInk()));
      }
      XYTextAnnotation label = new XYTextAnnotation(mark.words(), x, words);
      label.setFont(HouseStyle.WORDS);
      label.setPaint(theme.ink());
      label.setTextAnchor(TextAnchor.CENTER_LEFT);
      label.setBackgroundPaint(Theme.veil(theme.background(), 215));
      plot.addAnnotation(label);
    }
  }

  private JFreeChart widthOverTime() {
    double[] seconds = trace.seconds();
    double from = seconds.length == 0 ? 0 : seconds[0];
    double to = seconds.length == 0 ? 1 : seconds[seconds.length - 1];
    CombinedDomainXYPlot both =
        new CombinedDomainXYPlot(
            HouseStyle.axis("Time since the start of the record, s", from, to, theme));
    both.setGap(22);
    NumberAxis width = axis("Crack width, mm", millimetres, 0.25);
    XYPlot upper = overTime("crack width", millimetres, width, theme.first());
    upper.setRangeAxis(
        1, HouseStyle.beside("Crack width, in", width, Unit.MILLIMETRE, Unit.INCH, theme));
    addDots(upper, marks.all(), /* overTime= */ true);
    NumberAxis load = axis("Load, kN", kilonewtons, 0.08);
    XYPlot lower = overTime("load", kilonewtons, load, theme.second());
    lower.setRangeAxis(
        1, HouseStyle.beside("Load, lbf", load, Unit.KILONEWTON, Unit.POUND_FORCE, theme));
    for (CrackMarks.Hold hold : marks.holds()) {
      upper.addDomainMarker(band(hold, hold.words()), Layer.BACKGROUND);
      lower.addDomainMarker(band(hold, ""), Layer.BACKGROUND);
    }
    both.add(upper, 2);
    both.add(lower, 1);
    return chart("crack width over time", both);
  }

  private XYPlot overTime(String name, double[] values, NumberAxis axis, Color color) {
    XYSeriesCollection data =
        new XYSeriesCollection(Decimation.series(name, trace.seconds(), values, ChartWriter.WIDTH));
    XYPlot plot = new XYPlot(data, null, axis, line(color, 2));
    HouseStyle.style(plot, theme);
    return plot;
  }

  private IntervalMarker band(CrackMarks.Hold hold, String words) {
    IntervalMarker marker =
        new IntervalMarker(hold.from(), hold.to(), Theme.veil(theme.good(), 60));
    marker.setLabel(words);
    marker.setLabelFont(HouseStyle.WORDS);
    marker.setLabelPaint(theme.ink());
    marker.setLabelBackgroundColor(Theme.veil(theme.background(), 0));
    marker.setLabelAnchor(RectangleAnchor.TOP_LEFT);
    marker.setLabelTextAnchor(TextAnchor.TOP_LEFT);
    marker.setLabelOffset(new RectangleInsets(6, 6, 6, 6));
    return marker;
  }
}
