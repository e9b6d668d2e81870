package io.github.platenwire.cli;

import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** {@code study}: how far a study has come. */
@Command(
    name = "study",
    description = "Look at the study that study.toml describes.",
    mixinStandardHelpOptions = true,
    versionProvider = Version.class,
    subcommands = StudyStatusCommand.class,
    synopsisSubcommandLabel = "COMMAND",
    footer = {"", "Examples:", "  platenwire study status --lab alder-lab"})
final class StudyCommand implements Runnable {
  @Spec private @Nullable CommandSpec spec;

  @Override
  public void run() {
    if (spec != null) {
      spec.commandLine().usage(spec.commandLine().getOut());
    }
  }
}
