package io.github.platenwire.cli;

import io.github.platenwire.commission.ProbePlan;
import io.github.platenwire.commission.ProbeResult;
import io.github.platenwire.commission.Prober;
import io.github.platenwire.device.DeviceDefinition;
import io.github.platenwire.port.LineSettings;
import io.github.platenwire.port.ListedPort;
import io.github.platenwire.port.PortAddress;
import io.github.platenwire.port.Ports;
import io.github.platenwire.quantity.UnitSystem;
import io.github.platenwire.reading.MonotonicClock;
import io.github.platenwire.reading.SystemClocks;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.TimeUnit;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code probe}: which definitions fit what ports say. */
@Command(
    name = "probe",
    description = {
      "List the ports with what the system knows of them, listen to each at common speeds, and show"
          + " which definitions fit what is heard.",
      "Nothing is sent to any device, unless --ask allows the requests by which definitions read.",
      "Ends with 1 if no definition fits, with 3 if no port could be opened."
    },
    mixinStandardHelpOptions = true,
    versionProvider = Version.class,
    footer = {
      "",
      "Examples:",
      "  platenwire probe",
      "  platenwire probe /dev/ttyUSB0 --baud 9600 --format 7E1",
      "  platenwire probe tcp://192.0.2.7:4001 --ask --device registers-load-and-gauge"
    })
final class ProbeCommand implements Callable<Integer> {
  @Parameters(
      paramLabel = "PORT",
      arity = "0..*",
      description =
          "Serial ports, tcp://host:port, or replay:FILE (default: every serial port that the system"
              + " lists).")
  private List<String> ports = new ArrayList<>();

  @Option(
      names = "--device",
      paramLabel = "NAME",
      description = "Try this definition only; may be given again (default: all).")
  private List<String> devices = new ArrayList<>();

  @Option(
      names = "--for",
      paramLabel = "SECONDS",
      description = "How long to listen at each setting (default: ${DEFAULT-VALUE}).")
  private double seconds = 1;

  @Option(
      names = "--ask",
      description = "Send the requests of definitions that ask, to ports that are silent.")
  private boolean ask;

  @Option(names = "--list", description = "Only list the ports; open none.")
  private boolean list;

  @Option(names = "--json", description = "Print a JSON list instead.")
  private boolean json;

  @Mixin private final LineOption line = new LineOption();
  @Mixin private final DefinitionOption definitions = new DefinitionOption();

  @Override
  public Integer call() throws Exception {
    if (!(seconds > 0 && seconds <= 3600)) {
      throw new CommandException(ExitCode.USAGE, "--for must be above 0 and at most 3600 seconds");
    }
    Face face = json ? Face.besideJson(UnitSystem.SI) : Face.standard(UnitSystem.SI);
    List<ListedPort> listed = ports.isEmpty() ? Ports.listed() : named();
    if (listed.isEmpty()) {
      throw new CommandException(
          ExitCode.DEVICE,
          "the system lists no serial port. Plug the device's adapter in, or name a port, such as"
              + " tcp://host:4001");
    }
    if (ask && !list) {
      face.line("Requests by which definitions read will be sent to ports that are silent.");
    }
    ProbePlan plan = plan();
    List<ProbedPort> probed = new ArrayList<>();
    for (ListedPort port : listed) {
      probed.add(list ? new ProbedPort(port, Optional.empty(), "") : probe(port, plan, face));
    }
    Face out = Face.standard(UnitSystem.SI);
    out.lines(json ? List.of(ProbeJson.text(probed)) : ProbeView.lines(probed, list, out));
    return list ? ExitCode.FINE : exitCode(probed);
  }

  private static int exitCode(List<ProbedPort> probed) {
    if (probed.stream().anyMatch(ProbedPort::fits)) {
      return ExitCode.FINE;
    }
    boolean opened = probed.stream().anyMatch(port -> port.result().isPresent());
    return opened ? ExitCode.NOT_MET : ExitCode.DEVICE;
  }

  /** The named ports, with what the system knows of those that it lists. */
  private List<ListedPort> named() throws IOException {
    List<ListedPort> named = new ArrayList<>();
    for (String port : ports) {
      Optional<ListedPort> known =
          PortAddress.parse(port) instanceof PortAddress.Serial
              ? Ports.listed().stream()
                  .filter(l -> l.path().equals(port) || l.path().endsWith("/" + port))
                  .findFirst()
              : Optional.empty();
      named.add(known.orElseGet(() -> new ListedPort(port, "", "")));
    }
    return named;
  }

  private ProbePlan plan() throws Exception {
    List<DeviceDefinition> wanted = new ArrayList<>();
    for (String device : devices) {
      wanted.add(definitions.find(device));
    }
    List<DeviceDefinition> tried = devices.isEmpty() ? definitions.all() : wanted;
    List<LineSettings> settings =
        line.isSet()
            ? List.of(line.over(LineSettings.COMMON))
            : ProbePlan.allSettings(tried.stream().filter(d -> d.asking().isEmpty()).toList());
    return new ProbePlan(tried, settings, (long) (seconds * TimeUnit.SECONDS.toNanos(1)), ask);
  }

  private ProbedPort probe(ListedPort port, ProbePlan plan, Face face) {
    MonotonicClock clock = SystemClocks.monotonic();
    PortAddress address = PortAddress.parse(port.path());
    ProbePlan own =
        address instanceof PortAddress.Serial
            ? plan
            : new ProbePlan(
                plan.definitions(), plan.settings().subList(0, 1), plan.listenNanos(), plan.ask());
    try (ProbeProgress progress =
        new ProbeProgress(
            face.redraws() ? face : Face.besideJson(UnitSystem.SI), port.path(), clock)) {
      ProbeResult result =
          new Prober(own, clock, progress)
              .probe(settings -> Ports.opener(address, settings, clock));
      return new ProbedPort(port, Optional.of(result), "");
    } catch (IOException e) {
      return new ProbedPort(port, Optional.empty(), String.valueOf(e.getMessage()));
    }
  }
}
