package io.github.platenwire.chart;

import io.github.platenwire.method.ChordPart;
import io.github.platenwire.quantity.Unit;
import java.util.Arrays;

/**
 * Stress against strain of a cylinder under its loading cycles, one point for each reading of the
 * load. Filled by {@link LoadTrace}; only read afterwards. Not thread-safe while it is filled.
 */
public final class StrainTrace {
  private double[] microstrains = new double[4096];
  private double[] megapascals = new double[4096];
  private int count;
  private double firstMicrostrain;

  StrainTrace() {}

  /** Takes what a view shows; a part without a strain is passed over. */
  void add(double stressMegapascals, ChordPart part) {
    if (!Double.isFinite(stressMegapascals) || !Double.isFinite(part.strain())) {
      return;
    }
    if (count == microstrains.length) {
      microstrains = Arrays.copyOf(microstrains, 2 * count);
      megapascals = Arrays.copyOf(megapascals, 2 * count);
    }
    firstMicrostrain = Unit.MICROSTRAIN.fromBase(part.firstStrain());
    microstrains[count] = Unit.MICROSTRAIN.fromBase(part.strain());
    megapascals[count] = stressMegapascals;
    count++;
  }

  /** Whether there is nothing to draw. */
  boolean isEmpty() {
    return count == 0;
  }

  /** Strain along the axis at each reading, µm/m, from its cycle's zero. */
  double[] microstrains() {
    return Arrays.copyOf(microstrains, count);
  }

  /** Stress at each reading, MPa. */
  double[] megapascals() {
    return Arrays.copyOf(megapascals, count);
  }

  /** Strain at which a chord begins, µm/m. */
  double firstMicrostrain() {
    return firstMicrostrain;
  }
}
