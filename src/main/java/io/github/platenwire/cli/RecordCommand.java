package io.github.platenwire.cli;

import io.github.platenwire.lab.LabFolder;
import io.github.platenwire.lab.PrivateKeys;
import io.github.platenwire.lab.Register;
import io.github.platenwire.lab.RigLock;
import io.github.platenwire.lab.SharedRegister;
import io.github.platenwire.quantity.UnitSystem;
import io.github.platenwire.record.DiskFolder;
import io.github.platenwire.recorder.LabRecovery;
import io.github.platenwire.recorder.LabTest;
import io.github.platenwire.recorder.RecorderClocks;
import io.github.platenwire.recorder.TestClose;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code record}: one test from the checklist to the summary. */
@Command(
    name = "record",
    description = {
      "Record one test: every reading off the rig's ports into a raw file, load, peak and rate live,",
      "a summary at the close. The test closes itself after the break; Ctrl-C closes it in order."
    },
    mixinStandardHelpOptions = true,
    versionProvider = Version.class,
    footer = {
      "",
      "Examples:",
      "  platenwire record RA-S-07-1",
      "  platenwire record RA-S-07-1 --lab alder-lab --rig frame-2 --operator \"M. K.\"",
      "  platenwire record RA-S-07-1 --unattended --json > result.json"
    })
final class RecordCommand implements Callable<Integer> {
  private static final Duration ATTENDED_PATIENCE = Duration.ofSeconds(5);

  @Mixin private final LabOption labOption = new LabOption();
  @Mixin private final KeysOption keysOption = new KeysOption();

  @Parameters(paramLabel = "SPECIMEN", description = "A specimen of specimens.csv.")
  private String specimen = "";

  @Option(
      names = "--rig",
      paramLabel = "NAME",
      description = "The rig (default: the only one in the lab folder).")
  private @Nullable String rig;

  @Option(
      names = "--method",
      paramLabel = "NAME",
      description = "The method (default: ${DEFAULT-VALUE}).")
  private String method = "compression-cylinder-c39";

  @Option(
      names = "--entries",
      paramLabel = "FILE",
      description =
          "Take the readings of a typed channel from a table (CSV with time_min and depth_mm, or the like).")
  private @Nullable Path entries;

  @Option(names = "--operator", paramLabel = "NAME", description = "Who runs the test.")
  private @Nullable String operator;

  @Option(
      names = "--reason",
      paramLabel = "WORDS",
      description = "Why to test although something speaks against it; goes into the record.")
  private @Nullable String reason;

  @Option(
      names = "--unattended",
      description = "Ask nothing: wait for readings, record, close, write the summary.")
  private boolean unattended;

  @Option(
      names = "--wait",
      paramLabel = "SECONDS",
      description = "Unattended: how long to wait for the first readings (default: 60).")
  private double waitSeconds = 60;

  @Option(
      names = "--give-up",
      paramLabel = "SECONDS",
      description =
          "Unattended: close as interrupted when nothing has come for so long (default: 60).")
  private double giveUpSeconds = 60;

  @Option(
      names = "--json",
      description =
          "End with one JSON object, the summary, on standard output; all else goes to standard error.")
  private boolean json;

  @Option(
      names = "--lines-every",
      paramLabel = "SECONDS",
      description =
          "Where output is no terminal: a line each so many seconds, at least 0.01 (default: 1).")
  private double linesEverySeconds = 1;

  @Override
  public Integer call() throws Exception {
    LabFolder lab = labOption.open();
    UnitSystem first = lab.settings().unitsFirst();
    Face face = json ? Face.besideJson(first) : Face.standard(first);
    RecorderClocks clocks = RecorderClocks.system();
    Typing typing = new Typing(clocks, Optional.ofNullable(entries));
    String name = rigName(lab);
    TestSession.Options options = options();
    String holder =
        Holder.words("specimen " + specimen, clocks.wall().now(), lab.settings().zone());
    try (RigLock held = RigLock.take(lab, name, holder)) {
      PrivateKeys keys = keysOption.open();
      Register register = Register.open(lab, name, keys, clocks.wall());
      new LabRecovery(lab, keys, clocks.wall(), new DiskFolder(), Set.of(held.rig()))
          .all()
          .forEach(report -> face.line(report.words()));
      SharedRegister.join(lab, name).ifPresent(face::line);
      try (LabTest test = LabTest.open(lab, name, specimen, method, typing.openers(), clocks)) {
        return new TestSession(
                test, new TestClose(lab, register), face, options, typing.desk(test, face))
            .run();
      }
    }
  }

  private TestSession.Options options() throws CommandException {
    return new TestSession.Options(
        !unattended,
        json,
        Optional.ofNullable(operator),
        Optional.ofNullable(reason),
        unattended ? seconds("--wait", waitSeconds) : ATTENDED_PATIENCE,
        unattended ? Optional.of(seconds("--give-up", giveUpSeconds)) : Optional.empty(),
        seconds("--lines-every", linesEverySeconds));
  }

  private static Duration seconds(String option, double seconds) throws CommandException {
    if (!(seconds >= 0.01 && seconds <= 1e6)) {
      throw new CommandException(
          ExitCode.USAGE, option + " must be from 0.01 to 1000000 seconds, not " + seconds);
    }
    return Duration.ofNanos((long) (seconds * 1e9));
  }

  private String rigName(LabFolder lab) throws CommandException {
    if (rig != null) {
      return rig;
    }
    List<String> names = lab.rigNames();
    if (names.size() == 1) {
      return names.get(0);
    }
    throw new CommandException(
        ExitCode.USAGE,
        names.isEmpty()
            ? "there is no rig in "
                + lab.root().resolve("rigs")
                + "; write one, or see 'platenwire init --help'"
            : "which rig? Say --rig with one of: " + String.join(", ", names));
  }
}
