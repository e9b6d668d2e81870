package io.github.platenwire.cli;

import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** {@code report}: pages for people, as HTML and PDF. */
@Command(
    name = "report",
    description = {
      "Make a report as one HTML page that needs nothing beside it, and as PDF: of a test, of a set of companions,",
      "of the study, of a calibration. Every figure stands with its record, its rows and the command that explains it."
    },
    mixinStandardHelpOptions = true,
    versionProvider = Version.class,
    subcommands = {
      ReportTestCommand.class,
      ReportCompanionsCommand.class,
      ReportStudyCommand.class,
      ReportCalibrationCommand.class
    },
    synopsisSubcommandLabel = "KIND",
    footer = {
      "",
      "Examples:",
      "  platenwire report test RA-S-07-1 --lab alder-lab",
      "  platenwire report companions RA-S 7 --lab alder-lab",
      "  platenwire report study --lab alder-lab --pdf study.pdf",
      "  platenwire report calibration frame-1-load --lab alder-lab"
    })
final class ReportCommand implements Runnable {
  @Spec private @Nullable CommandSpec spec;

  @Override
  public void run() {
    if (spec != null) {
      throw new ParameterException(
          spec.commandLine(),
          "say what the report is of: " + String.join(", ", spec.subcommands().keySet()));
    }
  }
}
