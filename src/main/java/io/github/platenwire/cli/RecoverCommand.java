package io.github.platenwire.cli;

import io.github.platenwire.lab.LabFolder;
import io.github.platenwire.reading.SystemClocks;
import io.github.platenwire.record.DiskFolder;
import io.github.platenwire.recorder.LabRecovery;
import io.github.platenwire.recorder.LabRecovery.Report;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** {@code recover}: closes in order what an interruption left. */
@Command(
    name = "recover",
    description = {
      "Close in order what a power cut or a killed program left half-done: what was written stays, a torn end is",
      "set aside in a file of its own, the summary is made from the raw file. 'record' does this by itself."
    },
    mixinStandardHelpOptions = true,
    versionProvider = Version.class,
    footer = {
      "",
      "Examples:",
      "  platenwire recover --lab alder-lab",
      "  platenwire recover records/2026-11/20261125T071502Z_RA-S-07-1.raw.csv"
    })
final class RecoverCommand implements Callable<Integer> {
  @Mixin private final LabOption labOption = new LabOption();
  @Mixin private final KeysOption keysOption = new KeysOption();

  @Parameters(
      paramLabel = "RECORD",
      arity = "0..1",
      description = "One record (default: every one in the lab).")
  private @Nullable String record;

  @Override
  public Integer call() throws Exception {
    String words = record;
    LabFolder lab = words == null ? labOption.open() : RecordFinder.labOf(words, labOption);
    Face face = Face.standard(lab.settings().unitsFirst());
    LabRecovery recovery =
        new LabRecovery(lab, keysOption.open(), SystemClocks.wall(), new DiskFolder(), Set.of());
    List<Path> raws = words == null ? recovery.halfDone() : List.of(RecordFinder.find(lab, words));
    boolean allDone = true;
    for (Path raw : raws) {
      Optional<Report> report = recovery.one(raw);
      allDone &= report.isPresent() && report.get().done();
      face.line(report.map(RecoverCommand::words).orElse(raw + " is being recorded now."));
    }
    if (raws.isEmpty()) {
      face.line("Nothing is half-done in " + lab.root() + ".");
    }
    return allDone ? ExitCode.FINE : ExitCode.NOT_MET;
  }

  private static String words(Report report) {
    return report.words().isEmpty()
        ? report.raw().getFileName() + " is in order; nothing had to be done."
        : report.words();
  }
}
