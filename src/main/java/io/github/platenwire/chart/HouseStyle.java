package io.github.platenwire.chart;

import io.github.platenwire.method.MethodResult.Figure;
import io.github.platenwire.quantity.Unit;
import io.github.platenwire.quantity.UnitSystem;
import io.github.platenwire.record.RawHeader;
import java.awt.BasicStroke;
import java.awt.Font;
import java.awt.Shape;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Rectangle2D;
import java.text.DecimalFormat;
import java.text.DecimalFormatSymbols;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Locale;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.axis.NumberTickUnitSource;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.block.BlockBorder;
import org.jfree.chart.plot.CombinedDomainXYPlot;
import org.jfree.chart.plot.Plot;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.title.LegendTitle;
import org.jfree.chart.title.TextTitle;
import org.jfree.chart.ui.HorizontalAlignment;
import org.jfree.chart.ui.RectangleEdge;
import org.jfree.chart.ui.RectangleInsets;
import org.jfree.chart.util.ShapeUtils;

/**
 * How every chart looks: large plain letters, wide margins, a quiet grid. Drawn for 1280 × 720 and
 * readable at half of it. Stateless.
 */
public final class HouseStyle {
  /** Of ordinary words on a chart. */
  static final Font WORDS = new Font(Font.SANS_SERIF, Font.PLAIN, 16);

  private static final float HALF = 5;

  /** One for each series or run, so that they can be told apart without colour. */
  private static final List<Shape> SHAPES =
      List.of(
          new Ellipse2D.Double(-HALF, -HALF, 2 * HALF, 2 * HALF),
          new Rectangle2D.Double(-HALF, -HALF, 2 * HALF, 2 * HALF),
          ShapeUtils.createUpTriangle(HALF),
          ShapeUtils.createDiamond(HALF + 1),
          ShapeUtils.createDownTriangle(HALF));

  private static final Font TITLE = new Font(Font.SANS_SERIF, Font.BOLD, 24);
  private static final Font LABEL = new Font(Font.SANS_SERIF, Font.PLAIN, 18);
  private static final RectangleInsets MARGINS = new RectangleInsets(20, 24, 20, 24);

  private HouseStyle() {}

  /**
   * A chart in the house style.
   *
   * @param title what it shows
   * @param subtitle one line below the title; empty for none
   * @param plot styled already
   */
  public static JFreeChart chart(String title, String subtitle, Plot plot, Theme theme) {
    if (theme.unitsFirst() == UnitSystem.INCH_POUND) {
      exchange(plot, theme);
    }
    JFreeChart chart = new JFreeChart(title, TITLE, plot, /* createLegend= */ true);
    chart.setBackgroundPaint(theme.background());
    chart.setPadding(MARGINS);
    TextTitle head = chart.getTitle();
    head.setPaint(theme.ink());
    head.setHorizontalAlignment(HorizontalAlignment.LEFT);
    if (!subtitle.isEmpty()) {
      TextTitle below = new TextTitle(subtitle, WORDS);
      below.setPaint(theme.faintInk());
      below.setHorizontalAlignment(HorizontalAlignment.LEFT);
      below.setPadding(4, 2, 12, 0);
      chart.addSubtitle(below);
    }
    style(chart.getLegend(), theme);
    return chart;
  }

  /** Puts the inch-pound axes at the left and at the bottom; what is drawn stays where it is. */
  private static void exchange(Plot plot, Theme theme) {
    if (plot instanceof CombinedDomainXYPlot combined) {
      combined.getSubplots().forEach(each -> exchange((Plot) each, theme));
    } else if (plot instanceof XYPlot one) {
      if (one.getRangeAxis() instanceof NumberAxis si
          && one.getRangeAxis(1) instanceof NumberAxis other) {
        one.setRangeAxis(0, new OtherUnitAxis(si, other, theme));
        one.setRangeAxis(1, si);
      }
      if (one.getDomainAxis() instanceof NumberAxis si
          && one.getDomainAxis(1) instanceof NumberAxis other) {
        one.setDomainAxis(0, new OtherUnitAxis(si, other, theme));
        one.setDomainAxis(1, si);
      }
    }
  }

