package io.github.platenwire.bench;

import java.util.List;

/** The middle of several runs. Stateless. */
final class Medians {
  private Medians() {}

  /** The median; of an even number the mean of the middle two. */
  static double of(List<Double> runs) {
    double[] sorted = runs.stream().mapToDouble(Double::doubleValue).sorted().toArray();
    int middle = sorted.length / 2;
    return sorted.length % 2 == 1 ? sorted[middle] : (sorted[middle - 1] + sorted[middle]) / 2;
  }
}
