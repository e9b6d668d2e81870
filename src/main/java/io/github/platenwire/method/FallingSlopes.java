package io.github.platenwire.method;

import java.util.Arrays;
import java.util.List;

/**
 * How fast the load changes with the width where a threshold is crossed, also on a falling branch,
 * which the curve of first loading does not have. Taken over the last {@value #REACH_SHARE} of the
 * threshold's width. Constant work a row, no allocation. Not thread-safe.
 */
final class FallingSlopes {
  private static final double REACH_SHARE = 0.1;

  private final double[] widths;
  private final double[] loads;
  private final double[] belowWidths;
  private final double[] slopes;

  FallingSlopes(List<CrackRules.Threshold> thresholds) {
    widths = thresholds.stream().mapToDouble(CrackRules.Threshold::millimetres).toArray();
    loads = new double[widths.length];
    belowWidths = new double[widths.length];
    slopes = new double[widths.length];
    Arrays.fill(loads, Double.NaN);
    Arrays.fill(slopes, Double.NaN);
  }

  void accept(double load, double width) {
    for (int i = 0; i < widths.length; i++) {
      if (Double.isNaN(slopes[i])) {
        if (width < widths[i] * (1 - REACH_SHARE)) {
          loads[i] = load;
          belowWidths[i] = width;
        } else if (width >= widths[i] && !Double.isNaN(loads[i])) {
          slopes[i] = (load - loads[i]) / (width - belowWidths[i]);
        }
      }
    }
  }

  /** Slope of load on width at a width, N/mm; NaN if it was not crossed. */
  double at(double millimetres) {
    for (int i = 0; i < widths.length; i++) {
      if (widths[i] == millimetres) {
        return slopes[i];
      }
    }
    return Double.NaN;
  }
}
