package io.github.platenwire.recorder;

import io.github.platenwire.lab.LabException;
import io.github.platenwire.lab.LabFolder;
import io.github.platenwire.lab.PrivateKeys;
import io.github.platenwire.lab.Register;
import io.github.platenwire.lab.RegisterLine.Kind;
import io.github.platenwire.lab.RigLock;
import io.github.platenwire.reading.WallClock;
import io.github.platenwire.record.Digests;
import io.github.platenwire.record.Observations;
import io.github.platenwire.record.Provenance;
import io.github.platenwire.record.Provenance.Maker;
import io.github.platenwire.record.RawFileException;
import io.github.platenwire.record.RawFileReader;
import io.github.platenwire.record.RawFileRecovery;
import io.github.platenwire.record.RawFileRecovery.Outcome;
import io.github.platenwire.record.RawFileRecovery.Recovered;
import io.github.platenwire.record.RecordFolder;
import io.github.platenwire.record.SummaryDifferences;
import io.github.platenwire.record.SummaryFile;
import io.github.platenwire.toml.TomlException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Brings to an end what an interruption left half-done in a lab: raw files without their last line,
 * closed records without a summary, summaries without a register line. Safe to be interrupted and
 * done again. Confined to one thread.
 */
public final class LabRecovery {
  private final LabFolder lab;
  private final PrivateKeys keys;
  private final WallClock clock;
  private final RecordFolder folder;
  private final Set<String> heldRigs;

  /**
   * Recovers in a lab.
   *
   * @param lab the lab folder
   * @param keys the private keys of this machine
   * @param clock tells the time of day
   * @param folder opens raw files
   * @param heldRigs rigs that the caller holds the lock of
   */
  public LabRecovery(
      LabFolder lab, PrivateKeys keys, WallClock clock, RecordFolder folder, Set<String> heldRigs) {
    this.lab = lab;
    this.keys = keys;
    this.clock = clock;
    this.folder = folder;
    this.heldRigs = Set.copyOf(heldRigs);
  }

  /**
   * What became of one record. Immutable.
   *
   * @param raw the raw file
   * @param done whether it is in order now
   * @param words what was found and done, in whole sentences
   */
  public record Report(Path raw, boolean done, String words) {}

  /**
   * Everything that is half-done, oldest first.
   *
   * @throws IOException if the records cannot be listed
   */
  public List<Path> halfDone() throws IOException {
    Set<String> registered = Register.registeredTests(lab);
    List<Path> found = new ArrayList<>();
    for (Path raw : lab.records()) {
      if (LabFolder.newestSummaryOf(raw).isEmpty()
          || !registered.contains(RecordStart.stem(raw))
          || !RawFileRecovery.isClosed(raw)) {
        found.add(raw);
      }
    }
    return found;
  }

  /**
   * Recovers everything that is half-done. What another process is recording now is left out.
   *
   * @throws IOException if the records cannot be listed
   */
  public List<Report> all() throws IOException {
    List<Report> reports = new ArrayList<>();
    for (Path raw : halfDone()) {
      one(raw).ifPresent(reports::add);
    }
    return List.copyOf(reports);
  }

  /**
   * Recovers one record.
   *
   * @return empty if another process is recording it now
   */
  public Optional<Report> one(Path raw) {
    try {
      Optional<String> rig = rig(raw);
      if (rig.isEmpty()) {
        return headless(raw);
      }
      if (heldRigs.contains(rig.get())) {
        return Optional.of(recover(raw, rig.get()));
      }
      if (RigLock.isTaken(lab, rig.get())) {
        return Optional.empty();
      }
      try (RigLock held = RigLock.take(lab, rig.get(), "the recovery of " + raw.getFileName())) {
        return Optional.of(recover(raw, rig.get()));
      }
    } catch (RawFileException e) {
      return Optional.of(
          new Report(
              raw,
              false,
              e.getMessage()
                  + ". That is damage, not an interruption: nothing was touched. Look for a copy"
                  + " in a backup."));
    } catch (IOException | LabException | TomlException e) {
      return Optional.of(
          new Report(raw, false, raw.getFileName() + " could not be recovered: " + e.getMessage()));
    }
  }

  /** The rig that a record names; empty if its head is not whole. */
  private static Optional<String> rig(Path raw) throws IOException {
    try (RawFileReader reader = RawFileReader.open(raw)) {
      return Optional.of(reader.header().rig().name());
    } catch (RawFileException e) {
      return Optional.empty();
    }
  }

