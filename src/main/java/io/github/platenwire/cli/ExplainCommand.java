package io.github.platenwire.cli;

import io.github.platenwire.lab.LabFolder;
import io.github.platenwire.record.RawFileException;
import io.github.platenwire.recorder.Explanation;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** {@code explain}: says where a figure comes from. */
@Command(
    name = "explain",
    description = {
      "Say where a figure of a record comes from, step by step: the row and the bytes as they came, what they mean,",
      "calibration, the peak among its neighbours, zero, cross-section, correction, rounding."
    },
    mixinStandardHelpOptions = true,
    versionProvider = Version.class,
    footer = {
      "",
      "Examples:",
      "  platenwire explain RA-S-07-1 --lab alder-lab",
      "  platenwire explain RA-S-07-1 peak-load --lab alder-lab"
    })
final class ExplainCommand implements Callable<Integer> {
  @Mixin private final LabOption labOption = new LabOption();

  @Parameters(
      index = "0",
      paramLabel = "RECORD",
      description = "A raw file, a summary, a test's id or a specimen that was tested once.")
  private String record = "";

  @Parameters(
      index = "1",
      arity = "0..1",
      paramLabel = "FIGURE",
      description = "Such as strength, peak-load, zero, area (default: ${DEFAULT-VALUE}).")
  private String figure = "strength";

  @Override
  public Integer call() throws Exception {
    LabFolder lab = RecordFinder.labOf(record, labOption);
    Path raw = RecordFinder.find(lab, record);
    Explanation explanation;
    try {
      explanation =
          Explanation.of(raw, LabFolder.newestSummaryOf(raw), lab.settings().unitsFirst());
    } catch (RawFileException e) {
      throw new CommandException(ExitCode.NOT_MET, String.valueOf(e.getMessage()), e);
    }
    Optional<List<String>> lines = explanation.figure(figure);
    if (lines.isEmpty()) {
      throw new CommandException(
          ExitCode.USAGE,
          "the record has no figure '"
              + figure
              + "'; it has: "
              + String.join(", ", explanation.names()));
    }
    Face.standard(lab.settings().unitsFirst()).lines(lines.get());
    return ExitCode.FINE;
  }
}
