package io.github.platenwire.cli;

import io.github.platenwire.lab.LabException;
import io.github.platenwire.lab.LabFolder;
import io.github.platenwire.lab.Register;
import io.github.platenwire.reading.SystemClocks;
import io.github.platenwire.record.RawFileException;
import io.github.platenwire.record.SummaryDifferences.Difference;
import io.github.platenwire.recorder.SummaryCheck;
import io.github.platenwire.recorder.SummaryCorrection;
import io.github.platenwire.recorder.TestClose;
import io.github.platenwire.terminal.Place;
import io.github.platenwire.terminal.ResultView;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code reduce}: computes a summary again from the raw file alone. */
@Command(
    name = "reduce",
    description = {
      "Compute a record's figures again from its raw file alone - bytes as received, device definition, calibration,",
      "method - and hold them against its summary, to the last digit. With --correct: make a new version of the",
      "summary after a measurement of the specimen was put right; the versions before stay."
    },
    mixinStandardHelpOptions = true,
    versionProvider = Version.class,
    footer = {
      "",
      "Examples:",
      "  platenwire reduce RA-S-07-1 --lab alder-lab",
      "  platenwire reduce records/2026-11/20261125T071502Z_RA-S-07-1.raw.csv",
      "  platenwire reduce RA-S-07-1 --correct diameter_1_mm=100.2 --who \"M. K.\" --why \"misread calliper\""
    })
final class ReduceCommand implements Callable<Integer> {
  @Mixin private final LabOption labOption = new LabOption();
  @Mixin private final KeysOption keysOption = new KeysOption();

  @Parameters(
      paramLabel = "RECORD",
      description = "A raw file, a summary, a test's id or a specimen that was tested once.")
  private String record = "";

  @Option(
      names = "--correct",
      paramLabel = "WHAT=VALUE",
      description =
          "The right value of diameter_1_mm, diameter_2_mm, length_mm, mass_kg, or in _in and _lb. May be repeated.")
  private Map<String, Double> corrections = new TreeMap<>();

  @Option(names = "--who", paramLabel = "NAME", description = "Who corrects.")
  private @Nullable String who;

  @Option(names = "--why", paramLabel = "WORDS", description = "Why it has to be corrected.")
  private @Nullable String why;

  @Override
  public Integer call() throws Exception {
    RecordFinder.Found found = RecordFinder.locate(record, labOption);
    Path raw = found.raw();
    Face face = Face.standard(found.unitsFirst());
    try {
      return corrections.isEmpty() ? compare(raw, face) : correct(inLab(found), raw, face);
    } catch (RawFileException e) {
      throw new CommandException(ExitCode.NOT_MET, String.valueOf(e.getMessage()), e);
    }
  }

  private static LabFolder inLab(RecordFinder.Found found) throws CommandException {
    return found
        .lab()
        .orElseThrow(
            () ->
                new CommandException(
                    ExitCode.USAGE,
                    found.raw()
                        + " lies in no lab folder, so no new version can be signed into its"
                        + " register; correct it where it was recorded"));
  }

  private int compare(Path raw, Face face) throws Exception {
    if (who != null || why != null) {
      throw new CommandException(ExitCode.USAGE, "--who and --why go with --correct");
    }
    SummaryCheck check = SummaryCheck.of(raw);
    face.lines(check.rowDifferences());
    for (SummaryCheck.Version version : check.versions()) {
      String name = String.valueOf(version.file().getFileName());
      for (Difference difference : version.differences()) {
        face.line(
            name
                + ": "
                + difference.where()
                + ": closed with "
                + difference.closed()
                + ", computed again "
                + difference.computed());
      }
      if (version.differences().isEmpty()) {
        face.line(name + ": every figure, check and sentence follows from the raw file.");
      }
    }
    if (check.versions().isEmpty()) {
      face.line(raw.getFileName() + " has no summary yet; 'platenwire recover' makes one.");
    }
    return check.isEqual() ? ExitCode.FINE : ExitCode.NOT_MET;
  }

  private int correct(LabFolder lab, Path raw, Face face) throws Exception {
    String corrector = said("--who", who);
    String reason = said("--why", why);
    Register register = register(lab, raw);
    TestClose.Closed closed =
        SummaryCorrection.write(
            lab, register, raw, corrections, corrector, reason, SystemClocks.wall().now());
    face.lines(
        ResultView.lines(
            closed.summary().result(),
            List.of(
                new Place("raw file", raw.toString()),
                new Place("summary", closed.file().toString())),
            face.columns(),
            face.look()));
    face.closed(closed);
    return ExitCode.FINE;
  }

  private Register register(LabFolder lab, Path raw)
      throws LabException, IOException, RawFileException {
    return Register.open(lab, SummaryCorrection.rigOf(raw), keysOption.open(), SystemClocks.wall());
  }

  private static String said(String option, @Nullable String words) throws CommandException {
    if (words == null || words.isBlank()) {
      throw new CommandException(
          ExitCode.USAGE,
          "a correction needs " + option + ": who made it and why stands in the new summary");
    }
    return words.strip();
  }
}
