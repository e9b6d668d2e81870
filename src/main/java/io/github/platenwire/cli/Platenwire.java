package io.github.platenwire.cli;

import org.jspecify.annotations.Nullable;
import picocli.AutoComplete.GenerateCompletion;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.HelpCommand;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** The program: every command hangs below this one. */
@Command(
    name = "platenwire",
    description = {
      "The wire between a concrete lab's machines and its records.",
      "It only listens: it never drives a machine, and it is no safety device."
    },
    mixinStandardHelpOptions = true,
    versionProvider = Version.class,
    subcommands = {
      InitCommand.class,
      RecordCommand.class,
      ListenCommand.class,
      ProbeCommand.class,
      DeviceCommand.class,
      EmulateCommand.class,
      DemoCommand.class,
      ReduceCommand.class,
      ExplainCommand.class,
      RecoverCommand.class,
      ObserveCommand.class,
      AuditCommand.class,
      CalibrationCommand.class,
      ChartCommand.class,
      ReportCommand.class,
      StudyCommand.class,
      CompareCommand.class,
      BenchCommand.class,
      HelpCommand.class,
      GenerateCompletion.class
    },
    synopsisSubcommandLabel = "COMMAND",
    exitCodeListHeading = "%nExit codes:%n",
    exitCodeList = {
      "0:all is well",
      "1:findings, or a check that was not met",
      "2:wrong usage or configuration",
      "3:device or link",
      "4:storage",
      "130:interrupted"
    },
    footer = {
      "",
      "Start here:",
      "  platenwire demo                  a whole lab day on emulated devices",
      "  platenwire init my-lab           make a lab folder",
      "  platenwire COMMAND --help        options and examples of a command"
    })
public final class Platenwire implements Runnable {
  @Spec private @Nullable CommandSpec spec;

  /** Runs one command and ends the process with its exit code. */
  public static void main(String[] args) {
    int exitCode = commandLine().execute(args);
    Logging.stop();
    System.exit(exitCode);
  }

  /** The command line with its error handling, as tests use it too. */
  static CommandLine commandLine() {
    CommandLine command = new CommandLine(new Platenwire());
    command.setExecutionExceptionHandler(Failures::handle);
    command.setParameterExceptionHandler(Failures::misused);
    command.setExpandAtFiles(false);
    CommandLine completion = command.getSubcommands().get("generate-completion");
    if (completion != null) {
      completion
          .getCommandSpec()
          .usageMessage()
          .description(
              "Print a script that completes commands in bash and zsh:"
                  + " source <(platenwire generate-completion)");
    }
    return command;
  }

  @Override
  public void run() {
    if (spec != null) {
      spec.commandLine().usage(spec.commandLine().getOut());
    }
  }
}
