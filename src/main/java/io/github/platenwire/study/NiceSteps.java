package io.github.platenwire.study;

import io.github.platenwire.quantity.Unit;
import io.github.platenwire.statistics.Interval;
import java.util.stream.IntStream;

/** Round values over a range, in steps of 1, 2 or 5 times a power of ten. Stateless. */
final class NiceSteps {
  private NiceSteps() {}

  /**
   * The multiples, above zero, of the smallest round step that gives no more values than asked for.
   *
   * @param range in base units
   * @param unit in which the values are round
   * @param most how many values at most, at least 2
   * @return in base units, rising; may be empty for a very narrow range
   */
  static double[] within(Interval range, Unit unit, int most) {
    double low = unit.fromBase(range.low());
    double high = unit.fromBase(range.high());
    double step = step((high - low) / (most - 1));
    int first = Math.max(1, (int) Math.ceil(low / step - 1e-9));
    int last = (int) Math.floor(high / step + 1e-9);
    return IntStream.rangeClosed(first, last)
        .mapToDouble(i -> unit.toBase(i * step))
        .map(value -> Math.max(range.low(), Math.min(range.high(), value)))
        .toArray();
  }

  private static double step(double least) {
    double power = Math.pow(10, Math.floor(Math.log10(least)));
    for (double nice : new double[] {1, 2, 5}) {
      if (nice * power >= least) {
        return nice * power;
      }
    }
    return 10 * power;
  }
}
