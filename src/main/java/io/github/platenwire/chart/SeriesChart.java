package io.github.platenwire.chart;

import io.github.platenwire.quantity.Unit;
import io.github.platenwire.quantity.UnitSystem;
import java.awt.Color;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.annotations.XYLineAnnotation;
import org.jfree.chart.annotations.XYTextAnnotation;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.axis.SymbolAxis;
import org.jfree.chart.plot.CombinedRangeXYPlot;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.chart.ui.TextAnchor;
import org.jfree.data.xy.XYSeries;
import org.jfree.data.xy.XYSeriesCollection;

/**
 * Specimens one by one beside their mean and its interval, series beside series, age beside age.
 * Both systems of units stand at the sides. Used once; not thread-safe.
 */
public final class SeriesChart {
  /** The values of a column stand in its left half, mean and interval in its right. */
  private static final double VALUES_AT = -0.16;

  private static final double VALUES_SPREAD = 0.11;
  private static final double MEAN_AT = 0.18;
  private static final double MEAN_HALF_WIDTH = 0.13;
  private static final double CAP_HALF_WIDTH = 0.06;

  /** How finely the width is shared out among the groups. */
  private static final int PARTS = 100;

  /** The axis at the right takes so much of the width from the last group. */
  private static final double SHARE_OF_AXIS = 0.14;

  /** With more columns than this their names are written upwards. */
  private static final int MOST_LEVEL_NAMES = 12;

  private final Axes axes;
  private final Theme theme;
  private double below;

  private SeriesChart(Axes axes, Theme theme) {
    this.axes = axes;
    this.theme = theme;
  }

  /**
   * What is measured.
   *
   * @param words such as {@code Compressive strength}
   * @param unit of every value
   * @param other the unit at the right side
   */
  public record Axes(String words, Unit unit, Unit other) {}

  /**
   * Columns that belong together.
   *
   * @param heading such as {@code 7 days}
   * @param columns at least one
   */
  public record Group(String heading, List<Column> columns) {
    /** Makes the list immutable. */
    public Group {
      columns = List.copyOf(columns);
    }
  }

  /**
   * One series at one age.
   *
   * @param label its name
   * @param series its number, from 0, which gives colour and shape
   * @param values one for each specimen
   * @param mean their mean; NaN for none
   * @param interval what the mean's interval is, where there is one
   */
  public record Column(
      String label, int series, List<Value> values, double mean, Optional<Span> interval) {
    /** Makes the list immutable. */
    public Column {
      values = List.copyOf(values);
    }
  }

  /**
   * One specimen.
   *
   * @param value what was measured
   * @param mark a word beside it; empty for none
   */
  public record Value(double value, String mark) {}

  /** A stretch from one value to a greater one. */
  public record Span(double low, double high) {}

  /**
   * The chart.
   *
   * @param title what it shows
   * @param subtitle such as what the interval is
   * @param groups at least one
   */
  public static JFreeChart of(
      String title, String subtitle, Axes axes, List<Group> groups, Theme theme) {
    return new SeriesChart(axes, theme).draw(title, subtitle, groups);
  }

  private JFreeChart draw(String title, String subtitle, List<Group> groups) {
    NumberAxis range = range(groups);
    NumberAxis other =
        HouseStyle.beside(
            axes.words + ", " + axes.other.symbol(), range, axes.unit, axes.other, theme);
    boolean exchanged = theme.unitsFirst() == UnitSystem.INCH_POUND && axes.other != axes.unit;
    CombinedRangeXYPlot all =
        new CombinedRangeXYPlot(exchanged ? new OtherUnitAxis(range, other, theme) : range);
    all.setGap(14);
    int columns = groups.stream().mapToInt(group -> Math.max(1, group.columns.size())).sum();
    for (int i = 0; i < groups.size(); i++) {
      int own = PARTS * Math.max(1, groups.get(i).columns.size());
      boolean besideAxis = i == groups.size() - 1 && axes.other != axes.unit;
      int weight = besideAxis ? own + (int) (PARTS * columns * SHARE_OF_AXIS) : own;
      all.add(plot(groups.get(i), columns), weight);
    }
    List<?> plots = all.getSubplots();
    if (axes.other != axes.unit && plots.get(plots.size() - 1) instanceof XYPlot last) {
      last.setRangeAxis(1, exchanged ? range : other);
    }
    JFreeChart chart = HouseStyle.chart(title, subtitle, all, theme);
    chart.removeLegend();
    return chart;
  }

