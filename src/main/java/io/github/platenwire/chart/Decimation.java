package io.github.platenwire.chart;

import java.util.Arrays;
import org.jfree.data.xy.XYSeries;

/**
 * Thins out a trace to what can be seen: for each column of pixels the first, least, greatest and
 * last value. Every extreme stays, and the picture with it. Stateless.
 */
public final class Decimation {
  private Decimation() {}

  /**
   * The points worth drawing.
   *
   * @param name of the series
   * @param x never falling
   * @param y as many; NaN is left out
   * @param columns how many columns of pixels the whole stretch of x covers, at least 1
   * @return at most four points a column, in the order of the trace
   * @throws IllegalArgumentException if the lengths differ or there is no column
   */
  public static XYSeries series(String name, double[] x, double[] y, int columns) {
    if (x.length != y.length || columns < 1) {
      throw new IllegalArgumentException(
          "x and y must have one length, and there must be a column, x="
              + x.length
              + " y="
              + y.length
              + " columns="
              + columns);
    }
    XYSeries series = new XYSeries(name, /* autoSort= */ false, /* allowDuplicateXValues= */ true);
    double from = x.length == 0 ? 0 : x[0];
    double width =
        x.length == 0 ? 1 : Math.max((x[x.length - 1] - from) / columns, Double.MIN_NORMAL);
    int begin = 0;
    while (begin < x.length) {
      int column = column(x[begin], from, width, columns);
      int end = begin + 1;
      while (end < x.length && column(x[end], from, width, columns) == column) {
        end++;
      }
      addColumn(series, x, y, begin, end);
      begin = end;
    }
    return series;
  }

  /**
   * The points worth drawing of a path that may go any way.
   *
   * @param name of the series
   * @param along how far along the path each point is, never falling
   * @param x of each point
   * @param y of each point; a point with NaN is left out
   * @param pieces into how many pieces of equal length the path is cut, at least 1
   * @return at most one point a piece and its ends, in the order of the path
   * @throws IllegalArgumentException if the lengths differ or there is no piece
   */
  static XYSeries path(String name, double[] along, double[] x, double[] y, int pieces) {
    if (x.length != y.length || x.length != along.length || pieces < 1) {
      throw new IllegalArgumentException(
          "along, x and y must have one length, and there must be a piece, along="
              + along.length
              + " x="
              + x.length
              + " y="
              + y.length
              + " pieces="
              + pieces);
    }
    XYSeries series = new XYSeries(name, /* autoSort= */ false, /* allowDuplicateXValues= */ true);
    double piece = along.length == 0 ? 1 : along[along.length - 1] / pieces;
    double next = 0;
    for (int i = 0; i < x.length; i++) {
      boolean there = Double.isFinite(x[i]) && Double.isFinite(y[i]);
      if (there && (along[i] >= next || i == x.length - 1)) {
        series.add(x[i], y[i], /* notify= */ false);
        next = along[i] + piece;
      }
    }
    return series;
  }

  private static int column(double x, double from, double width, int columns) {
    return (int) Math.min(columns - 1, (x - from) / width);
  }

  private static void addColumn(XYSeries series, double[] x, double[] y, int begin, int end) {
    int first = -1;
    int last = -1;
    int least = -1;
    int greatest = -1;
    for (int i = begin; i < end; i++) {
      if (!Double.isNaN(y[i])) {
        first = first < 0 ? i : first;
        last = i;
        least = least < 0 || y[i] < y[least] ? i : least;
        greatest = greatest < 0 || y[i] > y[greatest] ? i : greatest;
      }
    }
    if (first >= 0) {
      Arrays.stream(new int[] {first, least, greatest, last})
          .sorted()
          .distinct()
          .forEach(i -> series.add(x[i], y[i], /* notify= */ false));
    }
  }
}