  /** A figure in both systems of units, such as {@code 25.0 MPa (3630 psi)}. */
  static String words(Figure figure, Theme theme) {
    String si = figure.rounded() + " " + figure.unit().symbol();
    String inchPound = figure.inchPoundRounded() + " " + figure.inchPoundUnit().symbol();
    if (figure.unit() == figure.inchPoundUnit()) {
      return si;
    }
    return theme.unitsFirst() == UnitSystem.SI
        ? si + " (" + inchPound + ")"
        : inchPound + " (" + si + ")";
  }

  private static void style(LegendTitle legend, Theme theme) {
    legend.setItemFont(WORDS);
    legend.setItemPaint(theme.ink());
    legend.setBackgroundPaint(theme.background());
    legend.setFrame(BlockBorder.NONE);
    legend.setPosition(RectangleEdge.BOTTOM);
    legend.setPadding(10, 0, 0, 0);
    legend.setItemLabelPadding(new RectangleInsets(2, 4, 2, 18));
  }

  /** Gives a plot the house's colours and grid. */
  static void style(XYPlot plot, Theme theme) {
    plot.setBackgroundPaint(theme.background());
    plot.setOutlinePaint(theme.grid());
    plot.setDomainGridlinePaint(theme.grid());
    plot.setRangeGridlinePaint(theme.grid());
    BasicStroke thin = new BasicStroke(1);
    plot.setDomainGridlineStroke(thin);
    plot.setRangeGridlineStroke(thin);
    plot.setAxisOffset(new RectangleInsets(2, 2, 2, 2));
  }

  /** An axis that shows from one value to another, figures without locale and grouping. */
  static NumberAxis axis(String label, double from, double to, Theme theme) {
    NumberAxis axis = new NumberAxis(label);
    DecimalFormat figures =
        new DecimalFormat("0.######", DecimalFormatSymbols.getInstance(Locale.ROOT));
    axis.setStandardTickUnits(new NumberTickUnitSource(/* integers= */ false, figures));
    axis.setNumberFormatOverride(figures);
    axis.setRange(from, to);
    style(axis, theme);
    return axis;
  }

  /** Gives an axis the house's letters and colours. */
  static void style(ValueAxis axis, Theme theme) {
    axis.setLabelFont(LABEL);
    axis.setTickLabelFont(WORDS);
    axis.setLabelPaint(theme.ink());
    axis.setTickLabelPaint(theme.faintInk());
    axis.setAxisLinePaint(theme.faintInk());
    axis.setTickMarkPaint(theme.faintInk());
    axis.setLabelInsets(new RectangleInsets(6, 6, 6, 6));
  }

  /** The axis of the same stretch in another unit. */
  static NumberAxis beside(String label, NumberAxis axis, Unit of, Unit other, Theme theme) {
    return axis(
        label,
        of.convert(axis.getLowerBound(), other),
        of.convert(axis.getUpperBound(), other),
        theme);
  }

  /** The shape of one of several series, around (0, 0); after the last they begin anew. */
  static Shape shape(int index) {
    return SHAPES.get(Math.floorMod(index, SHAPES.size()));
  }

  /** A solid line. */
  static BasicStroke solid(double width) {
    return new BasicStroke((float) width, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND);
  }

  /** A dashed line. */
  static BasicStroke dashed(double width) {
    return new BasicStroke(
        (float) width, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 10, new float[] {8, 6}, 0);
  }

  /** Rig, method and start of a test, for the line below a title. */
  static String whichTest(RawHeader header) {
    return header.rig().name()
        + ", "
        + header.method().name()
        + ", "
        + header.start().truncatedTo(ChronoUnit.SECONDS);
  }
}
