package io.github.platenwire.cli;

import io.github.platenwire.audit.Audit;
import io.github.platenwire.audit.AuditReport;
import io.github.platenwire.audit.Scope;
import io.github.platenwire.audit.Severity;
import io.github.platenwire.lab.LabException;
import io.github.platenwire.lab.LabFolder;
import io.github.platenwire.lab.Study;
import io.github.platenwire.reading.SystemClocks;
import io.github.platenwire.report.AuditPage;
import io.github.platenwire.report.PageFiles;
import io.github.platenwire.report.ReportSetting;
import io.github.platenwire.terminal.AuditView;
import io.github.platenwire.terminal.ProgressBar;
import io.github.platenwire.terminal.SystemTerminal;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code audit}: findings over records. */
@Command(
    name = "audit",
    description = {
      "Read records again and look for anything by which they could be doubted: seals, registers"
          + " and signatures,",
      "summaries that do not follow from their raw files, missing and exchanged records,"
          + " calibrations, rates, ages,",
      "gaps. Reads only. Findings weigh as a note, a doubt or a fault; each says where, what to"
          + " expect and what to do."
    },
    mixinStandardHelpOptions = true,
    versionProvider = Version.class,
    footer = {
      "",
      "Examples:",
      "  platenwire audit --lab alder-lab",
      "  platenwire audit records/2026-11 --from 2026-11-01 --to 2026-11-15",
      "  platenwire audit RA-S-07-1 --json",
      "  platenwire audit --study --fail-on fault",
      "  platenwire audit --lab alder-lab --html audit.html",
      "  platenwire audit --key 2f6c0a9d51e7b384 --witness 55a1c60f2be94d37"
    })
final class AuditCommand implements Callable<Integer> {
  private static final Pattern HEX = Pattern.compile("[0-9a-f]{16}");

  @Mixin private final LabOption labOption = new LabOption();

  @Parameters(
      paramLabel = "RECORD",
      arity = "0..*",
      description =
          "Raw files, folders of them, or tests by id or specimen (default: the whole archive).")
  private List<String> places = new ArrayList<>();

  @Option(names = "--from", paramLabel = "DAY", description = "First day, such as 2026-11-01.")
  private @Nullable LocalDate from;

  @Option(names = "--to", paramLabel = "DAY", description = "Last day.")
  private @Nullable LocalDate to;

  @Option(names = "--study", description = "Only the series that study.toml compares.")
  private boolean study;

  @Option(names = "--series", paramLabel = "NAME", description = "Only this series; repeatable.")
  private List<String> series = new ArrayList<>();

  @Option(
      names = "--key",
      paramLabel = "FINGERPRINT",
      description =
          "A key's fingerprint as your binder has it, 16 hex digits; repeatable. If any is given,"
              + " no other key counts.")
  private List<String> keys = new ArrayList<>();

  @Option(
      names = "--witness",
      paramLabel = "HEX",
      description = "A witness from paper, 16 hex digits, that a register must know; repeatable.")
  private List<String> witnesses = new ArrayList<>();

  @Option(
      names = "--fail-on",
      paramLabel = "WEIGHT",
      description =
          "End with 1 on findings of this weight or more: note, doubt or fault (default:"
              + " ${DEFAULT-VALUE}).")
  private String failOn = Severity.DOUBT.word();

  @Option(
      names = "--html",
      paramLabel = "FILE",
      description =
          "Also write a page for the lab's manager: a calendar of the archive, the findings, the"
              + " witnesses.")
  private @Nullable Path html;

  @Option(names = "--force", description = "Replace a page that is there already.")
  private boolean force;

  @ArgGroup(exclusive = true)
  private final Output output = new Output();

  /** What is printed instead of the text for people. */
  private static final class Output {
    @Option(names = "--json", description = "Print everything as JSON.")
    private boolean json;

    @Option(names = "--csv", description = "Print the findings as CSV.")
    private boolean csv;
  }

