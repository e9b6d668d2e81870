package io.github.platenwire.cli;

import io.github.platenwire.bench.BenchException;
import io.github.platenwire.bench.BenchFigure;
import io.github.platenwire.bench.BenchFigure.Ratio;
import io.github.platenwire.bench.BenchPart;
import io.github.platenwire.bench.BenchSize;
import io.github.platenwire.bench.MachineBench;
import io.github.platenwire.quantity.UnitSystem;
import io.github.platenwire.terminal.SystemTerminal;
import io.github.platenwire.terminal.TextTable;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** {@code bench}: how fast this machine records and audits. */
@Command(
    name = "bench",
    description = {
      "Measure how fast this machine records and audits: real bytes over pseudo-terminals, real"
          + " files on the disk of --folder,",
      "the program's own path, beside readers that do less. Nothing else should run meanwhile. A"
          + " scratch lab folder is made and taken away again.",
      "Some minutes in all; the part 'day' writes about 1 GB."
    },
    mixinStandardHelpOptions = true,
    versionProvider = Version.class,
    footer = {
      "",
      "Examples:",
      "  platenwire bench --folder /srv/alder-lab",
      "  platenwire bench --quick",
      "  platenwire bench --only record --only delay --json"
    })
final class BenchCommand implements Callable<Integer> {
  private static final List<String> LEGEND =
      List.of(
          "",
          "The bare reader only numbers, times and seals the lines it reads; the simple one puts them"
              + " into a CSV library line by line. Hash and scan is the SHA-256 of the records and a"
              + " look at each byte. Half of the readings, and 99 of 100, are shown within the time"
              + " given. Memory is what is in use after a collection, at quarters of a test of a day.");

  @Option(
      names = "--folder",
      paramLabel = "DIR",
      description = "A folder on the disk to be measured (default: the current folder).")
  private Path folder = Path.of("");

  @Option(
      names = "--only",
      paramLabel = "PART",
      description = "Only this: record, delay, cpu, audit, day or start; repeatable.")
  private List<String> only = new ArrayList<>();

  @Option(names = "--quick", description = "Much less of everything, for a first look.")
  private boolean quick;

  @Option(names = "--json", description = "Print JSON instead, every figure unrounded.")
  private boolean json;

  @Override
  public Integer call() throws Exception {
    Set<BenchPart> parts = parts();
    if (!Files.isDirectory(folder.toAbsolutePath())) {
      throw new CommandException(
          ExitCode.USAGE, folder + " is no folder; name one with --folder, or make it first");
    }
    Face face = json ? Face.besideJson(UnitSystem.SI) : Face.standard(UnitSystem.SI);
    List<BenchFigure> figures = new ArrayList<>();
    try (MachineBench bench =
        MachineBench.in(
            folder.toAbsolutePath(),
            Version.text(),
            Platenwire.class.getName(),
            quick ? BenchSize.QUICK : BenchSize.FULL)) {
      for (BenchPart part : parts) {
        face.line("Measuring: " + part.word() + " …");
        figures.addAll(bench.run(part));
      }
    } catch (BenchException e) {
      throw new CommandException(ExitCode.NOT_MET, String.valueOf(e.getMessage()), e);
    }
    print(face, figures);
    return ExitCode.FINE;
  }

  private Set<BenchPart> parts() throws CommandException {
    if (only.isEmpty()) {
      return EnumSet.allOf(BenchPart.class);
    }
    Set<BenchPart> parts = EnumSet.noneOf(BenchPart.class);
    for (String word : only) {
      parts.add(
          BenchPart.ofWord(word)
              .orElseThrow(
                  () ->
                      new CommandException(
                          ExitCode.USAGE,
                          "--only must be one of "
                              + Arrays.stream(BenchPart.values())
                                  .map(BenchPart::word)
                                  .collect(Collectors.joining(", "))
                              + ", not '"
                              + word
                              + "'")));
    }
    return parts;
  }

  private void print(Face face, List<BenchFigure> figures) throws IOException {
    if (json) {
      SystemTerminal.forProgram().print(BenchJson.text(figures) + "\n");
      return;
    }
    TextTable table =
        TextTable.empty()
            .words("what")
            .numbers("this machine")
            .numbers("ratio")
            .words("of")
            .words("wanted");
    figures.forEach(figure -> table.row(row(figure)));
    face.line("");
    face.lines(table.lines(face.columns(), face.look()));
    LEGEND.forEach(face::line);
  }

  private static String[] row(BenchFigure figure) {
    String value = number(figure.value()) + " " + figure.unit();
    return figure
        .ratio()
        .map(
            ratio ->
                new String[] {
                  figure.words(),
                  value,
                  String.format(Locale.ROOT, "%.2f", ratio.times()),
                  ratio.against(),
                  wanted(ratio)
                })
        .orElse(new String[] {figure.words(), value, "", "", ""});
  }

  private static String wanted(Ratio ratio) {
    return String.format(
        Locale.ROOT,
        "%s %.3g%s",
        ratio.atMost() ? "at most" : "at least",
        ratio.target(),
        ratio.isReached() ? "" : ", missed");
  }

  /** Three significant digits, in groups of three. */
  private static String number(double value) {
    if (value < 1000) {
      return String.format(Locale.ROOT, "%.3g", value);
    }
    double step = Math.pow(10, Math.floor(Math.log10(value)) - 2);
    return String.format(Locale.ROOT, "%,.0f", Math.rint(value / step) * step).replace(',', ' ');
  }
}
