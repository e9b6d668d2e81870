package io.github.platenwire.recorder;

import io.github.platenwire.calibration.CalibrationRuns;
import io.github.platenwire.calibration.Correction;
import io.github.platenwire.calibration.CorrectionFit;
import io.github.platenwire.device.DeviceDefinition;
import io.github.platenwire.device.DeviceDefinition.ValueField;
import io.github.platenwire.lab.Calibration;
import io.github.platenwire.lab.Channel;
import io.github.platenwire.lab.LabException;
import io.github.platenwire.lab.LabFolder;
import io.github.platenwire.lab.Rig;
import io.github.platenwire.port.LineSettings;
import io.github.platenwire.port.PortAddress;
import io.github.platenwire.quantity.Unit;
import io.github.platenwire.record.RawHeader.HeaderChannel;
import io.github.platenwire.record.RawHeader.KeptFile;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Brings a rig's channels together with their devices and calibrations. Stateless. */
public final class LabChannels {
  private LabChannels() {}

  /**
   * The rig's channels, ready to be recorded.
   *
   * @throws LabException if a device or a calibration is missing, or does not go with its channel;
   *     the message names the line of the rig file
   */
  public static List<ChannelSetup> of(LabFolder lab, Rig rig) throws LabException {
    List<ChannelSetup> setups = new ArrayList<>();
    for (Channel channel : rig.channels()) {
      DeviceDefinition device = lab.device(channel.device());
      Optional<Calibration> calibration = lab.calibration(channel);
      int field = field(rig, channel, device);
      Correction correction = correction(rig, channel, calibration);
      setups.add(
          new ChannelSetup(
              new HeaderChannel(
                  channel
                      .facts(calibration)
                      .timed(Math.round(channel.delayMillis() * 1000), byteMicros(channel, device)),
                  channel.port(),
                  field,
                  new KeptFile(device.name(), device.text()),
                  channel.delayMillis(),
                  channel.lateAfterMillis(),
                  calibration.map(c -> new KeptFile(c.name(), c.text())),
                  correction),
              device));
    }
    return List.copyOf(setups);
  }

  private static Correction correction(Rig rig, Channel channel, Optional<Calibration> calibration)
      throws LabException {
    if (calibration.isEmpty()) {
      return Correction.NONE;
    }
    Optional<Unit> unit = calibration.get().runs().map(CalibrationRuns::unit);
    if (unit.isPresent() && unit.get().quantity() != channel.quantity()) {
      throw rig.error(
          channel,
          "calibration",
          "it measures "
              + channel.quantity().word()
              + ", but the runs of the calibration '"
              + calibration.get().name()
              + "' are in "
              + unitWords(unit.get()));
    }
    try {
      CorrectionFit fit = calibration.get().fit(channel.correction());
      return fit.correction().inUnit(unit.orElse(channel.unit()), channel.unit());
    } catch (IllegalArgumentException e) {
      throw rig.error(channel, "correction", String.valueOf(e.getMessage()));
    }
  }

  /** Time of one byte on a serial line; frames from elsewhere come when they come. */
  private static double byteMicros(Channel channel, DeviceDefinition device) {
    LineSettings line = device.lineSettings();
    boolean serial =
        PortAddress.parse(channel.port()) instanceof PortAddress.Serial
            && !channel.port().startsWith("memory:")
            && !channel.port().startsWith("/dev/pts/");
    return serial ? 1e6 * line.bitsPerByte() / line.baud() : 0;
  }

  private static int field(Rig rig, Channel channel, DeviceDefinition device) throws LabException {
    List<String> names = device.valueFields().stream().map(ValueField::name).toList();
    int index = channel.field().map(names::indexOf).orElse(0);
    if (index < 0) {
      throw rig.error(
          channel,
          "field",
          "device '"
              + device.name()
              + "' has no value '"
              + channel.field().orElse("")
              + "'; it has: "
              + String.join(", ", names));
    }
    if (channel.field().isEmpty() && names.size() != 1) {
      throw rig.error(
          channel,
          "device",
          "device '"
              + device.name()
              + "' sends several values; say which one with field = \"…\": "
              + String.join(", ", names));
    }
    ValueField field = device.valueFields().get(index);
    if (field.unit().quantity() != channel.quantity()) {
      throw rig.error(
          channel,
          channel.field().isPresent() ? "field" : "device",
          "it measures "
              + channel.quantity().word()
              + ", but the value '"
              + field.name()
              + "' of device '"
              + device.name()
              + "' is in "
              + unitWords(field.unit()));
    }
    return index;
  }

  private static String unitWords(Unit unit) {
    return unit.symbol() + ", a " + unit.quantity().word();
  }
}