  @Override
  public Integer call() throws Exception {
    Severity least = severity();
    refuseToReplace();
    LabFolder lab =
        places.isEmpty() ? labOption.open() : RecordFinder.labOf(places.get(0), labOption);
    Scope scope = scope(lab);
    Audit.Settings settings =
        new Audit.Settings(
            scope,
            Runtime.getRuntime().availableProcessors(),
            Set.copyOf(hex("--key", keys)),
            hex("--witness", witnesses),
            Version.text(),
            SystemClocks.wall().now());
    AuditReport report;
    try (ProgressBar bar = bar()) {
      report = Audit.of(lab, settings, bar::bytes);
    }
    print(lab, report);
    writePage(lab, report);
    boolean fails = report.worst().filter(worst -> worst.isAtLeast(least)).isPresent();
    return fails ? ExitCode.NOT_MET : ExitCode.FINE;
  }

  private void print(LabFolder lab, AuditReport report) throws IOException {
    if (output.json) {
      SystemTerminal.forProgram().print(AuditJson.text(report) + "\n");
    } else if (output.csv) {
      SystemTerminal.forProgram().print(AuditCsv.text(report));
    } else {
      Face face = Face.standard(lab.settings().unitsFirst());
      face.lines(AuditView.lines(report, face.columns(), face.look()));
    }
  }

  private void refuseToReplace() throws CommandException {
    if (html != null && !force && Files.exists(html)) {
      throw new CommandException(
          ExitCode.USAGE,
          html + " is there already; name another file with --html, or replace it with --force");
    }
  }

  /** Where a program reads the output, only the standard error is told of the page. */
  private void writePage(LabFolder lab, AuditReport report) throws IOException {
    Path file = html;
    if (file == null) {
      return;
    }
    Path folder = Optional.ofNullable(file.toAbsolutePath().getParent()).orElse(lab.root());
    ReportSetting setting = new ReportSetting(lab, folder, report.program(), report.made());
    new PageFiles(Optional.of(file), Optional.empty(), Optional.empty(), force)
        .write(AuditPage.of(setting, report), report.program());
    SystemTerminal.err().print("Wrote " + file + "\n");
  }

  private static ProgressBar bar() {
    return new ProgressBar(
        SystemTerminal.err(),
        SystemTerminal.errTraits(),
        SystemTerminal.sizes().get().columns(),
        SystemClocks.monotonic(),
        "Reading records");
  }

  private Severity severity() throws CommandException {
    String words =
        Arrays.stream(Severity.values()).map(Severity::word).collect(Collectors.joining(", "));
    return Severity.ofWord(failOn)
        .orElseThrow(
            () ->
                new CommandException(
                    ExitCode.USAGE,
                    "--fail-on must be one of " + words + ", not '" + failOn + "'"));
  }

  private static List<String> hex(String option, List<String> given) throws CommandException {
    List<String> plain = given.stream().map(one -> one.strip().toLowerCase(Locale.ROOT)).toList();
    for (String one : plain) {
      if (!HEX.matcher(one).matches()) {
        throw new CommandException(
            ExitCode.USAGE, option + " must be 16 hex digits, not '" + one + "'");
      }
    }
    return plain;
  }

  private Scope scope(LabFolder lab) throws IOException, CommandException, LabException {
    LocalDate first = from;
    LocalDate last = to;
    if (first != null && last != null && last.isBefore(first)) {
      throw new CommandException(
          ExitCode.USAGE, "--to " + last + " is before --from " + first + "; exchange them");
    }
    Scope scope =
        new Scope(
            places(lab), Optional.ofNullable(first), Optional.ofNullable(last), seriesNames(lab));
    boolean wholeLab = scope.places().equals(List.of(lab.root()));
    return wholeLab ? new Scope(List.of(), scope.from(), scope.to(), scope.series()) : scope;
  }

  private List<Path> places(LabFolder lab) throws IOException, CommandException {
    List<Path> found = new ArrayList<>();
    for (String place : places) {
      Path path = Path.of(place);
      found.add(Files.isDirectory(path) ? path : RecordFinder.find(lab, place));
    }
    return found;
  }

  private Set<String> seriesNames(LabFolder lab) throws LabException {
    Set<String> names = new HashSet<>(series);
    if (study) {
      lab.study().series().stream().map(Study.Series::name).forEach(names::add);
    }
    return names;
  }
}
