package io.github.platenwire.live;

import java.util.Arrays;
import java.util.List;

/**
 * From a row of gauge values to the opening of the crack:
 *
 * <ul>
 *   <li>opening of a gauge = its value less its zero;
 *   <li>opening = mean over the gauges that count (all fit gauges; a row in which one of them is
 *       missing has no opening, so the mean never changes its gauges from row to row);
 *   <li>rotation = mean opening on face 0 less mean opening on face 1; NaN if a face has none;
 *   <li>width = opening less the elastic stretch F/k, where 1/k is the mean over the same gauges of
 *       the slopes of opening on load, each fitted before cracking. The stretch is taken off at
 *       every load, after cracking and on unloading too. Until the slopes are fitted it counts as
 *       0.
 * </ul>
 *
 * <p>Not thread-safe. Millimetres and newtons.
 */
final class CrackWidth {
  private final List<GaugeLimits> limits;
  private final double[] zeros;
  private final double[] compliances;
  private final double[] openings;
  private double opening = Double.NaN;
  private double rotation = Double.NaN;

  CrackWidth(List<GaugeLimits> limits) {
    this.limits = List.copyOf(limits);
    zeros = new double[limits.size()];
    compliances = new double[limits.size()];
    openings = new double[limits.size()];
    Arrays.fill(openings, Double.NaN);
  }

  void zero(int gauge, double millimetres) {
    zeros[gauge] = millimetres;
  }

  void compliance(int gauge, double millimetresPerNewton) {
    compliances[gauge] = millimetresPerNewton;
  }

  /** Takes a row; {@code mask} tells the gauges that count. */
  void accept(AlignedRow row, int mask) {
    double sum = 0;
    double sumFace0 = 0;
    double sumFace1 = 0;
    int count0 = 0;
    int count1 = 0;
    for (int i = 0; i < openings.length; i++) {
      openings[i] = row.values[i] - zeros[i];
      if ((mask & (1 << i)) == 0) {
        continue;
      }
      sum += openings[i];
      if (limits.get(i).face() == 0) {
        sumFace0 += openings[i];
        count0++;
      } else {
        sumFace1 += openings[i];
        count1++;
      }
    }
    opening = sum / (count0 + count1);
    rotation = sumFace0 / count0 - sumFace1 / count1;
  }

  /** Mean slope of opening on load before cracking over some gauges, mm/N; 0 until fitted. */
  double compliance(int mask) {
    double sum = 0;
    int count = 0;
    for (int i = 0; i < compliances.length; i++) {
      if ((mask & (1 << i)) != 0) {
        sum += compliances[i];
        count++;
      }
    }
    return count == 0 ? 0 : sum / count;
  }

  double opening() {
    return opening;
  }

  double rotation() {
    return rotation;
  }

  double opening(int gauge) {
    return openings[gauge];
  }
}
