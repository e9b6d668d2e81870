package io.github.platenwire.audit;

import io.github.platenwire.audit.AuditReport.RecordSeen;
import io.github.platenwire.audit.AuditReport.RegisterSeen;
import io.github.platenwire.audit.RecordFacts.Closed;
import io.github.platenwire.audit.RecordFacts.Head;
import io.github.platenwire.audit.RegisterBook.RigRegister;
import io.github.platenwire.lab.LabFolder;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Audits an archive: every record by itself, on all cores, then records, registers and tables
 * against each other. Reads only. The same archive gives the same findings in the same order,
 * however many threads read it. Used once, by one thread.
 */
public final class Audit {
  private final AuditContext context;
  private final Settings settings;

  /**
   * How to audit.
   *
   * @param scope what to look at
   * @param threads how many records to read at once
   * @param confirmedKeys fingerprints of keys, 16 hex digits, that a person has on paper; if any
   *     are given, no other key counts
   * @param witnesses witnesses from paper, 16 hex digits
   * @param program name, version and commit of this program
   * @param now the time of day
   */
  public record Settings(
      Scope scope,
      int threads,
      Set<String> confirmedKeys,
      List<String> witnesses,
      String program,
      Instant now) {
    /** Makes the collections immutable. */
    public Settings {
      confirmedKeys = Set.copyOf(confirmedKeys);
      witnesses = List.copyOf(witnesses);
    }
  }

  /** Follows an audit; called by one thread at a time. */
  @FunctionalInterface
  public interface Progress {
    /**
     * So much was read.
     *
     * @param readBytes bytes read so far
     * @param ofBytes bytes to be read
     */
    void read(long readBytes, long ofBytes);
  }

  private Audit(LabFolder lab, Settings settings) {
    this.settings = settings;
    this.context =
        new AuditContext(lab, settings.scope(), LabTables.read(lab), Detectors.all(lab.root()));
  }

  /**
   * Audits.
   *
   * @throws IOException if the folders of records or registers cannot be listed
   * @throws InterruptedException if the calling thread is interrupted; the readers then end by
   *     themselves
   */
  public static AuditReport of(LabFolder lab, Settings settings, Progress progress)
      throws IOException, InterruptedException {
    return new Audit(lab, settings).run(progress);
  }

  private AuditReport run(Progress progress) throws IOException, InterruptedException {
    List<Path> raws = settings.scope().rawFiles(context.lab());
    List<RecordFacts> records =
        new ParallelRecords(context, settings.threads(), progress).run(raws);
    RegisterAudit registers = new RegisterAudit(context, settings.confirmedKeys());
    RegisterBook book = registers.read();
    Findings across = new Findings();
    List<RecordFacts> single = withoutDuplicates(records, book, across);
    new RegisterMatch(context, book, across).run(single);
    new OrderAudit(book, across).run(single);
    new FolderAudit(context, book, across).run(records);
    witnesses(book, across);
    context.detectors().forEach(detector -> detector.across(across::add));
    List<Finding> all = new ArrayList<>(across.list());
    records.forEach(record -> all.addAll(record.findings()));
    for (String rig : rigs(records, book)) {
      all.addAll(registers.findings(rig));
    }
    if (settings.scope().isArchive()) {
      all.addAll(SharedAudit.of(context));
      all.addAll(context.tables().findings());
    }
    return report(records, book, all);
  }

  /** One record for each test: the one that the register knows, else the first. */
  private static List<RecordFacts> withoutDuplicates(
      List<RecordFacts> records, RegisterBook book, Findings findings) {
    Map<String, List<RecordFacts>> byTest = new LinkedHashMap<>();
    records.forEach(
        record -> byTest.computeIfAbsent(record.test(), test -> new ArrayList<>()).add(record));
    List<RecordFacts> single = new ArrayList<>();
    byTest.forEach(
        (test, same) -> {
          RecordFacts kept =
              same.stream()
                  .filter(record -> isRegistered(record, book))
                  .findFirst()
                  .orElse(same.get(0));
          single.add(kept);
          for (RecordFacts other : same) {
            if (!other.equals(kept)) {
              findings.add(
                  RawCheck.DUPLICATE_RECORD,
                  other.location(),
                  test,
                  "one raw file of this test, " + kept.file(),
                  other.sha256().equals(kept.sha256())
                      ? "the same bytes once more"
                      : "another raw file");
            }
          }
        });
    return single;
  }

  private static boolean isRegistered(RecordFacts record, RegisterBook book) {
    return book.of(record.test()).stream()
            .anyMatch(entry -> record.sha256().equals(Optional.of(entry.line().rawSha256())))
        && record.stem().equals(record.test());
  }

  private void witnesses(RegisterBook book, Findings findings) {
    for (String witness : settings.witnesses()) {
      if (!book.knows(witness)) {
        findings.add(
            RegisterLineCheck.WITNESS_UNKNOWN,
            Location.of("register"),
            "the witness " + witness + ", given with --witness",
            "no register has such a line");
      }
    }
  }

  /** Rigs whose registers are reported on. */
  private Set<String> rigs(List<RecordFacts> records, RegisterBook book) throws IOException {
    if (settings.scope().isArchive()) {
      return new HashSet<>(context.lab().registerNames());
    }
    Set<String> rigs = new HashSet<>();
    for (RecordFacts record : records) {
      record.head().ifPresent(head -> rigs.add(head.rig()));
      book.of(record.test()).forEach(entry -> rigs.add(entry.rig()));
    }
    return rigs;
  }

  private AuditReport report(List<RecordFacts> records, RegisterBook book, List<Finding> findings) {
    Map<String, Severity> worst = new HashMap<>();
    for (Finding finding : findings) {
      finding
          .test()
          .ifPresent(
              test -> worst.merge(test, finding.severity(), (a, b) -> a.isAtLeast(b) ? a : b));
    }
    long registerBytes = 0;
    for (RigRegister register : book.registers()) {
      registerBytes +=
          register.check().lines().stream().mapToLong(line -> line.text().length() + 1L).sum();
    }
    return new AuditReport(
        context.lab().settings().labName(),
        context.lab().settings().zone(),
        settings.scope().words(),
        settings.now(),
        settings.program(),
        records.stream().mapToLong(record -> 1L + record.versions().size()).sum()
            + book.registers().size(),
        records.stream().mapToLong(RecordFacts::rows).sum(),
        records.stream().mapToLong(RecordFacts::bytes).sum() + registerBytes,
        records.stream().map(record -> seen(record, worst)).toList(),
        book.registers().stream().map(Audit::seen).toList(),
        findings);
  }

  private static RecordSeen seen(RecordFacts record, Map<String, Severity> worst) {
    return new RecordSeen(
        record.test(),
        record.file(),
        record.head().map(Head::start),
        record.closed().map(Closed::ended),
        record.head().map(Head::rig),
        record.head().map(Head::specimen),
        record.head().map(Head::series),
        record.rows(),
        Optional.ofNullable(worst.get(record.test())));
  }

  private static RegisterSeen seen(RigRegister register) {
    return new RegisterSeen(
        register.rig(), register.check().lines().size(), register.check().head());
  }
}
