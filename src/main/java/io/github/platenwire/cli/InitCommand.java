package io.github.platenwire.cli;

import io.github.platenwire.lab.LabException;
import io.github.platenwire.lab.LabFolder;
import io.github.platenwire.lab.LabTemplate;
import io.github.platenwire.lab.PrivateKeys;
import io.github.platenwire.lab.Register;
import io.github.platenwire.lab.SharedRegister;
import io.github.platenwire.quantity.UnitSystem;
import io.github.platenwire.reading.SystemClocks;
import io.github.platenwire.terminal.SystemTerminal;
import java.io.IOException;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
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
      "  platenwire init alder-lab --name \"Alder materials lab\" --units inch-pound --zone America/Denver",
      "  platenwire init alder-lab --new-key frame-1     the rig moved to this machine"
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

  @Option(
      names = "--new-key",
      paramLabel = "RIG",
      description =
          "Give a rig a new key on this machine, which has not the old one; lines signed so far stay valid.")
  private @Nullable String newKey;

  @Mixin private final KeysOption keysOption = new KeysOption();

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
    if (newKey != null) {
      return enrol(lab, newKey);
    }
    SystemTerminal.out().lines(List.of("Made the lab folder " + lab.root() + "."));
    keys(lab);
    SystemTerminal.out()
        .lines(
            List.of(
                "Next:",
                "  1. Look at rigs/frame-1.toml: name the port and the device of your load frame.",
                "  2. Write your specimens into specimens.csv; any spreadsheet will do.",
                "  3. platenwire listen PORT --device NAME --lab "
                    + folder
                    + "   shows what the port says.",
                "  4. platenwire record SPECIMEN --lab " + folder + "   records a test."));
    return ExitCode.FINE;
  }

  /** Every rig gets a key; those of other machines are left alone. */
  private void keys(LabFolder lab) throws IOException {
    PrivateKeys keys = keysOption.open();
    for (String rig : lab.rigNames()) {
      try {
        Register register = Register.open(lab, rig, keys, SystemClocks.wall());
        SystemTerminal.out()
            .lines(
                List.of(
                    "The register of rig "
                        + rig
                        + " is signed with key "
                        + register.fingerprint()
                        + "; its private part is in "
                        + keys.folder()
                        + ". Write the key's name into your binder."));
      } catch (LabException e) {
        SystemTerminal.out().lines(List.of(String.valueOf(e.getMessage())));
      }
    }
  }

  private int enrol(LabFolder lab, String rig) throws LabException, IOException {
    lab.rig(rig);
    Register register = Register.enrol(lab, rig, keysOption.open(), SystemClocks.wall());
    List<String> lines = new ArrayList<>();
    lines.add(
        "Rig "
            + rig
            + " signs with key "
            + register.fingerprint()
            + " from now on; the register says so, and what was signed before stays valid.");
    SharedRegister.join(lab, rig).ifPresent(lines::add);
    SystemTerminal.out().lines(lines);
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
