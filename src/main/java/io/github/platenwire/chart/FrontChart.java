package io.github.platenwire.chart;

import io.github.platenwire.method.FrontPart;
import io.github.platenwire.quantity.Quantity;
import io.github.platenwire.quantity.Unit;
import io.github.platenwire.record.RawHeader;
import java.awt.Color;
import java.awt.geom.Ellipse2D;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.data.xy.XYSeries;
import org.jfree.data.xy.XYSeriesCollection;

/**
 * How far a front has gone, or what mass was read, against time: every reading as a point, and for
 * depths the two fitted lines. Used once; not thread-safe.
 */
public final class FrontChart {
  private static final double DOT = 10;
  private static final int STEPS = 240;

  private final FrontTrace trace;
  private final Theme theme;
  private final boolean length;
  private final Unit timeUnit;
  private final double[] times;
  private final double[] values;

  private FrontChart(FrontTrace trace, Theme theme) {
    this.trace = trace;
    this.theme = theme;
    this.length = trace.front().quantity() == Quantity.LENGTH;
    List<FrontPart.Reading> readings = trace.front().readings();
    double last = readings.isEmpty() ? 60 : readings.get(readings.size() - 1).seconds();
    this.timeUnit = last > 2 * 86_400 ? Unit.DAY : last > 3 * 3600 ? Unit.HOUR : Unit.MINUTE;
    Unit unit = length ? Unit.MILLIMETRE : Unit.GRAM;
    this.times = readings.stream().mapToDouble(r -> timeUnit.fromBase(r.seconds())).toArray();
    this.values = readings.stream().mapToDouble(r -> unit.fromBase(r.base())).toArray();
  }

  /** The chart of a log. */
  public static JFreeChart of(FrontTrace trace, Theme theme) {
    return new FrontChart(trace, theme).draw();
  }

  private JFreeChart draw() {
    NumberAxis domain =
        HouseStyle.axis(
            "Time since the first reading, " + timeUnit.symbol(),
            -greatest(times, 1) * 0.02,
            greatest(times, 1) * 1.05,
            theme);
    NumberAxis range = range();
    XYPlot plot = new XYPlot(points(), domain, range, dots());
    HouseStyle.style(plot, theme);
    if (length) {
      plot.setRangeAxis(
          1, HouseStyle.beside("Depth, in", range, Unit.MILLIMETRE, Unit.INCH, theme));
      line(plot, 1, "line in time", "rate-in-time", theme.second(), t -> t);
      line(plot, 2, "line in the root of time", "rate-in-root-time", theme.good(), Math::sqrt);
    }
    RawHeader header = trace.header();
    String subtitle =
        HouseStyle.whichTest(header)
            + trace.result().checks().stream()
                .filter(check -> check.name().equals("shape"))
                .map(check -> ", " + check.words().replaceAll("(;| better than).*", ""))
                .findFirst()
                .orElse("");
    String title = header.specimen().name() + (length ? ": depth of the front" : ": mass");
    return HouseStyle.chart(title + " over time", subtitle, plot, theme);
  }

  private NumberAxis range() {
    double least = values.length == 0 ? 0 : values[0];
    for (double value : values) {
      least = Math.min(least, value);
    }
    double most = greatest(values, 1);
    double low = length ? Math.min(0, least) : least;
    double span = Math.max(most - low, 1e-3);
    return HouseStyle.axis(
        length ? "Depth, mm" : "Mass, g", low - span * 0.03, most + span * 0.08, theme);
  }

  private static double greatest(double[] of, double orElse) {
    double greatest = Double.NEGATIVE_INFINITY;
    for (double one : of) {
      greatest = Math.max(greatest, one);
    }
    return greatest == Double.NEGATIVE_INFINITY ? orElse : Math.max(greatest, 1e-3);
  }

  private XYSeriesCollection points() {
    XYSeries series = new XYSeries("readings that count");
    for (int i = 0; i < times.length; i++) {
      series.add(times[i], values[i]);
    }
    return new XYSeriesCollection(series);
  }

  private XYLineAndShapeRenderer dots() {
    XYLineAndShapeRenderer dots =
        new XYLineAndShapeRenderer(/* lines= */ false, /* shapes= */ true);
    dots.setSeriesPaint(0, theme.first());
    dots.setSeriesShape(0, new Ellipse2D.Double(-DOT / 2, -DOT / 2, DOT, DOT));
    return dots;
  }

  /** The fitted line through the centre of the readings, with the slope that the result has. */
  private void line(
      XYPlot plot, int index, String name, String figure, Color color, DoubleUnaryOperator shape) {
    if (trace.result().figure(figure).isEmpty()) {
      return;
    }
    double slope = trace.result().figure(figure).get().exact();
    double perBase = figure.equals("rate-in-time") ? 1 / 60.0 : 1;
    List<FrontPart.Reading> readings = trace.front().readings();
    double meanX =
        readings.stream().mapToDouble(r -> shape.applyAsDouble(r.seconds())).average().orElse(0);
    double meanY = readings.stream().mapToDouble(FrontPart.Reading::base).average().orElse(0);
    double end = readings.get(readings.size() - 1).seconds();
    XYSeries series = new XYSeries(name);
    for (int i = 0; i <= STEPS; i++) {
      // denser near the start, where the root bends
      double seconds = end * Math.pow((double) i / STEPS, 2);
      series.add(
          timeUnit.fromBase(seconds),
          meanY + slope * perBase * (shape.applyAsDouble(seconds) - meanX));
    }
    XYLineAndShapeRenderer renderer =
        new XYLineAndShapeRenderer(/* lines= */ true, /* shapes= */ false);
    renderer.setDrawSeriesLineAsPath(true);
    renderer.setSeriesPaint(0, color);
    renderer.setSeriesStroke(0, index == 1 ? HouseStyle.dashed(2) : HouseStyle.solid(2));
    plot.setDataset(index, new XYSeriesCollection(series));
    plot.setRenderer(index, renderer);
  }
}
