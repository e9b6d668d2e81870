package io.github.platenwire.emulate;

import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;

/**
 * What an emulated load indicator makes of the load: when it samples, how far off it is, how finely
 * it shows, in which line, and what goes wrong on the way. Immutable; safe for any thread.
 *
 * @param layout how a reading is written
 * @param resolution smallest step in the layout's unit, a whole multiple of its last digit
 * @param capacityNewtons greatest load it can show; beyond it shows just that
 * @param rateHertz readings a second, 0.1 to 20000
 * @param jitterShare by how much of the interval a sample may come early or late, 0 to 0.45
 * @param noiseNewtons standard deviation of Gaussian noise, not negative
 * @param zeroNewtons what it shows without load
 * @param burstNanos bytes are handed over only at multiples of this time, as adapters do; 0 for at
 *     once
 * @param faults what goes wrong
 */
public record EmulatedIndicator(
    ReadingLayout layout,
    BigDecimal resolution,
    double capacityNewtons,
    double rateHertz,
    double jitterShare,
    double noiseNewtons,
    double zeroNewtons,
    long burstNanos,
    Faults faults) {
  /** Common hold-back of USB serial adapters, 16 ms in nanoseconds; common practice, no source. */
  public static final long ADAPTER_BURST_NANOS = 16_000_000;

  /**
   * Checks the parts against each other.
   *
   * @throws IllegalArgumentException if one is out of range or does not go with the layout
   */
  public EmulatedIndicator {
    Ranges.within("capacityNewtons", capacityNewtons, 1, 1e9);
    Ranges.within("rateHertz", rateHertz, 0.1, 20_000);
    Ranges.within("jitterShare", jitterShare, 0, 0.45);
    Ranges.within("noiseNewtons", noiseNewtons, 0, capacityNewtons);
    Ranges.within("zeroNewtons", zeroNewtons, -capacityNewtons, capacityNewtons);
    Ranges.within("burstNanos", (double) burstNanos, 0, 1e9);
    long step = countsPerStep(layout, resolution);
    double capacity = layout.unit().fromBase(capacityNewtons) * layout.countsPerUnit();
    if (capacity + step > layout.greatestCounts()) {
      throw new IllegalArgumentException(
          "the capacity does not fit the digits, capacityNewtons="
              + capacityNewtons
              + " greatestCounts="
              + layout.greatestCounts()
              + " unit="
              + layout.unit().symbol());
    }
  }

  /**
   * An indicator that samples evenly, shows the truth to its resolution, and never fails.
   *
   * @param layout how a reading is written
   * @param resolution smallest step in the layout's unit
   * @param capacityNewtons greatest load it can show
   * @param rateHertz readings a second
   */
  public static EmulatedIndicator perfect(
      ReadingLayout layout, BigDecimal resolution, double capacityNewtons, double rateHertz) {
    return new EmulatedIndicator(
        layout, resolution, capacityNewtons, rateHertz, 0, 0, 0, 0, Faults.NONE);
  }

  /** The same with Gaussian noise of a standard deviation and a zero that is off. */
  public EmulatedIndicator withNoiseAndZero(double newNoiseNewtons, double newZeroNewtons) {
    return new EmulatedIndicator(
        layout,
        resolution,
        capacityNewtons,
        rateHertz,
        jitterShare,
        newNoiseNewtons,
        newZeroNewtons,
        burstNanos,
        faults);
  }

  /** The same with uneven sampling and handing over in bursts. */
  public EmulatedIndicator withJitterAndBursts(double newJitterShare, long newBurstNanos) {
    return new EmulatedIndicator(
        layout,
        resolution,
        capacityNewtons,
        rateHertz,
        newJitterShare,
        noiseNewtons,
        zeroNewtons,
        newBurstNanos,
        faults);
  }

  /** The same with things going wrong. */
  public EmulatedIndicator withFaults(Faults newFaults) {
    return new EmulatedIndicator(
        layout,
        resolution,
        capacityNewtons,
        rateHertz,
        jitterShare,
        noiseNewtons,
        zeroNewtons,
        burstNanos,
        newFaults);
  }

  /**
   * What may lie in a port until somebody reads it: an empty line, or where there are no lines a
   * reading at rest.
   */
  public byte[] nudge() {
    String end = layout.terminator();
    return end.isEmpty()
        ? layout.bytes(new Shown(shownCounts(zeroNewtons), /* over= */ false, 0))
        : end.getBytes(StandardCharsets.US_ASCII);
  }

  /** The value shown for a load, in steps of the layout's last digit; never beyond the capacity. */
  long shownCounts(double newtons) {
    double held = Math.max(-capacityNewtons, Math.min(capacityNewtons, newtons));
    long step = countsPerStep(layout, resolution);
    double steps = layout.unit().fromBase(held) * layout.countsPerUnit() / step;
    return (long) Math.rint(steps) * step;
  }

  /** The load that a shown value says, in newtons. */
  double newtonsOf(long counts) {
    double shown = BigDecimal.valueOf(counts, layout.decimals()).doubleValue();
    return layout.unit().toBase(shown);
  }

  private static long countsPerStep(ReadingLayout layout, BigDecimal resolution) {
    try {
      long counts = resolution.movePointRight(layout.decimals()).longValueExact();
      if (counts > 0) {
        return counts;
      }
    } catch (ArithmeticException notWhole) {
      throw new IllegalArgumentException(
          "the resolution must be a whole multiple of the last digit, resolution="
              + resolution.toPlainString()
              + " decimals="
              + layout.decimals(),
          notWhole);
    }
    throw new IllegalArgumentException(
        "the resolution must be positive, resolution=" + resolution.toPlainString());
  }
}
