package io.github.platenwire.cli;

import io.github.platenwire.explain.Explanation;
import io.github.platenwire.lab.LabFolder;
import io.github.platenwire.record.RawFileException;
import io.github.platenwire.terminal.TextTable;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** {@code explain}: says where a figure comes from. */
@Command(
    name = "explain",
    description = {
      "Say where a figure of a record comes from, step by step: the row and the bytes as they came, what they mean,",
      "calibration, the choice among the neighbours, zero, sizes, the standard's formula with its numbers, rounding.",
      "Without a figure it lists those that the record has."
    },
    mixinStandardHelpOptions = true,
    versionProvider = Version.class,
    footer = {
      "",
      "Examples:",
      "  platenwire explain RA-S-07-1 --lab alder-lab               # which figures it has",
      "  platenwire explain RA-S-07-1 strength --lab alder-lab",
      "  platenwire explain NA-CB-1 load-at-0.20-mm --lab alder-lab"
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
      description = "Such as strength, peak-load, modulus, load-at-0.20-mm. None: all are listed.")
  private @Nullable String figure;

  @Override
  public Integer call() throws Exception {
    RecordFinder.Found found = RecordFinder.locate(record, labOption);
    Path raw = found.raw();
    Explanation explanation;
    try {
      explanation = Explanation.of(raw, LabFolder.newestSummaryOf(raw), found.unitsFirst());
    } catch (RawFileException e) {
      throw new CommandException(ExitCode.NOT_MET, String.valueOf(e.getMessage()), e);
    }
    Face face = Face.standard(found.unitsFirst());
    explanation
        .caution()
        .ifPresent(
            words -> {
              face.line(words);
              face.line("");
            });
    if (figure == null) {
      list(explanation, face);
    } else {
      face.paragraphs(lines(explanation, figure));
    }
    return ExitCode.FINE;
  }

  private void list(Explanation explanation, Face face) {
    TextTable table = TextTable.empty().words("figure").words("value").words("what it is");
    for (Explanation.Entry entry : explanation.entries()) {
      table.row(entry.name(), entry.printed(), entry.title());
    }
    face.line(explanation.title());
    face.lines(table.lines(face.columns(), face.look()));
    face.line("");
    face.line("Where one comes from: platenwire explain " + record + " FIGURE");
  }

  private static List<String> lines(Explanation explanation, String figure)
      throws CommandException {
    Optional<List<String>> lines = explanation.figure(figure).or(() -> explanation.absent(figure));
    return lines.orElseThrow(
        () ->
            new CommandException(
                ExitCode.USAGE,
                "the record has no figure '"
                    + figure
                    + "'; it has: "
                    + String.join(", ", explanation.names())));
  }
}
