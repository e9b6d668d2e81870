package io.github.platenwire.cli;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
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
  /** Every command by its name, in the order of the help. */
  private static final Map<String, Class<?>> COMMANDS = commands();

  /** A command line of these words alone needs no command. */
  private static final Set<String> VERSION = Set.of("--version", "-V");

  @Spec private @Nullable CommandSpec spec;

  /** Runs one command and ends the process with its exit code. */
  public static void main(String[] args) {
    int exitCode = commandLineFor(args).execute(args);
    Logging.stop();
    System.exit(exitCode);
  }

  private static Map<String, Class<?>> commands() {
    Map<String, Class<?>> commands = new LinkedHashMap<>();
    commands.put("init", InitCommand.class);
    commands.put("record", RecordCommand.class);
    commands.put("listen", ListenCommand.class);
    commands.put("probe", ProbeCommand.class);
    commands.put("device", DeviceCommand.class);
    commands.put("emulate", EmulateCommand.class);
    commands.put("demo", DemoCommand.class);
    commands.put("reduce", ReduceCommand.class);
    commands.put("explain", ExplainCommand.class);
    commands.put("recover", RecoverCommand.class);
    commands.put("observe", ObserveCommand.class);
    commands.put("audit", AuditCommand.class);
    commands.put("calibration", CalibrationCommand.class);
    commands.put("chart", ChartCommand.class);
    commands.put("report", ReportCommand.class);
    commands.put("study", StudyCommand.class);
    commands.put("compare", CompareCommand.class);
    commands.put("bench", BenchCommand.class);
    commands.put("help", HelpCommand.class);
    commands.put("generate-completion", GenerateCompletion.class);
    return commands;
  }

  /**
   * The command line for these words. Where they begin with a command's name it knows that command
   * alone: setting all of them up takes as long as starting Java.
   */
  static CommandLine commandLineFor(String... args) {
    if (args.length > 0) {
      Class<?> named = COMMANDS.get(args[0]);
      if (named != null && named != HelpCommand.class && named != GenerateCompletion.class) {
        return commandLine(Map.of(args[0], named));
      }
      if (args.length == 1 && VERSION.contains(args[0])) {
        return commandLine(Map.of());
      }
    }
    return commandLine();
  }

  /** The command line with every command and its error handling. */
  static CommandLine commandLine() {
    return commandLine(COMMANDS);
  }

  private static CommandLine commandLine(Map<String, Class<?>> commands) {
    CommandLine command = new CommandLine(new Platenwire());
    commands.forEach(command::addSubcommand);
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
