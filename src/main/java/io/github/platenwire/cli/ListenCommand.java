package io.github.platenwire.cli;

import io.github.platenwire.device.DeviceDefinition;
import io.github.platenwire.lab.LabFolder;
import io.github.platenwire.port.LineSettings;
import io.github.platenwire.port.Link;
import io.github.platenwire.port.PortAddress;
import io.github.platenwire.port.Ports;
import io.github.platenwire.reading.MonotonicClock;
import io.github.platenwire.reading.SystemClocks;
import io.github.platenwire.terminal.SystemTerminal;
import io.github.platenwire.terminal.TerminalOut;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code listen}: shows what a port says. */
@Command(
    name = "listen",
    description = {
      "Show what a port says: the bytes, and with --device the readings decoded from them.",
      "Nothing is recorded and nothing is sent to the device."
    },
    mixinStandardHelpOptions = true,
    versionProvider = Version.class,
    footer = {
      "",
      "Examples:",
      "  platenwire listen /dev/ttyUSB0 --baud 9600",
      "  platenwire listen /dev/ttyUSB0 --device signed-line-lbf --seconds 10",
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
      description = "Decode by this definition, of the lab folder or shipped with the program.")
  private @Nullable String device;

  @Option(
      names = "--baud",
      paramLabel = "N",
      description = "Speed of the line, instead of the definition's.")
  private @Nullable Integer baud;

  @Option(
      names = "--seconds",
      paramLabel = "S",
      description = "End after so many seconds (default: Ctrl-C ends it).")
  private @Nullable Double seconds;

  @Option(
      names = "--save",
      paramLabel = "FILE",
      description = "Keep the bytes with their times in a new byte log.")
  private @Nullable Path save;

  @Option(
      names = "--lab",
      paramLabel = "DIR",
      description =
          "A lab folder with device definitions of its own (default: the current folder, if it is one).")
  private @Nullable Path lab;

  @Override
  public Integer call() throws Exception {
    MonotonicClock clock = SystemClocks.monotonic();
    PortAddress address = PortAddress.parse(port);
    Optional<DeviceDefinition> definition = definition();
    refuseAsked(definition);
    LineSettings settings =
        settings(definition.map(DeviceDefinition::lineSettings).orElse(LineSettings.COMMON));
    TerminalOut out = SystemTerminal.out();
    try (Listening listening =
            new Listening(
                definition,
                out,
                SystemTerminal.traits().glyphs(),
                clock,
                Optional.ofNullable(save));
        Link link = Link.open(port, Ports.opener(address, settings, clock), listening, clock)) {
      listening.await(
          seconds == null ? Long.MAX_VALUE : (long) (seconds * TimeUnit.SECONDS.toNanos(1)));
    }
    return ExitCode.FINE;
  }

  /** Listening sends nothing, so a device that speaks only when asked would stay silent. */
  private static void refuseAsked(Optional<DeviceDefinition> definition) throws CommandException {
    if (definition.isPresent() && definition.get().asking().isPresent()) {
      throw new CommandException(
          ExitCode.USAGE,
          "'"
              + definition.get().name()
              + "' speaks only when it is asked, and listen sends nothing. Name the device in a rig"
              + " file: the checklist of 'platenwire record' asks it and shows what it answers.");
    }
  }

  private LineSettings settings(LineSettings usual) {
    return baud == null
        ? usual
        : new LineSettings(baud, usual.dataBits(), usual.parity(), usual.stopBits(), usual.flow());
  }

  private Optional<DeviceDefinition> definition() throws Exception {
    if (device == null) {
      return Optional.empty();
    }
    Path folder = lab == null ? Path.of("") : lab;
    boolean isLab = lab != null || Files.exists(folder.resolve("lab.toml"));
    return Optional.of(
        isLab ? LabFolder.open(folder).device(device) : LabFolder.deviceOutsideLab(folder, device));
  }
}