  /** A raw file may be without its head because a recorder is making it at this very moment. */
  private Optional<Report> headless(Path raw) throws IOException, RawFileException {
    for (String rig : lab.rigNames()) {
      if (!heldRigs.contains(rig) && RigLock.isTaken(lab, rig)) {
        return Optional.empty();
      }
    }
    Recovered recovered = RawFileRecovery.recover(folder, raw, clock.now());
    return Optional.of(
        new Report(
            raw,
            true,
            raw.getFileName()
                + " was interrupted before its first reading; its "
                + recovered.tornBytes()
                + " bytes are set aside in "
                + name(recovered)
                + "."));
  }

  private static String name(Recovered recovered) {
    return recovered.tornFile().map(file -> String.valueOf(file.getFileName())).orElse("");
  }

  private Report recover(Path raw, String rig)
      throws IOException, RawFileException, LabException, TomlException {
    Recovered recovered = RawFileRecovery.recover(folder, raw, clock.now());
    StringBuilder words = new StringBuilder();
    if (recovered.outcome() == Outcome.CLOSED) {
      words
          .append(raw.getFileName())
          .append(" was interrupted; it is closed now with the ")
          .append(recovered.keptRows())
          .append(" rows that were written");
      if (recovered.tornBytes() > 0) {
        words
            .append(", and ")
            .append(recovered.tornBytes())
            .append(" bytes of a torn end are set aside in ")
            .append(name(recovered));
      }
      words.append(".");
    }
    Register register = Register.open(lab, rig, keys, clock);
    TestClose close = new TestClose(lab, register);
    Optional<Path> summary = LabFolder.newestSummaryOf(raw);
    return summary.isEmpty()
        ? summarise(raw, close, words)
        : register(raw, LabFolder.summaryOf(raw), register, close, words);
  }

  private Report summarise(Path raw, TestClose close, StringBuilder words)
      throws IOException, RawFileException, LabException, TomlException {
    Reduction reduction = Reduction.of(raw);
    TestClose.Closed closed =
        close.write(
            Kind.RECOVERED,
            LabFolder.summaryOf(raw),
            witness ->
                TestSummary.of(
                    reduction.method(),
                    reduction.test(),
                    Observations.NONE,
                    CompanionSet.of(lab, reduction.method(), reduction.test())
                        .map(CompanionSet::words),
                    new Provenance(Maker.RECOVER, witness, Optional.empty())));
    space(words)
        .append("Its summary was made from the raw file: ")
        .append(closed.file().getFileName())
        .append(".");
    closed.notices().forEach(notice -> space(words).append(notice));
    return new Report(raw, closed.line().isPresent(), words.toString());
  }

  /** Signs a summary that lacks its line, but only if it follows from its raw file. */
  private Report register(
      Path raw, Path summary, Register register, TestClose close, StringBuilder words)
      throws IOException, RawFileException, LabException, TomlException {
    Reduction reduction = Reduction.of(raw);
    boolean follows =
        reduction.rowDifferences().isEmpty()
            && SummaryDifferences.of(summary, reduction.summary(SummaryFile.observations(summary)))
                .isEmpty();
    if (!follows) {
      space(words)
          .append(raw.getFileName())
          .append(" stands in no register, and its summary does not follow from it; it was not")
          .append(" signed. 'platenwire reduce ")
          .append(raw.getFileName())
          .append("' lists what differs.");
      return new Report(raw, false, words.toString());
    }
    if (Register.registeredTests(lab).contains(reduction.test().header().test())) {
      return new Report(raw, true, words.toString());
    }
    List<String> notices = new ArrayList<>();
    boolean written;
    try (Register.Entry entry = register.begin()) {
      written =
          close
              .append(
                  entry,
                  Kind.RECOVERED,
                  reduction.test().header().test(),
                  Digests.sha256Hex(Files.readAllBytes(raw)),
                  Digests.sha256Hex(Files.readAllBytes(summary)),
                  notices)
              .isPresent();
    }
    if (written) {
      space(words).append(raw.getFileName()).append(" was entered into the register afterwards.");
    }
    notices.forEach(notice -> space(words).append(notice));
    return new Report(raw, written, words.toString());
  }

  private static StringBuilder space(StringBuilder words) {
    return words.isEmpty() ? words : words.append(' ');
  }
}
