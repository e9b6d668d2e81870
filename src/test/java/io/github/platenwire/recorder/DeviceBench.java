package io.github.platenwire.recorder;

import io.github.platenwire.device.DeviceDefinition;
import io.github.platenwire.emulate.PseudoTerminal;
import io.github.platenwire.method.ChannelFacts;
import io.github.platenwire.port.PortAddress;
import io.github.platenwire.port.Ports;
import io.github.platenwire.quantity.Quantity;
import io.github.platenwire.quantity.Unit;
import io.github.platenwire.reading.SystemClocks;
import io.github.platenwire.record.RawHeader.HeaderChannel;
import io.github.platenwire.record.RawHeader.KeptFile;
import io.github.platenwire.record.RawRow;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.function.Predicate;

/**
 * Devices on pseudo-terminals, recorded by the real path: serial port, link, queue, recorder
 * thread, raw file. Everything that is sent to a port is up to the test.
 */
final class DeviceBench implements AutoCloseable {
  private static final Duration LIMIT = Duration.ofSeconds(25);

  private final List<ChannelSetup> setups = new ArrayList<>();
  private final List<PseudoTerminal> lines = new ArrayList<>();

  /** A new line with a device on it. */
  PseudoTerminal line() throws Exception {
    PseudoTerminal line = PseudoTerminal.open();
    lines.add(line);
    return line;
  }

  /** Takes one value of a device as a channel; the range is -1e6 to 1e6 in the value's unit. */
  void channel(String name, PseudoTerminal line, String definition, int field) throws Exception {
    DeviceDefinition device = DeviceDefinition.parse(definition, name + ".toml");
    Unit unit = device.valueFields().get(field).unit();
    ChannelFacts facts =
        new ChannelFacts(
            name,
            unit.quantity(),
            unit.quantity() == Quantity.FORCE ? Unit.NEWTON : Unit.MILLIMETRE,
            -1e6,
            1e6,
            OptionalDouble.empty(),
            1e6,
            OptionalDouble.empty(),
            OptionalDouble.empty());
    HeaderChannel header =
        new HeaderChannel(
            facts,
            line.path(),
            field,
            new KeptFile(device.name(), definition),
            0,
            2000,
            Optional.empty(),
            1);
    setups.add(new ChannelSetup(header, device));
  }

  /** A shipped definition; a busy machine may keep an answer back for longer than a device. */
  static String shipped(String definition) throws Exception {
    return Files.readString(Path.of("devices", definition + ".toml"))
        .replaceFirst("timeout-ms = \\d+", "timeout-ms = 5000");
  }

  /** Records until a condition holds for the progress, and closes the record. */
  RecordedTest record(Path file, Predicate<Progress> enough) throws Exception {
    return record(file, enough, () -> {});
  }

  /** The same, with something done as soon as the recording runs. */
  RecordedTest record(Path file, Predicate<Progress> enough, Runnable running) throws Exception {
    try (RigConnection connection =
        RigConnection.open(
            setups,
            (port, settings) ->
                Ports.opener(PortAddress.parse(port), settings, SystemClocks.monotonic()),
            RecorderClocks.system())) {
      Recording recording = connection.record(plan(file), progress -> {});
      running.run();
      long until = SystemClocks.monotonic().nanos() + LIMIT.toNanos();
      while (recording.progress().filter(enough).isEmpty()) {
        if (SystemClocks.monotonic().nanos() > until) {
          recording.stop();
          recording.await();
          throw new AssertionError("not enough came: " + recording.progress());
        }
        LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(1));
      }
      recording.stop();
      return recording.await();
    }
  }

  private RecordingPlan plan(Path file) {
    return TestPlans.counting(
        file, setups.stream().map(ChannelSetup::header).toList(), Long.MAX_VALUE);
  }

  /** The rows of one channel. */
  static List<RawRow> rows(Path file, String channel) throws Exception {
    return Bench.rows(file).stream()
        .filter(row -> !row.isEvent() && row.channel().equals(channel))
        .toList();
  }

  @Override
  public void close() {
    lines.forEach(PseudoTerminal::close);
  }
}
