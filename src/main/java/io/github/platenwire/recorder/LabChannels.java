package io.github.platenwire.recorder;

import io.github.platenwire.device.DeviceDefinition;
import io.github.platenwire.device.DeviceDefinition.ValueField;
import io.github.platenwire.lab.Calibration;
import io.github.platenwire.lab.Channel;
import io.github.platenwire.lab.LabException;
import io.github.platenwire.lab.LabFolder;
import io.github.platenwire.lab.Rig;
import io.github.platenwire.port.LineSettings;
import io.github.platenwire.port.PortAddress;
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
   * @throws LabException if a device or a calibration is missing, or does not go with its channel
   */
  public static List<ChannelSetup> of(LabFolder lab, Rig rig) throws LabException {
    List<ChannelSetup> setups = new ArrayList<>();
    for (Channel channel : rig.channels()) {
      DeviceDefinition device = lab.device(channel.device());
      Optional<Calibration> calibration = lab.calibration(channel);
      int field = field(rig, channel, device);
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
                  calibration.map(Calibration::scale).orElse(1.0)),
              device));
    }
    return List.copyOf(setups);
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
    String where = "rigs/" + rig.name() + ".toml: channel '" + channel.name() + "': ";
    int index;
    if (channel.field().isPresent()) {
      index = names.indexOf(channel.field().get());
      if (index < 0) {
        throw new LabException(
            where
                + "device '"
                + device.name()
                + "' has no value '"
                + channel.field().get()
                + "'; it has: "
                + String.join(", ", names));
      }
    } else if (names.size() == 1) {
      index = 0;
    } else {
      throw new LabException(
          where
              + "device '"
              + device.name()
              + "' sends several values; say which one with field = \"…\": "
              + String.join(", ", names));
    }
    ValueField field = device.valueFields().get(index);
    if (field.unit().quantity() != channel.quantity()) {
      throw new LabException(
          where
              + "it measures "
              + channel.quantity().word()
              + ", but the value '"
              + field.name()
              + "' of device '"
              + device.name()
              + "' is in "
              + field.unit().symbol()
              + ", a "
              + field.unit().quantity().word());
    }
    return index;
  }
}
