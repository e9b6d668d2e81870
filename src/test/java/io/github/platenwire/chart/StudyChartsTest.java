package io.github.platenwire.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.platenwire.method.VirginTable;
import io.github.platenwire.quantity.Unit;
import io.github.platenwire.quantity.UnitSystem;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.AxisState;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.axis.NumberTick;
import org.jfree.chart.plot.CombinedRangeXYPlot;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.ui.RectangleEdge;
import org.jfree.data.xy.XYDataset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class StudyChartsTest {
  private static List<Theme> themes() {
    return List.of(Theme.LIGHT, Theme.DARK, Theme.LIGHT.withFirst(UnitSystem.INCH_POUND));
  }

  /** 100 psi is 0.6894757 MPa: the ticks stand at round psi, where their megapascals are. */
  @Test
  void draw_inchPoundFirst_marksRoundPsiAtTheLeftAndKeepsThePoints() {
    JFreeChart chart = series(Theme.LIGHT.withFirst(UnitSystem.INCH_POUND));
    CombinedRangeXYPlot plot = (CombinedRangeXYPlot) chart.getPlot();
    NumberAxis left = (NumberAxis) plot.getRangeAxis();
    assertThat(left.getLabel()).isEqualTo("Compressive strength, psi");
    BufferedImage ground = new BufferedImage(800, 500, BufferedImage.TYPE_INT_RGB);
    List<?> ticks =
        left.refreshTicks(
            ground.createGraphics(),
            new AxisState(),
            new Rectangle2D.Double(0, 0, 700, 400),
            RectangleEdge.LEFT);
    assertThat(ticks).hasSizeGreaterThan(4);
    for (Object each : ticks) {
      NumberTick tick = (NumberTick) each;
      if (tick.getText().isEmpty()) {
        continue; // between two that are named
      }
      double psi = Double.parseDouble(tick.getText());
      assertThat(psi % 100).isZero();
      assertThat(tick.getValue()).isCloseTo(psi * 0.00689475729, within(1e-6));
    }
    List<?> plots = plot.getSubplots();
    XYPlot last = (XYPlot) plots.get(plots.size() - 1);
    assertThat(last.getRangeAxis(1).getLabel()).isEqualTo("Compressive strength, MPa");
    assertThat(last.getDataset().getYValue(0, 0)).isEqualTo(VALUES[0]);
  }

  private static final SeriesChart.Axes STRENGTH =
      new SeriesChart.Axes("Compressive strength", Unit.MEGAPASCAL, Unit.PSI);
  private static final double[] VALUES = {24.1, 25.3, 26.0};

  private static SeriesChart.Column column(String label, int number) {
    return new SeriesChart.Column(
        label,
        number,
        List.of(
            new SeriesChart.Value(VALUES[0], ""),
            new SeriesChart.Value(VALUES[1], "outlier?"),
            new SeriesChart.Value(VALUES[2], "")),
        25.13,
        Optional.of(new SeriesChart.Span(22.7, 27.5)));
  }

  private static JFreeChart series(Theme theme) {
    List<SeriesChart.Group> groups = new ArrayList<>();
    for (String age : List.of("3 days", "7 days", "28 days")) {
      groups.add(
          new SeriesChart.Group(
              age, List.of(column("NA-T", 0), column("NA-S", 1), column("RA-S", 2))));
    }
    return SeriesChart.of("Strength by series", "points and means", STRENGTH, groups, theme);
  }

  private static JFreeChart ages(Theme theme) {
    AgeChart.Trend trend =
        new AgeChart.Trend(
            "NA-T",
            0,
            List.of(new AgeChart.Point(3, 15), new AgeChart.Point(28, 26)),
            List.of(new AgeChart.Interval(28, new SeriesChart.Span(24, 40))),
            List.of(new AgeChart.Point(3, 15.5), new AgeChart.Point(28, 25.5)));
    return AgeChart.of("With age", "", STRENGTH, List.of(3.0, 7.0, 28.0), List.of(trend), theme);
  }

  private static JFreeChart cracks(Theme theme) {
    VirginTable table =
        new VirginTable(
            List.of("gauge-a"),
            List.of(
                new VirginTable.Point(0, 0, 1, 1),
                new VirginTable.Point(9000, 0.01, 1, 2),
                new VirginTable.Point(15000, 0.3, 1, 3)));
    return CracksChart.of(
        "Cracks",
        "first loading",
        List.of(
            new CracksChart.Curve("NA-PB", 0, table),
            new CracksChart.Curve("NA-CB", 1, table),
            new CracksChart.Curve("NA-CB", 1, table)),
        theme);
  }

  @ParameterizedTest
  @MethodSource("themes")
  void draw_everyChart_leavesItsRimEmpty(Theme theme) {
    for (JFreeChart chart : List.of(series(theme), ages(theme), cracks(theme))) {
      BufferedImage image = chart.createBufferedImage(900, 540);
      int ground = theme.background().getRGB();
      for (int x = 0; x < 900; x++) {
        assertThat(image.getRGB(x, 3)).isEqualTo(ground);
        assertThat(image.getRGB(x, 536)).isEqualTo(ground);
      }
      for (int y = 0; y < 540; y++) {
        assertThat(image.getRGB(3, y)).isEqualTo(ground);
        assertThat(image.getRGB(896, y)).isEqualTo(ground);
      }
    }
  }

  @Test
  void series_everySpecimen_isAPointOfItsOwn() {
    CombinedRangeXYPlot all = (CombinedRangeXYPlot) series(Theme.LIGHT).getPlot();
    assertThat(all.getSubplots()).hasSize(3);
    for (Object one : all.getSubplots()) {
      XYDataset data = ((XYPlot) one).getDataset();
      assertThat(data.getSeriesCount()).isEqualTo(3);
      for (int item = 0; item < VALUES.length; item++) {
        assertThat(data.getYValue(1, item)).isEqualTo(VALUES[item]);
      }
    }
  }

  @Test
  void series_bothSystems_standAtTheSides() {
    CombinedRangeXYPlot all = (CombinedRangeXYPlot) series(Theme.LIGHT).getPlot();
    NumberAxis si = (NumberAxis) all.getRangeAxis();
    XYPlot last = all.getSubplots().get(2);
    NumberAxis psi = (NumberAxis) last.getRangeAxis(1);
    assertThat(si.getLabel()).isEqualTo("Compressive strength, MPa");
    assertThat(psi.getLabel()).isEqualTo("Compressive strength, psi");
    // 1 MPa is 145.0377 psi (NIST SP 811, from memory)
    assertThat(psi.getUpperBound() / si.getUpperBound()).isBetween(145.03, 145.04);
    assertThat(si.getLowerBound()).as("a scale from nought, so that heights compare").isZero();
    assertThat(si.getUpperBound()).isGreaterThan(27.5);
  }

  @Test
  void ages_intervalAboveEveryPoint_staysInside() {
    XYPlot plot = ages(Theme.LIGHT).getXYPlot();
    assertThat(plot.getRangeAxis().getUpperBound()).isGreaterThan(40);
    assertThat(plot.getDomainAxis().getLowerBound()).isLessThan(Math.log(3));
    assertThat(plot.getDomainAxis().getUpperBound()).isGreaterThan(Math.log(28));
  }

  @Test
  void cracks_twoSpecimensOfASeries_standOnceInTheLegend() {
    XYPlot plot = cracks(Theme.LIGHT).getXYPlot();
    assertThat(plot.getDataset().getSeriesCount()).isEqualTo(3);
    assertThat(plot.getLegendItems().getItemCount()).isEqualTo(2);
    // 1 kN is 224.809 lbf, 1 mm is 0.0393701 in (NIST SP 811, from memory)
    double load = plot.getRangeAxis(1).getUpperBound() / plot.getRangeAxis().getUpperBound();
    double width = plot.getDomainAxis(1).getUpperBound() / plot.getDomainAxis().getUpperBound();
    assertThat(load).isBetween(224.808, 224.810);
    assertThat(width).isBetween(0.03937, 0.039371);
  }
}
