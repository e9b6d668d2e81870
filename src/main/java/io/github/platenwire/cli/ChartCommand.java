package io.github.platenwire.cli;

import io.github.platenwire.chart.AbsorptionChart;
import io.github.platenwire.chart.ChartWriter;
import io.github.platenwire.chart.CrackChart;
import io.github.platenwire.chart.FrontChart;
import io.github.platenwire.chart.FrontTrace;
import io.github.platenwire.chart.LoadChart;
import io.github.platenwire.chart.LoadTrace;
import io.github.platenwire.chart.Theme;
import io.github.platenwire.record.RawFileException;
import io.github.platenwire.terminal.SystemTerminal;
import java.io.IOException;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
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
      "Draw a test out of its raw file. A strength: load over time with zero, greatest load and",
      "break, and below it the rate of loading in its band. A crack: load against width with first",
      "cracks, thresholds and cycles into FILE, and width over time with holds into a second file",
      "whose name has -time before its ending. A front: its depth over time with both lines;",
      "masses: the absorption over the root of time with its rates."
    },
    mixinStandardHelpOptions = true,
    versionProvider = Version.class,
    footer = {
      "",
      "Examples:",
      "  platenwire chart records/2026-11/20261125T071502Z_RA-07-2.raw.csv --out RA-07-2.png",
      "  platenwire chart records/2026-11/20261125T071502Z_RA-07-2.raw.csv --out RA-07-2.svg --dark",
      "  platenwire chart records/2026-11/20261125T094502Z_NA-CB-1.raw.csv --out NA-CB-1.png",
      "  platenwire chart records/2026-11/20261125T094502Z_NA-CB-1.raw.csv --out w.svg --show width"
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

  @Option(
      names = "--show",
      paramLabel = "WHAT",
      description =
          "One chart alone: load (load over time), crack (load against width) or width (width over"
              + " time).")
  private @Nullable Show show;

  @Option(names = "--dark", description = "Draw on a dark ground.")
  private boolean dark;

  @Override
  public Integer call() throws Exception {
    checkName(Optional.ofNullable(out));
    if (out == null) {
      throw new CommandException(ExitCode.USAGE, "say --out FILE.png or --out FILE.svg");
    }
    for (Map.Entry<Path, JFreeChart> each : charts(out).entrySet()) {
      ChartWriter.write(each.getValue(), each.getKey());
      SystemTerminal.out().lines(List.of("Chart: " + each.getKey()));
    }
    return ExitCode.FINE;
  }

  /** What is to be drawn, by file. */
  private Map<Path, JFreeChart> charts(Path file) throws IOException, CommandException {
    try {
      Map<Path, JFreeChart> charts = new LinkedHashMap<>();
      Optional<FrontTrace> front = FrontTrace.read(record);
      if (front.isPresent()) {
        charts.put(
            file,
            AbsorptionChart.of(front.get(), theme(dark))
                .orElseGet(() -> FrontChart.of(front.get(), theme(dark))));
        return charts;
      }
      LoadTrace trace = LoadTrace.read(record);
      wanted(trace, file).forEach((what, path) -> charts.put(path, chart(what, trace)));
      return charts;
    } catch (RawFileException e) {
      throw new CommandException(ExitCode.NOT_MET, String.valueOf(e.getMessage()), e);
    }
  }

  /** What a chart shows. */
  enum Show {
    LOAD,
    CRACK,
    WIDTH;

    @Override
    public String toString() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  private Map<Show, Path> wanted(LoadTrace trace, Path file) throws CommandException {
    if (show == null) {
      return trace.crack().isEmpty()
          ? Map.of(Show.LOAD, file)
          : new TreeMap<>(Map.of(Show.CRACK, file, Show.WIDTH, second(file)));
    }
    if (show != Show.LOAD && trace.crack().isEmpty()) {
      throw new CommandException(
          ExitCode.USAGE,
          "the method "
              + trace.header().method().name()
              + " followed no crack; draw this test with --show load");
    }
    return Map.of(show, file);
  }

  private static Path second(Path file) {
    String name = String.valueOf(file.getFileName());
    int dot = name.lastIndexOf('.');
    return file.resolveSibling(name.substring(0, dot) + "-time" + name.substring(dot));
  }

  private JFreeChart chart(Show what, LoadTrace trace) {
    return switch (what) {
      case LOAD -> LoadChart.of(trace, theme(dark));
      case CRACK -> CrackChart.ofLoad(trace, theme(dark));
      case WIDTH -> CrackChart.ofTime(trace, theme(dark));
    };
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
