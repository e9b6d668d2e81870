package io.github.platenwire.chart;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.annotations.XYLineAnnotation;
import org.jfree.chart.axis.AxisState;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.axis.NumberTick;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.chart.ui.RectangleEdge;
import org.jfree.chart.ui.TextAnchor;
import org.jfree.data.xy.XYSeries;
import org.jfree.data.xy.XYSeriesCollection;

/**
 * Strength, or what else grows with age, over the age on a logarithmic axis: specimens one by one,
 * the mean's interval at each age, and fitted curves. Used once; not thread-safe.
 */
public final class AgeChart {
  private static final double CAP = 0.018;

  private final SeriesChart.Axes axes;
  private final Theme theme;
  private final XYSeriesCollection data = new XYSeriesCollection();
  private final XYLineAndShapeRenderer renderer = new XYLineAndShapeRenderer();

  private AgeChart(SeriesChart.Axes axes, Theme theme) {
    this.axes = axes;
    this.theme = theme;
  }

  /**
   * One series.
   *
   * @param label its name
   * @param series its number, from 0, which gives colour and shape
   * @param points one for each specimen
   * @param intervals the mean's interval, where there is one
   * @param curve the fitted curve, by rising age; empty for none
   */
  public record Trend(
      String label, int series, List<Point> points, List<Interval> intervals, List<Point> curve) {
    /** Makes the lists immutable. */
    public Trend {
      points = List.copyOf(points);
      intervals = List.copyOf(intervals);
      curve = List.copyOf(curve);
    }
  }

  /** A value at an age, which is above 0 days. */
  public record Point(double ageDays, double value) {}

  /** A mean's interval at an age. */
  public record Interval(double ageDays, SeriesChart.Span span) {}

  /**
   * The chart.
   *
   * @param title what it shows
   * @param subtitle such as which curves are fitted
   * @param ages the ages that are named on the axis, in days
   */
  public static JFreeChart of(
      String title,
      String subtitle,
      SeriesChart.Axes axes,
      List<Double> ages,
      List<Trend> trends,
      Theme theme) {
    return new AgeChart(axes, theme).draw(title, subtitle, ages, trends);
  }

  private JFreeChart draw(String title, String subtitle, List<Double> ages, List<Trend> trends) {
    NumberAxis range = range(trends);
    XYPlot plot = new XYPlot(data, domain(ages, trends), range, renderer);
    HouseStyle.style(plot, theme);
    if (axes.other() != axes.unit()) {
      plot.setRangeAxis(
          1,
          HouseStyle.beside(
              axes.words() + ", " + axes.other().symbol(),
              range,
              axes.unit(),
              axes.other(),
              theme));
    }
    for (Trend trend : trends) {
      curve(trend);
      points(trend);
      intervals(plot, trend);
    }
    return HouseStyle.chart(title, subtitle, plot, theme);
  }

  private NumberAxis range(List<Trend> trends) {
    double greatest =
        trends.stream()
            .flatMap(
                trend ->
                    Stream.concat(
                        Stream.concat(trend.points.stream(), trend.curve.stream())
                            .map(Point::value),
                        trend.intervals.stream().map(interval -> interval.span().high())))
            .mapToDouble(Double::doubleValue)
            .max()
            .orElse(1);
    return HouseStyle.axis(
        axes.words() + ", " + axes.unit().symbol(), 0, Math.max(greatest, 1e-9) * 1.08, theme);
  }

  private NumberAxis domain(List<Double> ages, List<Trend> trends) {
    double[] all =
        DoubleStream.concat(
                ages.stream().mapToDouble(Double::doubleValue),
                trends.stream()
                    .flatMap(trend -> Stream.concat(trend.points.stream(), trend.curve.stream()))
                    .mapToDouble(Point::ageDays))
            .toArray();
    double least = Math.log(DoubleStream.of(all).min().orElse(1));
    double greatest = Math.log(DoubleStream.of(all).max().orElse(28));
    double margin = Math.max(0.08 * (greatest - least), 0.1);
    LogarithmOfAge axis = new LogarithmOfAge(ages);
    axis.setRange(least - margin, greatest + margin);
    HouseStyle.style(axis, theme);
    return axis;
  }

  private void curve(Trend trend) {
    if (!trend.curve.isEmpty()) {
      int index = add(trend.label + ", fitted", trend.curve, theme.series(trend.series));
      renderer.setSeriesStroke(index, HouseStyle.solid(2));
      renderer.setSeriesShapesVisible(index, false);
      renderer.setSeriesVisibleInLegend(index, false);
    }
  }

  private void points(Trend trend) {
    int index = add(trend.label, trend.points, theme.series(trend.series));
    renderer.setSeriesLinesVisible(index, false);
    renderer.setSeriesShapesVisible(index, true);
    renderer.setSeriesShape(index, HouseStyle.shape(trend.series));
  }

  private int add(String key, List<Point> points, Color color) {
    XYSeries series = new XYSeries(key, /* autoSort= */ false, /* allowDuplicateXValues= */ true);
    points.forEach(point -> series.add(Math.log(point.ageDays), point.value));
    data.addSeries(series);
    int index = data.getSeriesCount() - 1;
    renderer.setSeriesPaint(index, color);
    return index;
  }

  /** Beside the points of its series, so that several series at one age do not hide each other. */
  private void intervals(XYPlot plot, Trend trend) {
    Color color = theme.series(trend.series);
    for (Interval interval : trend.intervals) {
      double x = Math.log(interval.ageDays) + CAP * (2.2 + 2.4 * trend.series);
      SeriesChart.Span span = interval.span;
      line(plot, x, span.low(), x, span.high(), color);
      line(plot, x - CAP, span.low(), x + CAP, span.low(), color);
      line(plot, x - CAP, span.high(), x + CAP, span.high(), color);
    }
  }

  private static void line(XYPlot plot, double x1, double y1, double x2, double y2, Color color) {
    plot.addAnnotation(new XYLineAnnotation(x1, y1, x2, y2, HouseStyle.solid(1.6), color));
  }

  /** An axis of logarithms that names the ages asked for and no others. */
  private static final class LogarithmOfAge extends NumberAxis {
    private static final long serialVersionUID = 1L;

    private final transient List<Double> ages;

    LogarithmOfAge(List<Double> ages) {
      super("Age, days (logarithmic)");
      this.ages = List.copyOf(ages);
    }

    @Override
    public List<NumberTick> refreshTicks(
        Graphics2D graphics, AxisState state, Rectangle2D area, RectangleEdge edge) {
      List<NumberTick> ticks = new ArrayList<>();
      for (double age : ages) {
        String words = age == Math.rint(age) ? Long.toString((long) age) : Double.toString(age);
        ticks.add(
            new NumberTick(Math.log(age), words, TextAnchor.TOP_CENTER, TextAnchor.TOP_CENTER, 0));
      }
      return ticks;
    }

    @Override
    public boolean equals(Object other) {
      return this == other;
    }

    @Override
    public int hashCode() {
      return System.identityHashCode(this);
    }
  }
}
