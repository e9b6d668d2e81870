package io.github.platenwire.chart;

import io.github.platenwire.calibration.CalibrationCheck;
import io.github.platenwire.calibration.CalibrationPoint;
import io.github.platenwire.calibration.CalibrationRun;
import io.github.platenwire.calibration.ClassLimits;
import io.github.platenwire.calibration.StepErrors;
import io.github.platenwire.quantity.Quantity;
import io.github.platenwire.quantity.Unit;
import java.awt.Color;
import java.awt.Shape;
import java.util.List;
import java.util.Optional;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.annotations.XYTextAnnotation;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.chart.ui.TextAnchor;
import org.jfree.data.xy.XYSeries;
import org.jfree.data.xy.XYSeriesCollection;

/**
 * The relative errors of a calibration over the applied values, against the limits of the classes.
 * Used once; not thread-safe.
 */
public final class CalibrationChart {
  /** How many places a limit that bends is drawn through. */
  private static final int PLACES = 200;

  private final CalibrationCheck check;
  private final Theme theme;
  private final XYSeriesCollection data = new XYSeriesCollection();
  private final XYLineAndShapeRenderer renderer = new XYLineAndShapeRenderer();
  private final Unit unit;
  private final double top;
  private final double height;

  private CalibrationChart(CalibrationCheck check, Optional<ClassLimits> stated, Theme theme) {
    this.check = check;
    this.theme = theme;
    this.unit = check.runs().unit();
    List<StepErrors> steps = check.steps();
    this.top = steps.get(steps.size() - 1).applied() * 1.08;
    this.height = height(stated);
    renderer.setDrawSeriesLineAsPath(true);
  }

  /**
   * The chart.
   *
   * @param check what is shown
   * @param title such as the calibration's name
   * @param subtitle such as its certificate
   * @param stated the class that its limits stand out for, if there is one
   */
  public static JFreeChart of(
      CalibrationCheck check,
      String title,
      String subtitle,
      Optional<ClassLimits> stated,
      Theme theme) {
    return new CalibrationChart(check, stated, theme).draw(title, subtitle, stated);
  }

  private JFreeChart draw(String title, String subtitle, Optional<ClassLimits> stated) {
    NumberAxis applied = HouseStyle.axis("Applied, " + unit.symbol(), 0, top, theme);
    NumberAxis error =
        HouseStyle.axis("Error of indication, % of the applied value", -height, height, theme);
    XYPlot plot = new XYPlot(data, applied, error, renderer);
    HouseStyle.style(plot, theme);
    Unit other = otherUnit();
    plot.setDomainAxis(
        1, HouseStyle.beside("Applied, " + other.symbol(), applied, unit, other, theme));
    plot.setRangeZeroBaselineVisible(true);
    plot.setRangeZeroBaselinePaint(theme.faintInk());
    runs();
    for (ClassLimits limits : check.limits().classes()) {
      boolean stands = stated.map(limits::equals).orElse(false);
      limit(plot, limits, stands);
    }
    return HouseStyle.chart(title, subtitle, plot, theme);
  }

  private Unit otherUnit() {
    boolean si = !List.of(Unit.POUND_FORCE, Unit.KIP, Unit.INCH, Unit.MIL).contains(unit);
    if (unit.quantity() == Quantity.LENGTH) {
      return si ? Unit.INCH : Unit.MILLIMETRE;
    }
    return si ? Unit.POUND_FORCE : Unit.KILONEWTON;
  }

  private double height(Optional<ClassLimits> stated) {
    double greatest = 0;
    for (StepErrors step : check.steps()) {
      greatest = Math.max(greatest, Math.abs(step.errorPercent()));
    }
    for (CalibrationRun run : check.runs().runs()) {
      for (CalibrationPoint point : run.points()) {
        greatest = Math.max(greatest, Math.abs(percent(point)));
      }
    }
    double limit = stated.map(of -> of.errorPercent().orElse(0)).orElse(0.0);
    for (ClassLimits limits : check.limits().classes()) {
      double percent = limits.errorPercent().orElse(0);
      boolean needed = limit < greatest || limit == 0;
      limit = needed ? percent : limit;
    }
    return 1.25 * Math.max(limit, Math.min(greatest, 20));
  }

  private double percent(CalibrationPoint point) {
    double corrected = check.correction().apply(point.indicated());
    return 100 * (corrected - point.applied()) / point.applied();
  }

  private void runs() {
    add(mean(), theme.first(), 2.5, false, true);
    int number = 0;
    for (CalibrationRun run : check.runs().runs()) {
      number++;
      XYSeries series =
          new XYSeries("run " + number + (run.ascending() ? ", rising" : ", falling"));
      for (CalibrationPoint point : run.points()) {
        series.add(point.applied(), percent(point));
      }
      dots(series, run.ascending(), HouseStyle.shape(number - 1));
    }
  }

  private XYSeries mean() {
    XYSeries series = new XYSeries("mean of the rising runs");
    for (StepErrors step : check.steps()) {
      series.add(step.applied(), 100 * (step.indicated() - step.applied()) / step.applied());
    }
    return series;
  }

  private void add(XYSeries series, Color color, double width, boolean dashed, boolean named) {
    int index = data.getSeriesCount();
    data.addSeries(series);
    renderer.setSeriesPaint(index, color);
    renderer.setSeriesStroke(index, dashed ? HouseStyle.dashed(width) : HouseStyle.solid(width));
    renderer.setSeriesShapesVisible(index, false);
    renderer.setSeriesVisibleInLegend(index, named);
  }

  private void dots(XYSeries series, boolean filled, Shape shape) {
    int index = data.getSeriesCount();
    add(series, filled ? theme.first() : theme.second(), 1.8, false, true);
    renderer.setSeriesLinesVisible(index, false);
    renderer.setSeriesShapesVisible(index, true);
    renderer.setSeriesShape(index, shape);
    renderer.setSeriesShapesFilled(index, filled);
  }

  private void limit(XYPlot plot, ClassLimits limits, boolean stands) {
    if (limits.errorPercent().isEmpty() || limits.errorPercent().getAsDouble() > height) {
      return;
    }
    Color color = stands ? theme.bad() : theme.faintInk();
    double width = stands ? 2.5 : 1.3;
    for (int sign : new int[] {1, -1}) {
      XYSeries series = new XYSeries("limit " + limits.name() + " " + sign);
      for (int i = 1; i <= PLACES; i++) {
        double applied = top * i / PLACES;
        series.add(applied, sign * allowed(limits, applied));
      }
      add(series, color, width, !stands, false);
    }
    XYTextAnnotation label =
        new XYTextAnnotation(
            (limits.name().equals(check.limits().classes().get(0).name())
                        && check.limits().classes().size() == 1
                    ? "limit "
                    : "class ")
                + limits.name()
                + (stands ? ", stated" : ""),
            top * 0.995,
            limits.errorPercent().getAsDouble() + height * 0.012);
    label.setFont(HouseStyle.WORDS);
    label.setPaint(color);
    label.setTextAnchor(TextAnchor.BOTTOM_RIGHT);
    plot.addAnnotation(label);
  }

  private double allowed(ClassLimits limits, double applied) {
    double relative = limits.errorPercent().orElse(0);
    double absolute =
        limits.errorMicrometres().isPresent()
            ? 100 * Unit.MICROMETRE.convert(limits.errorMicrometres().getAsDouble(), unit) / applied
            : 0;
    return Math.max(relative, absolute);
  }
}
