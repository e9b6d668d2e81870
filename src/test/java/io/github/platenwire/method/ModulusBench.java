package io.github.platenwire.method;

import io.github.platenwire.device.DeviceDefinition;
import io.github.platenwire.device.FrameDecoder;
import io.github.platenwire.device.FrameSink;
import io.github.platenwire.emulate.BeamDevice;
import io.github.platenwire.emulate.BeamReadings;
import io.github.platenwire.emulate.EmulatedModulus;
import io.github.platenwire.emulate.GaugedTruth;
import io.github.platenwire.quantity.Quantity;
import io.github.platenwire.quantity.Unit;
import io.github.platenwire.reading.Quality;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;

/** Runs emulated cylinders through the method for a modulus, by the bytes that the devices send. */
final class ModulusBench {
  static final Method METHOD = Methods.shipped("modulus-c469").orElseThrow();
  private static final Map<BeamDevice.Shows, DeviceDefinition> DEFINITIONS =
      Map.of(
          BeamDevice.Shows.LOAD, device("signed-line-kn"),
          BeamDevice.Shows.LENGTH, device("gauge-line-mm"),
          BeamDevice.Shows.STRAIN, device("strain-line"));

  final List<String> happenings = new ArrayList<>();
  final List<LiveView> views = new ArrayList<>();
  final MethodRun run;
  private final List<BeamDevice> devices;
  private long seq;

  ModulusBench(Specimen specimen, List<BeamDevice> devices, List<GaugeMount> mounts) {
    this.devices = devices;
    run = METHOD.start(specimen, setting(facts(devices, mounts)));
  }

  static TestSetting setting(List<ChannelFacts> channels) {
    return new TestSetting(Bench.START, Bench.ZONE, channels, Optional.empty());
  }

  private static DeviceDefinition device(String name) {
    try {
      return DeviceDefinition.parse(Files.readString(Path.of("devices", name + ".toml")), name);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (io.github.platenwire.toml.TomlException e) {
      throw new IllegalStateException(e);
    }
  }

  private static DeviceDefinition definition(BeamDevice device) {
    return Objects.requireNonNull(DEFINITIONS.get(device.shows()));
  }

  static Specimen cylinder(EmulatedModulus truth) {
    return cylinder(truth, truth.diameterMillimetres());
  }

  static Specimen cylinder(EmulatedModulus truth, Double... diameters) {
    return new Bench.SpecimenBuilder()
        .diameters(diameters)
        .length(2 * truth.diameterMillimetres())
        .sizes(Map.of(Dimension.COMPANION_STRENGTH, truth.strengthMegapascals()))
        .build();
  }

  static List<ChannelFacts> facts(List<BeamDevice> devices, List<GaugeMount> mounts) {
    List<ChannelFacts> facts = new ArrayList<>();
    for (BeamDevice device : devices) {
      int number = facts.size();
      ChannelFacts one =
          switch (device.shows()) {
            case LOAD -> facts("load", Quantity.FORCE, Unit.KILONEWTON, -10, 2000, 0.001, 0.5);
            case LENGTH ->
                facts("gauge-" + number, Quantity.LENGTH, Unit.MILLIMETRE, -5, 5, 0.0001, 0.8);
            case STRAIN ->
                facts("gauge-" + number, Quantity.STRAIN, Unit.MICROSTRAIN, -5e3, 5e3, 0.1, 0.8);
          };
      facts.add(
          one.timed(device.delayNanos() / 1000, 0)
              .mounted(number == 0 ? Optional.empty() : Optional.of(mounts.get(number - 1))));
    }
    return facts;
  }

  private static ChannelFacts facts(
      String name,
      Quantity quantity,
      Unit unit,
      double low,
      double high,
      double resolution,
      double percent) {
    return new ChannelFacts(
        name,
        quantity,
        unit,
        low,
        high,
        OptionalDouble.of(resolution),
        high / 10,
        OptionalDouble.empty(),
        OptionalDouble.of(percent));
  }

  /** Sends everything that the devices read, as bytes, each when it is due. */
  ModulusBench send(GaugedTruth truth, long seed) {
    List<BeamReadings> streams =
        devices.stream().map(device -> new BeamReadings(truth, device, seed)).toList();
    List<FrameDecoder> decoders = devices.stream().map(d -> definition(d).newDecoder()).toList();
    SendingOrder.run(
        streams,
        () -> run.ending().isPresent(),
        (device, reading) -> {
          byte[] line = streams.get(device).line(reading);
          decoders.get(device).accept(line, 0, line.length, reading.sentNanos(), new Into(device));
        });
    return this;
  }

  /** Hands decoded values to the method. */
  private final class Into implements FrameSink {
    private final int channel;

    Into(int channel) {
      this.channel = channel;
    }

    @Override
    public void value(
        byte[] frame,
        int from,
        int length,
        long arrivalNanos,
        int field,
        double value,
        Unit unit,
        Quality quality) {
      give(channel, arrivalNanos / 1000, length, value, quality);
    }

    @Override
    public void garbled(byte[] frame, int from, int length, long arrivalNanos) {
      give(channel, arrivalNanos / 1000, length, Double.NaN, Quality.GARBLED);
    }
  }

  void give(int channel, long micros, int bytes, double value, Quality quality) {
    run.reading(++seq, micros, channel, bytes, value, quality);
    List<MethodRun.Happening> news = run.takeHappenings();
    if (!news.isEmpty()) {
      views.add(run.view());
    }
    news.forEach(happening -> happenings.add(happening.text()));
  }
}
