package io.github.platenwire.recorder;

import io.github.platenwire.device.DeviceDefinition;
import io.github.platenwire.method.ChannelFacts;
import io.github.platenwire.method.Method;
import io.github.platenwire.method.Methods;
import io.github.platenwire.method.Specimen;
import io.github.platenwire.quantity.Quantity;
import io.github.platenwire.quantity.Unit;
import io.github.platenwire.record.DiskFolder;
import io.github.platenwire.record.RawHeader.HeaderChannel;
import io.github.platenwire.record.RawHeader.KeptFile;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** A rig with a load and two crack gauges, and a beam on it. */
final class BeamRig {
  static final List<String> NAMES = List.of("load", "gauge-a", "gauge-b");
  private static final List<String> DEVICES =
      List.of("signed-line-kn", "gauge-line-mm", "gauge-line-mm");

  private BeamRig() {}

  /** A channel, the load first, on a port. */
  static ChannelSetup setup(int channel, String port) throws Exception {
    String device = DEVICES.get(channel);
    String text = Files.readString(Path.of("devices", device + ".toml"));
    boolean load = channel == 0;
    ChannelFacts facts =
        new ChannelFacts(
            NAMES.get(channel),
            load ? Quantity.FORCE : Quantity.LENGTH,
            load ? Unit.KILONEWTON : Unit.MILLIMETRE,
            -5,
            load ? 200 : 5,
            OptionalDouble.of(load ? 0.001 : 0.0001),
            4,
            OptionalDouble.empty(),
            OptionalDouble.of(0.5));
    return new ChannelSetup(
        new HeaderChannel(facts, port, 0, new KeptFile(device, text), 0, 1000, Optional.empty(), 1),
        DeviceDefinition.parse(text, device + ".toml"));
  }

  /** A test of a beam by the split-beam method into a file. */
  static RecordingPlan plan(List<ChannelSetup> setups, Path file) {
    Method method = Methods.shipped("split-beam").orElseThrow();
    Specimen beam =
        new Specimen(
            "NA-PB-1",
            "NA-PB",
            "beam",
            List.of(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            Optional.empty(),
            OptionalDouble.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Map.of());
    return TestPlans.plan(
        new DiskFolder(),
        file,
        setups.stream().map(ChannelSetup::header).toList(),
        method,
        new KeptFile(method.name(), method.text()),
        beam,
        Optional.empty());
  }
}
