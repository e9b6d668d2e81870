package io.github.platenwire.cli;

import io.github.platenwire.lab.LabFolder;
import io.github.platenwire.study.StudyComparison;
import io.github.platenwire.study.StudyData;
import io.github.platenwire.study.StudyQuestion;
import io.github.platenwire.terminal.ComparisonView;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code compare}: series against series. */
@Command(
    name = "compare",
    description = {
      "Hold the series of the study against their reference: how many times stronger, does it still",
      "gain, how many times wider are the cracks, each with its interval. Fewer than three specimens in a",
      "series give figures, no interval and no verdict. The records are only read."
    },
    mixinStandardHelpOptions = true,
    versionProvider = Version.class,
    footer = {
      "",
      "Examples:",
      "  platenwire compare --lab alder-lab",
      "  platenwire compare NA-T --against RA-S --age 7",
      "  platenwire compare NA-CB --figure load-at-0.20-mm",
      "  platenwire compare --csv > comparison.csv"
    })
final class CompareCommand implements Callable<Integer> {
  @Parameters(
      arity = "0..1",
      paramLabel = "SERIES",
      description = "One series only (default: all of the study).")
  private @Nullable String series;

  @Option(
      names = "--against",
      paramLabel = "SERIES",
      description = "What it is held against (default: the reference that study.toml names).")
  private @Nullable String against;

  @Option(names = "--age", paramLabel = "DAYS", description = "One age only, such as 7.")
  private @Nullable Double ageDays;

  @Option(
      names = "--figure",
      paramLabel = "NAME",
      description =
          "Which figure of the summaries, such as peak-load, density or load-at-0.20-mm (default: ${DEFAULT-VALUE}).")
  private String figure = StudyQuestion.STRENGTH;

  @Option(
      names = "--method",
      paramLabel = "NAME",
      description = "Only figures by this method (default: the one with most of them).")
  private @Nullable String method;

  @Mixin private final LabOption labOption = new LabOption();
  @Mixin private final OutputOption output = new OutputOption();

  @Override
  public Integer call() throws Exception {
    LabFolder lab = labOption.open();
    StudyData data = StudyData.read(lab);
    StudyComparison comparison = StudyComparison.of(data, question());
    Face face = Face.standard(lab.settings().unitsFirst());
    if (output.json()) {
      face.lines(List.of(ComparisonJson.text(data, comparison)));
    } else if (output.csv()) {
      face.lines(StudyTables.comparison(comparison));
    } else {
      face.lines(
          ComparisonView.lines(data.study().title(), comparison, face.columns(), face.look()));
    }
    return ExitCode.FINE;
  }

  private StudyQuestion question() throws CommandException {
    if (ageDays != null && !(ageDays > 0)) {
      throw new CommandException(
          ExitCode.USAGE, "--age must be an age in days above 0, such as 7, not " + ageDays);
    }
    return new StudyQuestion(
        Optional.ofNullable(series),
        Optional.ofNullable(against),
        ageDays == null ? OptionalDouble.empty() : OptionalDouble.of(ageDays),
        figure,
        Optional.ofNullable(method));
  }
}