  private NumberAxis range(List<Group> groups) {
    double[] all =
        groups.stream()
            .flatMap(group -> group.columns.stream())
            .flatMap(SeriesChart::reach)
            .mapToDouble(Double::doubleValue)
            .toArray();
    double greatest = DoubleStream.of(all).max().orElse(1);
    double least = Math.min(0, DoubleStream.of(all).min().orElse(0));
    double span = Math.max(greatest - least, 1e-9);
    below = 0.025 * span;
    return HouseStyle.axis(
        axes.words + ", " + axes.unit.symbol(),
        least < 0 ? least - 0.06 * span : 0,
        greatest + 0.1 * span,
        theme);
  }

  private static Stream<Double> reach(Column column) {
    List<Double> reach = new ArrayList<>(column.values.stream().map(Value::value).toList());
    column.interval.ifPresent(
        interval -> {
          reach.add(interval.low);
          reach.add(interval.high);
        });
    return reach.stream();
  }

  private XYPlot plot(Group group, int columns) {
    String[] labels = group.columns.stream().map(Column::label).toArray(String[]::new);
    SymbolAxis domain = new SymbolAxis(group.heading, labels);
    domain.setGridBandsVisible(false);
    domain.setRange(-0.5, Math.max(0, labels.length - 1) + 0.5);
    domain.setVerticalTickLabels(columns > MOST_LEVEL_NAMES);
    HouseStyle.style(domain, theme);
    XYSeriesCollection data = new XYSeriesCollection();
    XYLineAndShapeRenderer renderer =
        new XYLineAndShapeRenderer(/* lines= */ false, /* shapes= */ true);
    XYPlot plot = new XYPlot(data, domain, null, renderer);
    HouseStyle.style(plot, theme);
    plot.setDomainGridlinesVisible(false);
    for (int at = 0; at < group.columns.size(); at++) {
      column(plot, data, renderer, group.columns.get(at), at);
    }
    return plot;
  }

  private void column(
      XYPlot plot,
      XYSeriesCollection data,
      XYLineAndShapeRenderer renderer,
      Column column,
      int at) {
    Color color = theme.series(column.series);
    XYSeries points = new XYSeries(at, /* autoSort= */ false, /* allowDuplicateXValues= */ true);
    int count = column.values.size();
    for (int i = 0; i < count; i++) {
      double shift = count == 1 ? 0 : VALUES_SPREAD * (2.0 * i / (count - 1) - 1);
      double x = at + VALUES_AT + shift;
      points.add(x, column.values.get(i).value);
      mark(plot, column.values.get(i), x);
    }
    data.addSeries(points);
    int index = data.getSeriesCount() - 1;
    renderer.setSeriesPaint(index, color);
    renderer.setSeriesShape(index, HouseStyle.shape(column.series));
    renderer.setSeriesShapesFilled(index, true);
    mean(plot, column, at + MEAN_AT, color);
  }

  private void mark(XYPlot plot, Value value, double x) {
    if (!value.mark.isEmpty()) {
      XYTextAnnotation label = new XYTextAnnotation(value.mark, x, value.value - below);
      label.setFont(HouseStyle.WORDS);
      label.setPaint(theme.bad());
      label.setTextAnchor(TextAnchor.TOP_CENTER);
      plot.addAnnotation(label);
    }
  }

  private void mean(XYPlot plot, Column column, double x, Color color) {
    if (Double.isNaN(column.mean)) {
      return;
    }
    line(plot, x - MEAN_HALF_WIDTH, column.mean, x + MEAN_HALF_WIDTH, column.mean, 3.5, color);
    column.interval.ifPresent(
        interval -> {
          line(plot, x, interval.low, x, interval.high, 1.8, color);
          for (double end : new double[] {interval.low, interval.high}) {
            line(plot, x - CAP_HALF_WIDTH, end, x + CAP_HALF_WIDTH, end, 1.8, color);
          }
        });
  }

  private static void line(
      XYPlot plot, double x1, double y1, double x2, double y2, double width, Color color) {
    plot.addAnnotation(new XYLineAnnotation(x1, y1, x2, y2, HouseStyle.solid(width), color));
  }
}
