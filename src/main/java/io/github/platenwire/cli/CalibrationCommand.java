package io.github.platenwire.cli;

import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** {@code calibration}: what the lab's calibrations say and when they are due. */
@Command(
    name = "calibration",
    description =
        "Hold calibrations against the limits of their class, and list when they are due.",
    mixinStandardHelpOptions = true,
    versionProvider = Version.class,
    subcommands = {CalibrationCheckCommand.class, CalibrationListCommand.class},
    synopsisSubcommandLabel = "COMMAND",
    footer = {
      "",
      "Examples:",
      "  platenwire calibration list",
      "  platenwire calibration check frame-1-load --chart frame-1-load.png"
    })
final class CalibrationCommand implements Runnable {
  @Spec private @Nullable CommandSpec spec;

  @Override
  public void run() {
    if (spec != null) {
      spec.commandLine().usage(spec.commandLine().getOut());
    }
  }
}
