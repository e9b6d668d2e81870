package io.github.platenwire.cli;

import io.github.platenwire.lab.LabException;
import io.github.platenwire.lab.LabFolder;
import io.github.platenwire.reading.SystemClocks;
import io.github.platenwire.report.DataPackage;
import io.github.platenwire.report.Page;
import io.github.platenwire.report.ReportException;
import io.github.platenwire.report.ReportSetting;
import io.github.platenwire.report.StudyReport;
import io.github.platenwire.study.StudyComparison;
import io.github.platenwire.study.StudyData;
import io.github.platenwire.study.StudyStatus;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code report study}: the report of the lab's study. */
@Command(
    name = "study",
    description =
        "Report the study: what is compared and how far it has come, every specimen beside mean and interval,"
            + " ratios to the reference, strength with age, cracks, what people saw, records and witnesses.",
    mixinStandardHelpOptions = true,
    versionProvider = Version.class,
    footer = {
      "",
      "Examples:",
      "  platenwire report study --lab alder-lab",
      "  platenwire report study --lab alder-lab --csv tables --datapackage"
    })
final class ReportStudyCommand implements Callable<Integer> {
  @Mixin private final LabOption labOption = new LabOption();
  @Mixin private final ReportOutput output = new ReportOutput();

  @Option(
      names = "--datapackage",
      description =
          "Also write datapackage.json into the lab folder: it describes the study's raw and summary files so that"
              + " any program can load them.")
  private boolean describe;

  @Override
  public Integer call() throws Exception {
    LabFolder lab = labOption.open();
    StudyData data = StudyData.read(lab);
    Face face = Face.standard(lab.settings().unitsFirst());
    refuseDescribed(lab);
    int exitCode = write(lab, data, output, face);
    if (describe) {
      face.line("Wrote " + describe(lab, data));
    }
    return exitCode;
  }

  /** Writes the report of a study, named by the day. */
  static int write(LabFolder lab, StudyData data, ReportOutput output, Face face) throws Exception {
    LocalDate day = LocalDate.ofInstant(SystemClocks.wall().now(), lab.settings().zone());
    return output.write(lab, "study-" + day, setting -> page(setting, data), face);
  }

  private Path describe(LabFolder lab, StudyData data) throws IOException, CommandException {
    try {
      return DataPackage.write(
          new ReportSetting(lab, lab.root(), Version.text(), SystemClocks.wall().now()),
          data,
          output.mayReplace());
    } catch (ReportException e) {
      throw new CommandException(ExitCode.USAGE, String.valueOf(e.getMessage()), e);
    }
  }

  private void refuseDescribed(LabFolder lab) throws CommandException {
    Path file = lab.root().resolve(DataPackage.FILE);
    if (describe && !output.mayReplace() && Files.exists(file)) {
      throw new CommandException(
          ExitCode.USAGE, file + " is there already; replace it with --force");
    }
  }

  /** The page of a study, whatever has been tested so far. */
  static Page page(ReportSetting setting, StudyData data) throws LabException, IOException {
    return StudyReport.of(
        setting, data, StudyStatus.of(data, setting.now()), StudyComparison.main(data));
  }
}
