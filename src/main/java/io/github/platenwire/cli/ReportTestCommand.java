package io.github.platenwire.cli;

import io.github.platenwire.lab.LabFolder;
import io.github.platenwire.report.TestReport;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** {@code report test}: the report of one test. */
@Command(
    name = "test",
    description =
        "Report one test: what, when, who, specimen, frame, calibration, results with their uncertainty,"
            + " checks, charts, record and witness.",
    mixinStandardHelpOptions = true,
    versionProvider = Version.class,
    footer = {
      "",
      "Examples:",
      "  platenwire report test RA-S-07-1 --lab alder-lab",
      "  platenwire report test RA-S-07-1 --lab alder-lab --html RA-S-07-1.html --csv tables"
    })
final class ReportTestCommand implements Callable<Integer> {
  @Mixin private final LabOption labOption = new LabOption();
  @Mixin private final ReportOutput output = new ReportOutput();

  @Parameters(
      paramLabel = "RECORD",
      description = "A raw file, a summary, a test's id or a specimen that was tested once.")
  private String record = "";

  @Override
  public Integer call() throws Exception {
    LabFolder lab = RecordFinder.labOf(record, labOption);
    Path raw = RecordFinder.find(lab, record);
    String stem = String.valueOf(raw.getFileName()).replaceFirst("\\.raw\\.csv$", "");
    return output.write(
        lab,
        stem,
        setting -> TestReport.of(setting, raw),
        Face.standard(lab.settings().unitsFirst()));
  }
}
