package io.github.platenwire.chart;

import io.github.platenwire.method.LiveView;
import io.github.platenwire.method.MethodResult.Figure;
import io.github.platenwire.quantity.Unit;
import io.github.platenwire.record.RawHeader;
import java.awt.Color;
import java.awt.geom.Ellipse2D;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.annotations.XYBoxAnnotation;
import org.jfree.chart.annotations.XYTextAnnotation;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.CombinedDomainXYPlot;
import org.jfree.chart.plot.ValueMarker;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.chart.ui.Layer;
import org.jfree.chart.ui.RectangleAnchor;
import org.jfree.chart.ui.RectangleInsets;
import org.jfree.chart.ui.TextAnchor;
import org.jfree.data.xy.XYSeries;
import org.jfree.data.xy.XYSeriesCollection;

/**
 * Load over time of one test with its zero, greatest load and break, and below it the rate of
 * loading with the method's band. Used once; not thread-safe.
 */
public final class LoadChart {
  private static final double DOT = 11;

  private final LoadTrace trace;
  private final Theme theme;
  private final double from;
  private final double to;

  private LoadChart(LoadTrace trace, Theme theme) {
    this.trace = trace;
    this.theme = theme;
    double[] seconds = trace.seconds();
    this.from = seconds.length == 0 ? 0 : Math.min(0, seconds[0]);
    this.to = seconds.length == 0 ? 1 : Math.max(seconds[seconds.length - 1], from + 1e-3) * 1.06;
  }

  /** The chart of a test. */
  public static JFreeChart of(LoadTrace trace, Theme theme) {
    return new LoadChart(trace, theme).draw();
  }

  private JFreeChart draw() {
    CombinedDomainXYPlot both =
        new CombinedDomainXYPlot(
            HouseStyle.axis("Time since the start of the record, s", from, to, theme));
    both.setGap(22);
    both.add(load(), 2);
    if (trace.band().isPresent()) {
      both.add(rate(trace.band().get()), 1);
    }
    RawHeader header = trace.header();
    String subtitle = HouseStyle.whichTest(header) + strength();
    return HouseStyle.chart(header.specimen().name() + ": load over time", subtitle, both, theme);
  }

  private String strength() {
    return trace
        .result()
        .figure("strength")
        .map(figure -> ", " + named(figure) + " " + HouseStyle.words(figure, theme))
        .orElse("");
  }

  /** Its title as it stands within a sentence. */
  private static String named(Figure figure) {
    String title = figure.title().replaceFirst(" \\(.*$", "");
    return title.substring(0, 1).toLowerCase(Locale.ROOT) + title.substring(1);
  }

  private XYPlot load() {
    double[] kilonewtons = Arrays.stream(trace.newtons()).map(Unit.KILONEWTON::fromBase).toArray();
    double greatest = Arrays.stream(kilonewtons).max().orElse(1);
    double least = Arrays.stream(kilonewtons).min().orElse(0);
    double span = Math.max(greatest - Math.min(0, least), 1e-6);
    NumberAxis axis =
        HouseStyle.axis(
            "Load, kN", Math.min(0, least) - span * 0.03, greatest + span * 0.16, theme);
    XYPlot plot = plot("load", kilonewtons, axis, theme.first());
    plot.setRangeAxis(
        1, HouseStyle.beside("Load, lbf", axis, Unit.KILONEWTON, Unit.POUND_FORCE, theme));
    trace
        .peakIndex()
        .ifPresent(index -> peak(plot, trace.seconds()[index], kilonewtons[index], span));
    trace.zeroSeconds().ifPresent(at -> line(plot, at, "zero taken"));
    trace.breakSeconds().ifPresent(at -> line(plot, at, "break"));
    return plot;
  }

  private XYPlot plot(String name, double[] values, NumberAxis axis, Color color) {
    XYSeriesCollection data = new XYSeriesCollection();
    data.addSeries(Decimation.series(name, trace.seconds(), values, ChartWriter.WIDTH));
    XYLineAndShapeRenderer renderer =
        new XYLineAndShapeRenderer(/* lines= */ true, /* shapes= */ false);
    renderer.setDrawSeriesLineAsPath(true);
    renderer.setSeriesPaint(0, color);
    renderer.setSeriesStroke(0, HouseStyle.solid(2));
    XYPlot plot = new XYPlot(data, null, axis, renderer);
    HouseStyle.style(plot, theme);
    return plot;
  }

  private void peak(XYPlot plot, double seconds, double kilonewtons, double span) {
    XYSeriesCollection data = new XYSeriesCollection();
    XYSeries series = new XYSeries("greatest load");
    series.add(seconds, kilonewtons);
    data.addSeries(series);
    XYLineAndShapeRenderer dot = new XYLineAndShapeRenderer(/* lines= */ false, /* shapes= */ true);
    dot.setSeriesPaint(0, theme.second());
    dot.setSeriesShape(0, new Ellipse2D.Double(-DOT / 2, -DOT / 2, DOT, DOT));
    plot.setDataset(1, data);
    plot.setRenderer(1, dot);
    Optional<Figure> figure = trace.result().figure("peak-load");
    XYTextAnnotation label =
        new XYTextAnnotation(
            "greatest load " + figure.map(one -> HouseStyle.words(one, theme)).orElse(""),
            seconds,
            kilonewtons + span * 0.045);
    label.setFont(HouseStyle.WORDS);
    label.setPaint(theme.second());
    label.setTextAnchor(
        seconds > (from + to) / 2 ? TextAnchor.BOTTOM_RIGHT : TextAnchor.BOTTOM_LEFT);
    plot.addAnnotation(label);
  }

  private void line(XYPlot plot, double seconds, String words) {
    ValueMarker marker = new ValueMarker(seconds, theme.faintInk(), HouseStyle.dashed(1.5));
    marker.setLabel(words);
    marker.setLabelFont(HouseStyle.WORDS);
    marker.setLabelPaint(theme.ink());
    marker.setLabelBackgroundColor(theme.background());
    marker.setLabelAnchor(RectangleAnchor.RIGHT);
    marker.setLabelTextAnchor(TextAnchor.CENTER_LEFT);
    marker.setLabelOffset(new RectangleInsets(4, 6, 4, 6));
    plot.addDomainMarker(marker);
  }

  private XYPlot rate(LiveView.RateBand band) {
    double top = 2 * band.highMegapascalsPerSecond();
    NumberAxis axis = HouseStyle.axis("Rate, MPa/s", 0, top, theme);
    XYPlot plot = plot("rate of loading", trace.rates(), axis, theme.second());
    plot.setRangeAxis(
        1,
        HouseStyle.beside(
            "Rate, psi/s", axis, Unit.MEGAPASCAL_PER_SECOND, Unit.PSI_PER_SECOND, theme));
    plot.getRenderer()
        .addAnnotation(
            new XYBoxAnnotation(
                trace.bandFrom(),
                band.lowMegapascalsPerSecond(),
                trace.bandTo(),
                band.highMegapascalsPerSecond(),
                HouseStyle.solid(1),
                theme.good(),
                Theme.veil(theme.good(), 60)),
            Layer.BACKGROUND);
    XYTextAnnotation label =
        new XYTextAnnotation(
            "band of the method",
            (trace.bandFrom() + trace.bandTo()) / 2,
            band.highMegapascalsPerSecond() + top * 0.04);
    label.setFont(HouseStyle.WORDS);
    label.setPaint(theme.good());
    label.setTextAnchor(TextAnchor.BOTTOM_CENTER);
    plot.addAnnotation(label);
    return plot;
  }
}
