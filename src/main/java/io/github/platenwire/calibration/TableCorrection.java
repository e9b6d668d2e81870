package io.github.platenwire.calibration;

import io.github.platenwire.quantity.Unit;
import java.util.ArrayList;
import java.util.List;

/**
 * A table of indicated and true values with straight lines between them: it never overshoots, keeps
 * the order of values, and can be checked by hand. Outside the table the first or last line goes
 * on, and the value counts as not covered. Immutable; safe for any thread.
 *
 * @param points at least two, both columns strictly increasing
 */
public record TableCorrection(List<CalibrationPoint> points) implements Correction {
  /** The noise of an unloaded channel around the table's first point is no excursion: 1 %. */
  private static final double SLACK_PART = 0.01;

  /**
   * Checks the table.
   *
   * @throws IllegalArgumentException if there are fewer than two points, or a column does not
   *     strictly increase; the message is fit for a person
   */
  public TableCorrection {
    points = List.copyOf(points);
    if (points.size() < 2) {
      throw new IllegalArgumentException("a table needs at least two points");
    }
    for (int i = 1; i < points.size(); i++) {
      CalibrationPoint below = points.get(i - 1);
      CalibrationPoint above = points.get(i);
      if (!(above.indicated() > below.indicated() && above.applied() > below.applied())) {
        throw new IllegalArgumentException(
            "a table must rise from point to point, but after applied "
                + Plain.number(below.applied())
                + " indicated "
                + Plain.number(below.indicated())
                + " comes applied "
                + Plain.number(above.applied())
                + " indicated "
                + Plain.number(above.indicated()));
      }
    }
  }

  @Override
  public double apply(double indicated) {
    int low = 0;
    int high = points.size() - 1;
    while (high - low > 1) {
      int middle = (low + high) >>> 1;
      if (indicated < points.get(middle).indicated()) {
        high = middle;
      } else {
        low = middle;
      }
    }
    CalibrationPoint below = points.get(low);
    CalibrationPoint above = points.get(high);
    double part = (indicated - below.indicated()) / (above.indicated() - below.indicated());
    return part == 1
        ? above.applied()
        : below.applied() + part * (above.applied() - below.applied());
  }

  @Override
  public boolean covers(double indicated) {
    double first = points.get(0).indicated();
    double last = points.get(points.size() - 1).indicated();
    return indicated >= first - SLACK_PART * (last - first) && indicated <= last;
  }

  @Override
  public Correction inUnit(Unit from, Unit to) {
    List<CalibrationPoint> converted = new ArrayList<>();
    for (CalibrationPoint point : points) {
      converted.add(
          new CalibrationPoint(
              from.convert(point.applied(), to), from.convert(point.indicated(), to)));
    }
    return new TableCorrection(converted);
  }

  @Override
  public String words() {
    return "table of " + points.size() + " points, straight lines between them";
  }
}
