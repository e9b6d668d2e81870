package io.github.platenwire.chart;

import io.github.platenwire.method.MethodResult;
import io.github.platenwire.method.MethodResult.Figure;
import io.github.platenwire.quantity.Unit;
import io.github.platenwire.record.RawHeader;
import java.awt.geom.Ellipse2D;
import java.util.Arrays;
import java.util.Optional;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.data.xy.XYSeries;
import org.jfree.data.xy.XYSeriesCollection;

/**
 * Stress over strain of a cylinder under its loading cycles, with the chords whose slopes are its
 * modulus of elasticity. Used once; not thread-safe.
 */
public final class StrainChart {
  private static final double DOT = 10;

  private final LoadTrace test;
  private final StrainTrace trace;
  private final Theme theme;
  private final MethodResult result;

  private StrainChart(LoadTrace test, StrainTrace trace, Theme theme) {
    this.test = test;
    this.trace = trace;
    this.theme = theme;
    this.result = test.result();
  }

  /**
   * The chart of a test.
   *
   * @throws IllegalArgumentException if the test followed no strain
   */
  public static JFreeChart of(LoadTrace test, Theme theme) {
    StrainTrace trace =
        test.strain()
            .orElseThrow(() -> new IllegalArgumentException("this test followed no strain"));
    return new StrainChart(test, trace, theme).draw();
  }

  private JFreeChart draw() {
    double[] strains = trace.microstrains();
    double[] stresses = trace.megapascals();
    NumberAxis domain = axis("Strain along the axis from the cycle's zero, µm/m", strains);
    NumberAxis range = axis("Stress, MPa", stresses);
    XYPlot plot = new XYPlot(path(strains, stresses), domain, range, line());
    HouseStyle.style(plot, theme);
    plot.setRangeAxis(1, HouseStyle.beside("Stress, psi", range, Unit.MEGAPASCAL, Unit.PSI, theme));
    plot.setDataset(1, chords());
    plot.setRenderer(1, chordLines());
    RawHeader header = test.header();
    String subtitle =
        HouseStyle.whichTest(header)
            + result
                .figure("modulus")
                .map(figure -> ", modulus of elasticity " + HouseStyle.words(figure, theme))
                .orElse("");
    return HouseStyle.chart(
        header.specimen().name() + ": stress over strain", subtitle, plot, theme);
  }

  private NumberAxis axis(String label, double[] values) {
    double low = Math.min(0, Arrays.stream(values).min().orElse(0));
    double span = Math.max(Arrays.stream(values).max().orElse(1) - low, 1e-6);
    return HouseStyle.axis(label, low - 0.03 * span, low + 1.08 * span, theme);
  }

  /** The whole way of all cycles, thinned to what can be seen. */
  private static XYSeriesCollection path(double[] strains, double[] stresses) {
    double across = Math.max(spread(strains), 1e-9);
    double up = Math.max(spread(stresses), 1e-9);
    double[] steps = new double[strains.length];
    for (int i = 1; i < steps.length; i++) {
      steps[i] =
          steps[i - 1]
              + Math.hypot(
                  (strains[i] - strains[i - 1]) / across, (stresses[i] - stresses[i - 1]) / up);
    }
    return new XYSeriesCollection(
        Decimation.path("stress over strain", steps, strains, stresses, 4 * ChartWriter.WIDTH));
  }

  private static double spread(double[] values) {
    return Arrays.stream(values).max().orElse(0) - Arrays.stream(values).min().orElse(0);
  }

  private XYLineAndShapeRenderer line() {
    XYLineAndShapeRenderer line =
        new XYLineAndShapeRenderer(/* lines= */ true, /* shapes= */ false);
    line.setDrawSeriesLineAsPath(true);
    line.setSeriesPaint(0, theme.first());
    line.setSeriesStroke(0, HouseStyle.solid(1.5));
    return line;
  }

  /** The chord of each cycle that the result has; the first seats the gauges. */
  private XYSeriesCollection chords() {
    XYSeriesCollection chords = new XYSeriesCollection();
    for (int cycle = 1; result.figure("modulus-cycle-" + cycle).isPresent(); cycle++) {
      Optional<Figure> low = result.figure("stress-low-cycle-" + cycle);
      Optional<Figure> high = result.figure("stress-high-cycle-" + cycle);
      Optional<Figure> strain = result.figure("strain-high-cycle-" + cycle);
      if (low.isPresent() && high.isPresent() && strain.isPresent()) {
        XYSeries chord = new XYSeries("chord of cycle " + cycle + (cycle == 1 ? " (seating)" : ""));
        chord.add(trace.firstMicrostrain(), low.get().exact());
        chord.add(strain.get().exact(), high.get().exact());
        chords.addSeries(chord);
      }
    }
    return chords;
  }

  private XYLineAndShapeRenderer chordLines() {
    XYLineAndShapeRenderer lines =
        new XYLineAndShapeRenderer(/* lines= */ true, /* shapes= */ true);
    lines.setDefaultShape(new Ellipse2D.Double(-DOT / 2, -DOT / 2, DOT, DOT));
    lines.setAutoPopulateSeriesShape(false);
    int chords = chords().getSeriesCount();
    for (int i = 0; i < chords; i++) {
      lines.setSeriesPaint(i, i == 0 ? theme.faintInk() : theme.series(i));
      lines.setSeriesStroke(i, i == 0 ? HouseStyle.dashed(2) : HouseStyle.solid(2.5));
    }
    return lines;
  }
}
