package io.github.platenwire.method;

import io.github.platenwire.quantity.Quantity;
import io.github.platenwire.quantity.Unit;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What a method may know of one channel. Immutable. Values of its readings are in {@code unit}.
 *
 * @param name the channel's name in the rig file
 * @param quantity what it measures
 * @param unit the unit of its readings
 * @param rangeLow least value it can show, in {@code unit}
 * @param rangeHigh greatest value it can show, in {@code unit}
 * @param resolution smallest step, in {@code unit}, if known
 * @param zeroTolerance greatest zero that may be taken off, in {@code unit}
 * @param greatestSlope greatest rate of change that the machine can produce, in {@code unit} a
 *     second, if known
 * @param calibrationPercent expanded uncertainty (k = 2) of the calibration in percent of the
 *     reading, if known
 * @param correctionPercent what the correction leaves over at the calibrated values, likewise
 * @param delayMicros how long its device takes from measuring to sending, microseconds
 * @param microsPerByte time that one byte takes on its line, microseconds; 0 where there is none
 * @param mount how a gauge sits on the specimen, where it is said
 */
public record ChannelFacts(
    String name,
    Quantity quantity,
    Unit unit,
    double rangeLow,
    double rangeHigh,
    OptionalDouble resolution,
    double zeroTolerance,
    OptionalDouble greatestSlope,
    OptionalDouble calibrationPercent,
    OptionalDouble correctionPercent,
    long delayMicros,
    double microsPerByte,
    Optional<GaugeMount> mount) {
  /** A channel without a delay, on no serial line. */
  public ChannelFacts(
      String name,
      Quantity quantity,
      Unit unit,
      double rangeLow,
      double rangeHigh,
      OptionalDouble resolution,
      double zeroTolerance,
      OptionalDouble greatestSlope,
      OptionalDouble calibrationPercent) {
    this(
        name,
        quantity,
        unit,
        rangeLow,
        rangeHigh,
        resolution,
        zeroTolerance,
        greatestSlope,
        calibrationPercent,
        OptionalDouble.empty(),
        0,
        0,
        Optional.empty());
  }

  /** The same channel with what is known of its device's delay and its line. */
  public ChannelFacts timed(long delay, double byteMicros) {
    return new ChannelFacts(
        name,
        quantity,
        unit,
        rangeLow,
        rangeHigh,
        resolution,
        zeroTolerance,
        greatestSlope,
        calibrationPercent,
        correctionPercent,
        delay,
        byteMicros,
        mount);
  }

  /** The same channel with what is known of how its gauge is mounted. */
  public ChannelFacts mounted(Optional<GaugeMount> gauge) {
    return new ChannelFacts(
        name,
        quantity,
        unit,
        rangeLow,
        rangeHigh,
        resolution,
        zeroTolerance,
        greatestSlope,
        calibrationPercent,
        correctionPercent,
        delayMicros,
        microsPerByte,
        gauge);
  }

  /** The same channel with what its correction leaves over, in percent (k = 2), if known. */
  public ChannelFacts corrected(OptionalDouble newCorrectionPercent) {
    return new ChannelFacts(
        name,
        quantity,
        unit,
        rangeLow,
        rangeHigh,
        resolution,
        zeroTolerance,
        greatestSlope,
        calibrationPercent,
        newCorrectionPercent,
        delayMicros,
        microsPerByte,
        mount);
  }
}
