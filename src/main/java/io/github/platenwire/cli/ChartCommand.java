package io.github.platenwire.cli;

import io.github.platenwire.chart.ChartWriter;
import io.github.platenwire.chart.FrontChart;
import io.github.platenwire.chart.FrontTrace;
import io.github.platenwire.chart.LoadChart;
import io.github.platenwire.chart.LoadTrace;
import io.github.platenwire.chart.Theme;
import io.github.platenwire.record.RawFileException;
import io.github.platenwire.terminal.SystemTerminal;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jfree.chart.JFreeChart;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code chart}: the picture of a test out of its raw file. */
@Command(
    name = "chart",
    description = {
      "Draw load over time of a test out of its raw file, with zero, greatest load and break, and",
      "below it the rate of loading in its band; of a front its depth over time with both lines."
    },
    mixinStandardHelpOptions = true,
    versionProvider = Version.class,
    footer = {
      "",
      "Examples:",
      "  platenwire chart records/2026-11/20261125T071502Z_RA-07-2.raw.csv --out RA-07-2.png",
      "  platenwire chart records/2026-11/20261125T071502Z_RA-07-2.raw.csv --out RA-07-2.svg --dark"
    })
final class ChartCommand implements Callable<Integer> {
  @Parameters(paramLabel = "RECORD", description = "A raw file (*.raw.csv).")
  private Path record = Path.of("");

  @Option(
      names = "--out",
      paramLabel = "FILE",
      required = true,
      description = "The chart; its name ends in .png or .svg.")
  private @Nullable Path out;

  @Option(names = "--dark", description = "Draw on a dark ground.")
  private boolean dark;

  @Override
  public Integer call() throws Exception {
    checkName(Optional.ofNullable(out));
    if (out == null) {
      throw new CommandException(ExitCode.USAGE, "say --out FILE.png or --out FILE.svg");
    }
    ChartWriter.write(chart(), out);
    SystemTerminal.out().lines(List.of("Chart: " + out));
    return ExitCode.FINE;
  }

  private JFreeChart chart() throws IOException, CommandException {
    try {
      Optional<FrontTrace> front = FrontTrace.read(record);
      return front.isPresent()
          ? FrontChart.of(front.get(), theme(dark))
          : LoadChart.of(LoadTrace.read(record), theme(dark));
    } catch (RawFileException e) {
      throw new CommandException(ExitCode.NOT_MET, String.valueOf(e.getMessage()), e);
    }
  }

  /** Refuses a chart's name that says not as what it is to be written. */
  static void checkName(Optional<Path> file) throws CommandException {
    if (file.isPresent() && !ChartWriter.canWrite(file.get())) {
      throw new CommandException(
          ExitCode.USAGE, "a chart's name must end in .png or .svg, not: " + file.get());
    }
  }

  static Theme theme(boolean dark) {
    return dark ? Theme.DARK : Theme.LIGHT;
  }
}
