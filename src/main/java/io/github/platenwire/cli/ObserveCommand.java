package io.github.platenwire.cli;

import io.github.platenwire.lab.LabFolder;
import io.github.platenwire.lab.Register;
import io.github.platenwire.method.AggregateBreak;
import io.github.platenwire.method.BreakPosition;
import io.github.platenwire.method.FractureType;
import io.github.platenwire.reading.SystemClocks;
import io.github.platenwire.record.Enclosure;
import io.github.platenwire.record.Observations;
import io.github.platenwire.record.RawFileException;
import io.github.platenwire.recorder.SummaryCorrection;
import io.github.platenwire.recorder.TestClose;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code observe}: adds what was seen of a specimen to its closed record. */
@Command(
    name = "observe",
    description = {
      "Add what was seen of a specimen after its test was closed: fracture, aggregate, imprint of the bar, voids,",
      "words, photographs. A new, signed version of the summary is made; the versions before and the raw file stay."
    },
    mixinStandardHelpOptions = true,
    versionProvider = Version.class,
    footer = {
      "",
      "Examples:",
      "  platenwire observe RA-S-07-1 --by \"M. K.\" --fracture 3 --aggregate around",
      "  platenwire observe NA-PB-1 --by \"M. K.\" --imprint seen --voids \"one, 8 mm, below the bar\"",
      "  platenwire observe NA-PB-1 --by \"M. K.\" --photo crack-1.jpg --photo crack-2.jpg"
    })
final class ObserveCommand implements Callable<Integer> {
  @Mixin private final LabOption labOption = new LabOption();
  @Mixin private final KeysOption keysOption = new KeysOption();

  @Parameters(
      paramLabel = "RECORD",
      description = "A raw file, a summary, a test's id or a specimen that was tested once.")
  private String record = "";

  @Option(
      names = "--by",
      paramLabel = "NAME",
      required = true,
      description = "Who saw it; stands in the new version.")
  private String by = "";

  @Option(
      names = "--fracture",
      paramLabel = "TYPE",
      description = "Type of fracture of a cylinder, 1 to 6.")
  private @Nullable String fracture;

  @Option(
      names = "--aggregate",
      paramLabel = "WORD",
      description = "How the break went about the aggregate: through, around, mixed or not-seen.")
  private @Nullable String aggregate;

  @Option(
      names = "--imprint",
      paramLabel = "WORD",
      description = "Whether the ribs of the bar are seen in the concrete: seen or not-seen.")
  private @Nullable String imprint;

  @Option(names = "--voids", paramLabel = "WORDS", description = "Voids and honeycombing.")
  private @Nullable String voids;

  @Option(names = "--note", paramLabel = "WORDS", description = "Anything else.")
  private @Nullable String note;

  @Option(
      names = "--photo",
      paramLabel = "FILE",
      description = "A photograph, copied beside the record. May be repeated.")
  private List<Path> photos = new ArrayList<>();

  @Override
  public Integer call() throws Exception {
    Observations seen = seen();
    LabFolder lab = RecordFinder.labOf(record, labOption);
    Path raw = RecordFinder.find(lab, record);
    Face face = Face.standard(lab.settings().unitsFirst());
    try {
      Register register =
          Register.open(lab, SummaryCorrection.rigOf(raw), keysOption.open(), SystemClocks.wall());
      TestClose.Closed closed =
          SummaryCorrection.observe(
              lab, register, raw, enclosed(seen, raw), by.strip(), SystemClocks.wall().now());
      face.line("Added: " + closed.file());
      face.closed(closed);
      return ExitCode.FINE;
    } catch (RawFileException e) {
      throw new CommandException(ExitCode.NOT_MET, String.valueOf(e.getMessage()), e);
    }
  }

  private Observations seen() throws CommandException {
    if (by.isBlank()) {
      throw new CommandException(ExitCode.USAGE, "--by needs a name: it stands in the new version");
    }
    Optional<FractureType> type = fractureType();
    Observations seen =
        new Observations(
            type.map(one -> Integer.toString(one.number())),
            type.map(FractureType::words),
            among(
                "--aggregate",
                aggregate,
                Arrays.stream(AggregateBreak.values()).map(AggregateBreak::key).toList()),
            among("--imprint", imprint, List.of("seen", "not-seen")),
            words(voids),
            words(note),
            List.of(),
            BreakPosition.NOT_RECORDED);
    if (seen.equals(Observations.NONE) && photos.isEmpty()) {
      throw new CommandException(
          ExitCode.USAGE,
          "nothing to add; say what was seen with --fracture, --aggregate, --imprint, --voids,"
              + " --note or --photo");
    }
    return seen;
  }

  private Optional<FractureType> fractureType() throws CommandException {
    if (fracture == null) {
      return Optional.empty();
    }
    Optional<FractureType> type = FractureType.ofKey(fracture);
    if (type.isEmpty()) {
      throw new CommandException(
          ExitCode.USAGE, "--fracture: '" + fracture + "' is no type; possible: 1 to 6");
    }
    return type;
  }

  private static Optional<String> among(String option, @Nullable String word, List<String> possible)
      throws CommandException {
    if (word != null && !possible.contains(word)) {
      throw new CommandException(
          ExitCode.USAGE,
          option + ": '" + word + "' is not known; possible: " + String.join(", ", possible));
    }
    return Optional.ofNullable(word);
  }

  private static Optional<String> words(@Nullable String words) {
    return Optional.ofNullable(words).map(String::strip).filter(text -> !text.isEmpty());
  }

  private Observations enclosed(Observations seen, Path raw) throws CommandException {
    Observations all = seen;
    for (Path photo : photos) {
      try {
        all = all.enclosing(Enclosure.keep(raw, photo));
      } catch (IOException e) {
        throw new CommandException(
            ExitCode.STORAGE, "the photograph was not kept: " + e.getMessage(), e);
      }
    }
    return all;
  }
}
