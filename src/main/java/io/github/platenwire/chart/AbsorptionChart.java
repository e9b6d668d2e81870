package io.github.platenwire.chart;

import io.github.platenwire.method.FrontPart;
import io.github.platenwire.method.MethodResult.Figure;
import io.github.platenwire.quantity.Unit;
import io.github.platenwire.record.RawHeader;
import java.awt.Color;
import java.awt.geom.Ellipse2D;
import java.util.List;
import java.util.Optional;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.data.xy.XYSeries;
import org.jfree.data.xy.XYSeriesCollection;

/**
 * Absorption, as a depth of water, over the square root of time: every reading as a point, and the
 * lines whose slopes are the rates of absorption. Used once; not thread-safe.
 */
public final class AbsorptionChart {
  private static final double DOT = 10;

  private final FrontTrace trace;
  private final Theme theme;
  private final XYSeries points = new XYSeries("readings that count");

  private AbsorptionChart(FrontTrace trace, Figure absorption, Theme theme) {
    this.trace = trace;
    this.theme = theme;
    List<FrontPart.Reading> readings = trace.front().readings();
    double first = readings.get(0).base();
    double gain = readings.get(readings.size() - 1).base() - first;
    double perGain = gain == 0 ? 0 : absorption.exact() / gain;
    for (FrontPart.Reading reading : readings) {
      points.add(Math.sqrt(reading.seconds()), (reading.base() - first) * perGain);
    }
  }

  /** The chart of a log of masses; empty if it came to no absorption. */
  public static Optional<JFreeChart> of(FrontTrace trace, Theme theme) {
    return trace
        .result()
        .figure("absorption")
        .map(absorption -> new AbsorptionChart(trace, absorption, theme).draw());
  }

  private JFreeChart draw() {
    double most = Math.max(points.getMaxY(), 1e-6);
    double least = Math.min(0, points.getMinY());
    double end = Math.max(points.getMaxX(), 1);
    NumberAxis domain = HouseStyle.axis("Square root of time, √s", -0.02 * end, 1.05 * end, theme);
    NumberAxis range =
        HouseStyle.axis(
            "Absorption, mm", least - 0.03 * (most - least), most + 0.08 * (most - least), theme);
    XYPlot plot = new XYPlot(new XYSeriesCollection(points), domain, range, dots());
    HouseStyle.style(plot, theme);
    plot.setRangeAxis(
        1, HouseStyle.beside("Absorption, in", range, Unit.MILLIMETRE, Unit.INCH, theme));
    line(plot, 1, "initial", theme.second(), end);
    line(plot, 2, "secondary", theme.good(), end);
    RawHeader header = trace.header();
    String subtitle = HouseStyle.whichTest(header);
    return HouseStyle.chart(
        header.specimen().name() + ": absorption over the root of time", subtitle, plot, theme);
  }

  private XYLineAndShapeRenderer dots() {
    XYLineAndShapeRenderer dots =
        new XYLineAndShapeRenderer(/* lines= */ false, /* shapes= */ true);
    dots.setSeriesPaint(0, theme.first());
    dots.setSeriesShape(0, new Ellipse2D.Double(-DOT / 2, -DOT / 2, DOT, DOT));
    return dots;
  }

  /** One of the fitted lines, as far as it stays among what is drawn. */
  private void line(XYPlot plot, int index, String stretch, Color color, double end) {
    Optional<Figure> rate = trace.result().figure(stretch + "-rate");
    Optional<Figure> intercept = trace.result().figure(stretch + "-intercept");
    if (rate.isEmpty() || intercept.isEmpty()) {
      return;
    }
    double slope = rate.get().exact();
    double from = intercept.get().exact();
    double top = plot.getRangeAxis().getUpperBound();
    double upTo = slope > 0 ? Math.min(end, (top - from) / slope) : end;
    XYSeries series = new XYSeries(stretch + " absorption, " + HouseStyle.words(rate.get(), theme));
    series.add(0, from);
    series.add(upTo, from + slope * upTo);
    XYLineAndShapeRenderer renderer =
        new XYLineAndShapeRenderer(/* lines= */ true, /* shapes= */ false);
    renderer.setSeriesPaint(0, color);
    renderer.setSeriesStroke(0, index == 1 ? HouseStyle.dashed(2) : HouseStyle.solid(2));
    plot.setDataset(index, new XYSeriesCollection(series));
    plot.setRenderer(index, renderer);
  }
}
