package io.github.platenwire.cli;

import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** {@code device}: definitions of devices. */
@Command(
    name = "device",
    description = "Write a device definition from a log, and hold one against what a device sent.",
    mixinStandardHelpOptions = true,
    versionProvider = Version.class,
    subcommands = {DeviceCheckCommand.class, DeviceNewCommand.class},
    synopsisSubcommandLabel = "COMMAND",
    footer = {
      "",
      "Examples:",
      "  platenwire listen /dev/ttyUSB0 --hex --for 60 --save bench.bytes",
      "  platenwire device new --sample bench.bytes --name bench-load",
      "  platenwire device check bench-load.toml --sample bench.bytes"
    })
final class DeviceCommand implements Runnable {
  @Spec private @Nullable CommandSpec spec;

  @Override
  public void run() {
    if (spec != null) {
      spec.commandLine().usage(spec.commandLine().getOut());
    }
  }
}
