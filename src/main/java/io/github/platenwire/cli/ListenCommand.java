package io.github.platenwire.cli;

import io.github.platenwire.device.Asking;
import io.github.platenwire.device.DeviceDefinition;
import io.github.platenwire.port.LineSettings;
import io.github.platenwire.port.Link;
import io.github.platenwire.port.PortAddress;
import io.github.platenwire.port.PortOpener;
import io.github.platenwire.port.Ports;
import io.github.platenwire.quantity.UnitSystem;
import io.github.platenwire.reading.EscapedBytes;
import io.github.platenwire.reading.MonotonicClock;
import io.github.platenwire.reading.SystemClocks;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code listen}: shows what a port says. */
@Command(
    name = "listen",
    description = {
      "Show what a port says: the bytes, and with --device the readings decoded from them; at the"
          + " end the rate, how evenly the readings came, and the share of bad frames.",
      "Nothing is recorded. Nothing is sent either, unless the definition says that the device"
          + " speaks only when asked: then it is asked, and what is sent is said first."
    },
    mixinStandardHelpOptions = true,
    versionProvider = Version.class,
    footer = {
      "",
      "Examples:",
      "  platenwire listen /dev/ttyUSB0 --baud 9600",
      "  platenwire listen /dev/ttyUSB0 --device signed-line-lbf --hex --for 10",
      "  platenwire listen tcp://192.0.2.7:4001 --device status-line-kn --save bench.bytes"
    })
final class ListenCommand implements Callable<Integer> {
  @Parameters(
      paramLabel = "PORT",
      description = "A serial port, tcp://host:port, or replay:FILE (a byte log).")
  private String port = "";

  @Option(
      names = "--device",
      paramLabel = "NAME",
      description =
          "Decode by this definition, of the lab folder or shipped with the program, or a .toml file.")
  private @Nullable String device;

  @Option(
      names = "--hex",
      description = "Show the bytes in hexadecimal and as text, also with --device.")
  private boolean hex;

  @Option(
      names = {"--for", "--seconds"},
      paramLabel = "SECONDS",
      description = "End after so many seconds (default: Ctrl-C ends it).")
  private @Nullable Double seconds;

  @Option(
      names = "--save",
      paramLabel = "FILE",
      description =
          "Keep the bytes with their times in a new byte log, which replay:FILE plays again.")
  private @Nullable Path save;

  @Option(names = "--json", description = "Print nothing but a JSON summary at the end.")
  private boolean json;

  @Mixin private final LineOption line = new LineOption();
  @Mixin private final DefinitionOption definitions = new DefinitionOption();

  @Override
  public Integer call() throws Exception {
    if (seconds != null && !(seconds > 0 && seconds <= 1e9)) {
      throw new CommandException(ExitCode.USAGE, "--for must be above 0 seconds");
    }
    MonotonicClock clock = SystemClocks.monotonic();
    PortAddress address = PortAddress.parse(port);
    Optional<DeviceDefinition> definition =
        device == null ? Optional.empty() : Optional.of(definitions.find(device));
    LineSettings settings =
        line.over(definition.map(DeviceDefinition::lineSettings).orElse(LineSettings.COMMON));
    Face face = Face.standard(UnitSystem.SI);
    PortOpener opener = Ports.opener(address, settings, clock);
    boolean log = address instanceof PortAddress.ByteLog;
    if (!log && definition.flatMap(DeviceDefinition::asking).isPresent()) {
      Asking asking = definition.get().asking().orElseThrow();
      (json ? Face.besideJson(UnitSystem.SI) : face).line(asked(definition.get().name(), asking));
      opener = asking.opener(opener, clock, Link.Pause.REAL);
    }
    ListenShow show =
        json ? ListenShow.NOTHING : hex || device == null ? ListenShow.BYTES : ListenShow.READINGS;
    try (Listening listening =
            new Listening(definition, face, show, log, clock, Optional.ofNullable(save));
        Link link = Link.open(port, opener, listening, clock)) {
      listening.await(
          seconds == null ? Long.MAX_VALUE : (long) (seconds * TimeUnit.SECONDS.toNanos(1)));
    }
    return ExitCode.FINE;
  }

  /** What is sent to the device. */
  private static String asked(String name, Asking asking) {
    List<byte[]> once = asking.opening();
    String opening =
        once.isEmpty()
            ? ""
            : once.stream().map(EscapedBytes::encode).collect(Collectors.joining(" ")) + " once, ";
    String identity = asking.identity().map(b -> EscapedBytes.encode(b) + " once, ").orElse("");
    return String.format(
        Locale.ROOT,
        "This writes to the device, for '%s' speaks only when asked. Sent: %s%s%s each %.3f s.",
        name,
        opening,
        identity,
        EscapedBytes.encode(asking.request()),
        asking.intervalNanos() / 1e9);
  }
}
