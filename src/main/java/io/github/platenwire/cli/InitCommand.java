package io.github.platenwire.cli;

import io.github.platenwire.lab.LabFolder;
import io.github.platenwire.lab.LabTemplate;
import io.github.platenwire.quantity.UnitSystem;
import io.github.platenwire.terminal.SystemTerminal;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code init}: makes a lab folder. */
@Command(
    name = "init",
    description = "Make a lab folder: settings, an example rig, a specimen table, a study.",
    mixinStandardHelpOptions = true,
    versionProvider = Version.class,
    footer = {
      "",
      "Examples:",
      "  platenwire init alder-lab",
      "  platenwire init alder-lab --name \"Alder materials lab\" --units inch-pound --zone America/Denver"
    })
final class InitCommand implements Callable<Integer> {
  @Parameters(paramLabel = "DIR", description = "The folder to make; may be there if it is empty.")
  private Path folder = Path.of("");

  @Option(
      names = "--name",
      paramLabel = "NAME",
      description = "The lab's name, as printed on summaries (default: the folder's name).")
  private @Nullable String name;

  @Option(
      names = "--units",
      paramLabel = "SYSTEM",
      description = "Units shown first: si or inch-pound; both are always shown (default: si).")
  private String units = UnitSystem.SI.word();

  @Option(
      names = "--zone",
      paramLabel = "ZONE",
      description = "Time zone shown and used for times of casting (default: this machine's).")
  private @Nullable String zone;

  @Override
  public Integer call() throws Exception {
    UnitSystem system =
        UnitSystem.ofWord(units)
            .orElseThrow(
                () ->
                    new CommandException(
                        ExitCode.USAGE, "--units must be si or inch-pound, not '" + units + "'"));
    Path last = folder.toAbsolutePath().normalize().getFileName();
    String labName = Optional.ofNullable(name).orElse(last == null ? "lab" : last.toString());
    LabFolder lab = LabFolder.create(folder, LabTemplate.example(labName, zone(), system));
    SystemTerminal.out()
        .lines(
            List.of(
                "Made the lab folder " + lab.root() + ".",
                "Next:",
                "  1. Look at rigs/frame-1.toml: name the port and the device of your load frame.",
                "  2. Write your specimens into specimens.csv; any spreadsheet will do.",
                "  3. platenwire listen PORT --device NAME --lab "
                    + folder
                    + "   shows what the port says.",
                "  4. platenwire record SPECIMEN --lab " + folder + "   records a test."));
    return ExitCode.FINE;
  }

  private ZoneId zone() throws CommandException {
    if (zone == null) {
      return ZoneId.systemDefault();
    }
    try {
      return ZoneId.of(zone);
    } catch (DateTimeException e) {
      throw new CommandException(
          ExitCode.USAGE,
          "--zone: there is no time zone '" + zone + "'; write it like Europe/Vienna or UTC",
          e);
    }
  }
}
