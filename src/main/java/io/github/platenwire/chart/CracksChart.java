package io.github.platenwire.chart;

import io.github.platenwire.quantity.Unit;
import java.awt.geom.Line2D;
import java.util.Arrays;
import java.util.List;
import java.util.stream.DoubleStream;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.LegendItem;
import org.jfree.chart.LegendItemCollection;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.data.xy.XYSeries;
import org.jfree.data.xy.XYSeriesCollection;

/**
 * Load over crack width on first loading, one line for each specimen, the series told apart by
 * colour and dashes. Both systems of units stand at the sides. Used once; not thread-safe.
 */
public final class CracksChart {
  /** Half the length of a line in the legend: long enough to show its dashes. */
  private static final double DASH = 18;

  private final Theme theme;

  private CracksChart(Theme theme) {
    this.theme = theme;
  }

  /**
   * One specimen's crack on first loading.
   *
   * @param series the name of its series
   * @param number the series' number, from 0, which gives colour and dashes
   * @param millimetres crack width
   * @param newtons load at each, as many
   */
  public record Curve(String series, int number, double[] millimetres, double[] newtons) {
    /**
     * Copies both.
     *
     * @throws IllegalArgumentException if there are not as many of one as of the other
     */
    public Curve {
      millimetres = millimetres.clone();
      newtons = newtons.clone();
      if (millimetres.length != newtons.length) {
        throw new IllegalArgumentException(
            "widths=" + millimetres.length + " loads=" + newtons.length);
      }
    }
  }

  /** The chart. */
  public static JFreeChart of(String title, String subtitle, List<Curve> curves, Theme theme) {
    return new CracksChart(theme).draw(title, subtitle, curves);
  }

  private JFreeChart draw(String title, String subtitle, List<Curve> curves) {
    double widest = greatest(curves.stream().flatMapToDouble(c -> Arrays.stream(c.millimetres)));
    double load = greatest(curves.stream().flatMapToDouble(c -> Arrays.stream(c.newtons)));
    NumberAxis width = HouseStyle.axis("Crack width, mm", -0.02 * widest, 1.03 * widest, theme);
    NumberAxis force = HouseStyle.axis("Load, kN", 0, 1.06 * Unit.KILONEWTON.fromBase(load), theme);
    XYSeriesCollection data = new XYSeriesCollection();
    XYLineAndShapeRenderer lines =
        new XYLineAndShapeRenderer(/* lines= */ true, /* shapes= */ false);
    lines.setDrawSeriesLineAsPath(true);
    XYPlot plot = new XYPlot(data, width, force, lines);
    HouseStyle.style(plot, theme);
    plot.setDomainAxis(
        1, HouseStyle.beside("Crack width, in", width, Unit.MILLIMETRE, Unit.INCH, theme));
    plot.setRangeAxis(
        1, HouseStyle.beside("Load, lbf", force, Unit.KILONEWTON, Unit.POUND_FORCE, theme));
    LegendItemCollection legend = new LegendItemCollection();
    curves.forEach(curve -> add(curve, data, lines, legend));
    plot.setFixedLegendItems(legend);
    return HouseStyle.chart(title, subtitle, plot, theme);
  }

  private static double greatest(DoubleStream values) {
    return Math.max(values.filter(Double::isFinite).max().orElse(1), 1e-9);
  }

  private void add(
      Curve curve,
      XYSeriesCollection data,
      XYLineAndShapeRenderer lines,
      LegendItemCollection legend) {
    int index = data.getSeriesCount();
    XYSeries series = new XYSeries(index, /* autoSort= */ false, /* allowDuplicateXValues= */ true);
    for (int i = 0; i < curve.millimetres.length; i++) {
      series.add(curve.millimetres[i], Unit.KILONEWTON.fromBase(curve.newtons[i]));
    }
    data.addSeries(series);
    lines.setSeriesPaint(index, theme.series(curve.number));
    lines.setSeriesStroke(
        index, curve.number % 2 == 0 ? HouseStyle.solid(2.2) : HouseStyle.dashed(2.2));
    for (int i = 0; i < legend.getItemCount(); i++) {
      if (legend.get(i).getLabel().equals(curve.series)) {
        return;
      }
    }
    LegendItem named = new LegendItem(curve.series, theme.series(curve.number));
    named.setLine(new Line2D.Double(-DASH, 0, DASH, 0));
    named.setLineStroke(lines.getSeriesStroke(index));
    named.setLinePaint(theme.series(curve.number));
    named.setLineVisible(true);
    named.setShapeVisible(false);
    legend.add(named);
  }
}
