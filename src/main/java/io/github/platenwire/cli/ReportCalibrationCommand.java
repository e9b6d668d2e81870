package io.github.platenwire.cli;

import io.github.platenwire.calibration.CalibrationCheck;
import io.github.platenwire.calibration.CalibrationRuns;
import io.github.platenwire.calibration.CorrectionFit;
import io.github.platenwire.lab.Calibration;
import io.github.platenwire.lab.LabFolder;
import io.github.platenwire.report.CalibrationReport;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** {@code report calibration}: the report of a calibration. */
@Command(
    name = "calibration",
    description =
        "Report a calibration: certificate and due date, errors against limits, class of each range, residuals.",
    mixinStandardHelpOptions = true,
    versionProvider = Version.class,
    footer = {"", "Example:", "  platenwire report calibration frame-1-load --lab alder-lab"})
final class ReportCalibrationCommand implements Callable<Integer> {
  @Mixin private final LabOption labOption = new LabOption();
  @Mixin private final ReportOutput output = new ReportOutput();

  @Parameters(paramLabel = "NAME", description = "A calibration of the lab folder.")
  private String name = "";

  @Override
  public Integer call() throws Exception {
    LabFolder lab = labOption.open();
    Calibration calibration = lab.calibration(name);
    Optional<CalibrationReport.Judged> judged = judged(calibration);
    return output.write(
        lab,
        "calibration-" + calibration.name(),
        setting -> CalibrationReport.of(setting, calibration, judged),
        Face.standard(lab.settings().unitsFirst()));
  }

  private Optional<CalibrationReport.Judged> judged(Calibration calibration)
      throws CommandException {
    if (calibration.runs().isEmpty()) {
      return Optional.empty();
    }
    CalibrationRuns runs = calibration.runs().get();
    CorrectionFit fit;
    try {
      fit = calibration.fit(Optional.empty());
    } catch (IllegalArgumentException e) {
      throw new CommandException(ExitCode.USAGE, name + ": " + e.getMessage(), e);
    }
    CalibrationCheck check = CalibrationCheck.of(runs, fit.correction(), calibration.limits());
    CalibrationVerdict verdict =
        CalibrationVerdict.of(calibration, check, CalibrationCheckCommand.stated(calibration));
    return Optional.of(
        new CalibrationReport.Judged(
            check, fit, verdict.stated(), verdict.judged(), verdict.met(), verdict.words()));
  }
}
