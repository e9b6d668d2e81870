package io.github.platenwire.chart;

import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import org.jfree.chart.axis.AxisState;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.axis.NumberTick;
import org.jfree.chart.ui.RectangleEdge;

/**
 * An axis on which values are placed in one unit and marked in another: its ticks stand at round
 * figures of the other unit. Not thread-safe.
 */
final class OtherUnitAxis extends NumberAxis {
  private static final long serialVersionUID = 1L;

  private final transient NumberAxis marks;

  /**
   * An axis.
   *
   * @param places the stretch in the unit of the values
   * @param marks the same stretch in the other unit, with its label
   */
  OtherUnitAxis(NumberAxis places, NumberAxis marks, Theme theme) {
    super(marks.getLabel());
    this.marks = marks;
    setRange(places.getRange());
    HouseStyle.style(this, theme);
  }

  @Override
  public List<NumberTick> refreshTicks(
      Graphics2D graphics, AxisState state, Rectangle2D area, RectangleEdge edge) {
    List<NumberTick> ticks = new ArrayList<>();
    for (Object each : marks.refreshTicks(graphics, state, area, edge)) {
      NumberTick mark = (NumberTick) each;
      double share = (mark.getValue() - marks.getLowerBound()) / marks.getRange().getLength();
      ticks.add(
          new NumberTick(
              mark.getTickType(),
              getLowerBound() + share * getRange().getLength(),
              mark.getText(),
              mark.getTextAnchor(),
              mark.getRotationAnchor(),
              mark.getAngle()));
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
