package io.github.platenwire.cli;

import io.github.platenwire.lab.LabFolder;
import io.github.platenwire.report.CompanionsReport;
import io.github.platenwire.study.StudyComparison;
import io.github.platenwire.study.StudyData;
import java.math.BigDecimal;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** {@code report companions}: the report of one series at one age. */
@Command(
    name = "companions",
    description =
        "Report companions, the specimens of one series and one age: each beside mean and interval, their range"
            + " against the limit.",
    mixinStandardHelpOptions = true,
    versionProvider = Version.class,
    footer = {"", "Example:", "  platenwire report companions RA-S 7 --lab alder-lab"})
final class ReportCompanionsCommand implements Callable<Integer> {
  @Mixin private final LabOption labOption = new LabOption();
  @Mixin private final ReportOutput output = new ReportOutput();

  @Parameters(index = "0", paramLabel = "SERIES", description = "The series' name.")
  private String series = "";

  @Parameters(index = "1", paramLabel = "DAYS", description = "The planned age in days.")
  private BigDecimal age = BigDecimal.ZERO;

  @Override
  public Integer call() throws Exception {
    LabFolder lab = labOption.open();
    StudyData data = StudyData.read(lab);
    List<StudyComparison> comparisons = StudyComparison.main(data);
    if (comparisons.isEmpty()) {
      throw new CommandException(
          ExitCode.USAGE, "no test of the study is closed yet: nothing to report");
    }
    StudyComparison comparison =
        comparisons.stream().filter(this::hasSet).findFirst().orElse(comparisons.get(0));
    String days = age.stripTrailingZeros().toPlainString();
    return output.write(
        lab,
        "companions-" + series + "-" + days + "-days",
        setting -> CompanionsReport.of(setting, data, comparison, series, age.doubleValue()),
        Face.standard(lab.settings().unitsFirst()));
  }

  private boolean hasSet(StudyComparison comparison) {
    return comparison.sets().stream()
        .anyMatch(set -> set.series().equals(series) && set.ageDays() == age.doubleValue());
  }
}
