package io.github.platenwire.lab;

import io.github.platenwire.calibration.CorrectionKind;
import io.github.platenwire.method.ChannelFacts;
import io.github.platenwire.method.GaugeMount;
import io.github.platenwire.quantity.Quantity;
import io.github.platenwire.quantity.Unit;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One channel of a rig: a value that one device at one port keeps sending. Immutable.
 *
 * @param name unique in the rig; lower-case letters, digits and hyphens
 * @param quantity force, length or mass
 * @param unit the unit in which its readings are kept
 * @param port where its device is reached, as written
 * @param device the name of the device's definition
 * @param field which value of the device's frame it is; may be absent if a frame has but one
 * @param delayMillis how long the device takes from measuring to sending, in milliseconds
 * @param calibration the name of its calibration, if it has one
 * @param correction the kind of correction that the rig file chooses; else the calibration chooses
 * @param rangeLow least value it can show, in {@code unit}
 * @param rangeHigh greatest value it can show, in {@code unit}
 * @param zeroTolerance greatest zero that may be taken off, in {@code unit}
 * @param lateAfterMillis silence after which it is late, in milliseconds
 * @param resolution smallest step, in {@code unit}, if known
 * @param greatestSlope greatest rate of change that the machine can produce, in {@code unit} a
 *     second, if known
 * @param mount how a gauge sits on the specimen, if the rig file says so
 */
public record Channel(
    String name,
    Quantity quantity,
    Unit unit,
    String port,
    String device,
    Optional<String> field,
    double delayMillis,
    Optional<String> calibration,
    Optional<CorrectionKind> correction,
    double rangeLow,
    double rangeHigh,
    double zeroTolerance,
    double lateAfterMillis,
    OptionalDouble resolution,
    OptionalDouble greatestSlope,
    Optional<GaugeMount> mount) {

  /**
   * What a method may know of this channel.
   *
   * @param calibrated the channel's calibration, if it has one
   * @throws IllegalArgumentException if the calibration cannot give the correction that the channel
   *     asks for; the message is fit for a person
   */
  public ChannelFacts facts(Optional<Calibration> calibrated) {
    return new ChannelFacts(
            name,
            quantity,
            unit,
            rangeLow,
            rangeHigh,
            resolution,
            zeroTolerance,
            greatestSlope,
            calibrated.map(Calibration::expandedUncertaintyPercent).orElse(OptionalDouble.empty()))
        .corrected(
            calibrated
                .filter(known -> known.expandedUncertaintyPercent().isPresent())
                .map(known -> known.residualPercent(known.fit(correction)))
                .orElse(OptionalDouble.empty()))
        .mounted(mount);
  }
}
