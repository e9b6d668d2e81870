package io.github.platenwire.cli;

import io.github.platenwire.calibration.CalibrationCheck;
import io.github.platenwire.calibration.CalibrationRuns;
import io.github.platenwire.calibration.ClassLimits;
import io.github.platenwire.calibration.CorrectionFit;
import io.github.platenwire.calibration.CorrectionKind;
import io.github.platenwire.calibration.LimitTable;
import io.github.platenwire.chart.CalibrationChart;
import io.github.platenwire.chart.ChartWriter;
import io.github.platenwire.lab.Calibration;
import io.github.platenwire.lab.LabException;
import io.github.platenwire.lab.LabFolder;
import io.github.platenwire.quantity.UnitSystem;
import io.github.platenwire.terminal.CalibrationView;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code calibration check}: holds one calibration against the limits of its class. */
@Command(
    name = "check",
    description = {
      "Compute error, repeatability, reversibility, zero and resolution of a calibration out of its",
      "runs, hold each against its limit, and say the class of each range.",
      "Ends with 1 if the calibration is not in its stated class."
    },
    mixinStandardHelpOptions = true,
    versionProvider = Version.class,
    footer = {
      "",
      "Examples:",
      "  platenwire calibration check frame-1-load --lab alder-lab",
      "  platenwire calibration check certificate.toml --chart errors.svg",
      "  platenwire calibration check frame-1-load --correction polynomial --json"
    })
final class CalibrationCheckCommand implements Callable<Integer> {
  @Parameters(
      paramLabel = "NAME|FILE",
      description = "A calibration of the lab folder, or a calibration file (ends in .toml).")
  private String name = "";

  @Option(
      names = "--lab",
      paramLabel = "DIR",
      description = "The lab folder (default: the current folder, if it is one).")
  private @Nullable Path lab;

  @Option(
      names = "--correction",
      paramLabel = "KIND",
      description =
          "none, scale, table or polynomial, as a rig file may choose it (default: as the file says).")
  private @Nullable String correction;

  @Option(
      names = "--chart",
      paramLabel = "FILE",
      description = "Draw the errors against the limits into a .png or .svg file.")
  private @Nullable Path chart;

  @Option(names = "--dark", description = "Draw the chart on a dark ground.")
  private boolean dark;

  @Option(names = "--json", description = "Print one JSON object instead of the table.")
  private boolean json;

  @Override
  public Integer call() throws Exception {
    ChartCommand.checkName(Optional.ofNullable(chart));
    Optional<LabFolder> folder = folder();
    Calibration calibration = calibration(folder);
    CalibrationRuns runs =
        calibration
            .runs()
            .orElseThrow(
                () ->
                    new CommandException(
                        ExitCode.USAGE,
                        name
                            + " holds no runs, so nothing can be computed; add [[run]] tables"
                            + " with what was applied and what was indicated"));
    CorrectionFit fit = fit(calibration);
    CalibrationCheck check = CalibrationCheck.of(runs, fit.correction(), calibration.limits());
    CalibrationVerdict verdict = CalibrationVerdict.of(calibration, check, stated(calibration));
    if (chart != null) {
      draw(chart, calibration, check, verdict);
    }
    show(folder, calibration, fit, check, verdict);
    return verdict.met() ? ExitCode.FINE : ExitCode.NOT_MET;
  }

  private void show(
      Optional<LabFolder> folder,
      Calibration calibration,
      CorrectionFit fit,
      CalibrationCheck check,
      CalibrationVerdict verdict) {
    UnitSystem first = folder.map(known -> known.settings().unitsFirst()).orElse(UnitSystem.SI);
    Face face = Face.standard(first);
    if (json) {
      face.lines(List.of(CalibrationJson.text(calibration, fit, check, verdict)));
      return;
    }
    face.lines(
        CalibrationView.lines(
            title(calibration),
            check,
            fit,
            verdict.judged(),
            verdict.words(),
            verdict.met(),
            face.columns(),
            face.look()));
    if (chart != null) {
      face.lines(List.of("", " Chart: " + chart));
    }
  }

  private void draw(
      Path file, Calibration calibration, CalibrationCheck check, CalibrationVerdict verdict)
      throws Exception {
    ChartWriter.write(
        CalibrationChart.of(
            check,
            calibration.name() + " against " + check.limits().title(),
            certificate(calibration) + "; correction: " + check.correction().words(),
            verdict.stated(),
            ChartCommand.theme(dark)),
        file);
  }

  private static String title(Calibration calibration) {
    return calibration.name() + ": " + certificate(calibration);
  }

  private static String certificate(Calibration calibration) {
    return "certificate "
        + calibration.certificate()
        + " of "
        + calibration.laboratory()
        + ", "
        + calibration.date()
        + calibration.due().map(due -> ", due " + due).orElse("");
  }

  private Optional<LabFolder> folder() throws LabException {
    Path root = lab == null ? Path.of("") : lab;
    boolean isLab = lab != null || Files.exists(root.resolve("lab.toml"));
    return isLab ? Optional.of(LabFolder.open(root)) : Optional.empty();
  }

  private Calibration calibration(Optional<LabFolder> folder)
      throws LabException, CommandException {
    if (name.endsWith(".toml")) {
      return LabFolder.calibrationFile(Path.of(name), name);
    }
    if (folder.isEmpty()) {
      throw new CommandException(
          ExitCode.USAGE,
          "this is no lab folder; say --lab DIR, or name a calibration file that ends in .toml");
    }
    return folder.get().calibration(name);
  }

  private CorrectionFit fit(Calibration calibration) throws CommandException {
    Optional<CorrectionKind> chosen = Optional.empty();
    if (correction != null) {
      chosen = CorrectionKind.ofWord(correction);
      if (chosen.isEmpty()) {
        throw new CommandException(
            ExitCode.USAGE,
            "--correction must be "
                + String.join(", ", CorrectionKind.words())
                + ", not '"
                + correction
                + "'");
      }
    }
    try {
      return calibration.fit(chosen);
    } catch (IllegalArgumentException e) {
      throw new CommandException(ExitCode.USAGE, name + ": " + e.getMessage(), e);
    }
  }

  /** The class that a calibration file states; refuses one that its standard has not. */
  static Optional<ClassLimits> stated(Calibration calibration) throws CommandException {
    Optional<String> written = calibration.accuracyClass();
    if (written.isEmpty()) {
      return Optional.empty();
    }
    LimitTable limits = calibration.limits();
    Optional<ClassLimits> stated = limits.ofClass(written.get());
    if (stated.isEmpty()) {
      throw new CommandException(
          ExitCode.USAGE,
          "the stated class '"
              + written.get()
              + "' is none of "
              + limits.title()
              + ", which has: "
              + String.join(", ", limits.classes().stream().map(ClassLimits::name).toList())
              + "; mend 'class' or 'standard' in the calibration file");
    }
    return stated;
  }
}
