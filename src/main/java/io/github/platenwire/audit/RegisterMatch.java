package io.github.platenwire.audit;

import io.github.platenwire.audit.RecordFacts.Closed;
import io.github.platenwire.audit.RecordFacts.Version;
import io.github.platenwire.audit.RegisterBook.Entry;
import io.github.platenwire.lab.RegisterLine;
import io.github.platenwire.record.CloseReason;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Holds the records against the registers, both ways. Confined to one thread. */
final class RegisterMatch {
  private static final String NO_WITNESS =
      RegisterLine.NO_LINE.substring(0, RegisterLine.WITNESS_DIGITS);

  private final AuditContext context;
  private final RegisterBook book;
  private final Findings findings;

  RegisterMatch(AuditContext context, RegisterBook book, Findings findings) {
    this.context = context;
    this.book = book;
    this.findings = findings;
  }

  /**
   * Looks at every record, then at every test without one.
   *
   * @param records one for each test
   */
  void run(List<RecordFacts> records) {
    Set<String> there = new HashSet<>();
    for (RecordFacts record : records) {
      there.add(record.test());
      if (record.head().isPresent()) {
        record(record, book.of(record.test()));
      }
    }
    for (String test : book.tests()) {
      if (!there.contains(test) && context.scope().expects(context.lab(), test)) {
        findings.add(
            RegisterLineCheck.RECORD_MISSING,
            book.of(test).get(0).location(),
            test,
            test + ".raw.csv in records/",
            "no record of this test");
      }
    }
  }

  private void record(RecordFacts record, List<Entry> entries) {
    List<Entry> closes = entries.stream().filter(Entry::closes).toList();
    if (closes.isEmpty()) {
      unregistered(record);
      witnesses(record, entries);
      return;
    }
    if (closes.size() > 1) {
      findings.add(
          RegisterLineCheck.REGISTERED_TWICE,
          closes.get(1).location(),
          record.test(),
          "one line that closes the test",
          closes.size() + " lines, the first " + closes.get(0).location().words());
    }
    afterwards(record, closes.get(0));
    raw(record, entries);
    versions(record, entries);
    witnesses(record, entries);
  }

  private void afterwards(RecordFacts record, Entry entry) {
    boolean interrupted =
        record.closed().map(Closed::reason).equals(Optional.of(CloseReason.INTERRUPTED));
    if (entry.line().kind() == RegisterLine.Kind.RECOVERED && !interrupted) {
      findings.add(
          RegisterLineCheck.ENTERED_AFTERWARDS,
          entry.location(),
          record.test(),
          "a line made when the test was closed",
          "a line of kind '" + entry.line().kind().word() + "', made at " + entry.line().time());
    }
  }

  private void unregistered(RecordFacts record) {
    if (record.closed().isEmpty()) {
      return;
    }
    boolean halfDone = record.versions().isEmpty();
    findings.add(
        halfDone ? RawCheck.NOT_RECOVERED : RegisterLineCheck.NOT_REGISTERED,
        record.location(),
        record.test(),
        "a line that closes the test in the register of its rig",
        halfDone ? "no line, and no summary either" : "no line");
  }

  private void raw(RecordFacts record, List<Entry> entries) {
    for (Entry entry : entries) {
      String rig = record.head().map(RecordFacts.Head::rig).orElse(entry.rig());
      if (!entry.rig().equals(rig)) {
        findings.add(
            RegisterLineCheck.WRONG_REGISTER,
            entry.location(),
            record.test(),
            "a test of rig " + entry.rig(),
            "its record was made on rig " + rig);
      }
    }
    for (Entry entry : entries) {
      if (record.sha256().isPresent() && !record.sha256().get().equals(entry.line().rawSha256())) {
        findings.add(
            RegisterLineCheck.RECORD_CHANGED,
            record.location(),
            record.test(),
            "sha256=" + entry.line().rawSha256() + ", " + entry.location().words(),
            "sha256=" + record.sha256().get());
        return;
      }
    }
  }

  private void versions(RecordFacts record, List<Entry> entries) {
    List<Version> versions = record.versions();
    for (int i = 0; i < Math.max(versions.size(), entries.size()); i++) {
      if (i >= versions.size()) {
        findings.add(
            SummaryVersionCheck.SUMMARY_MISSING,
            record.location(),
            record.test(),
            "version " + (i + 1) + " of the summary, " + entries.get(i).location().words(),
            versions.size() + " versions");
      } else if (i >= entries.size()) {
        findings.add(
            SummaryVersionCheck.SUMMARY_UNREGISTERED,
            Location.of(versions.get(i).file()),
            record.test(),
            "a register line for this version",
            "no line");
      } else {
        changed(record, versions.get(i), entries.get(i));
      }
    }
  }

  private void changed(RecordFacts record, Version version, Entry entry) {
    Optional<String> seen = version.sha256();
    if (seen.isPresent() && !seen.get().equals(entry.line().summarySha256())) {
      findings.add(
          SummaryVersionCheck.SUMMARY_CHANGED,
          Location.of(version.file()),
          record.test(),
          "sha256=" + entry.line().summarySha256() + ", " + entry.location().words(),
          "sha256=" + seen.get());
    }
  }

  /** Each summary testifies for what stood in the register when it was made. */
  private void witnesses(RecordFacts record, List<Entry> entries) {
    for (int i = 0; i < record.versions().size(); i++) {
      Version version = record.versions().get(i);
      Optional<Entry> own = i < entries.size() ? Optional.of(entries.get(i)) : Optional.empty();
      Optional<String> witness = version.witnessBefore();
      if (version.readable() && witness.isPresent() && !isKnown(witness.get(), own)) {
        findings.add(
            RegisterLineCheck.WITNESS_UNKNOWN,
            Location.of(version.file()),
            record.test(),
            own.map(entry -> "the witness of the line before " + entry.location().words())
                .orElse("the witness of a register line"),
            witness.get());
      }
    }
  }

  private boolean isKnown(String witness, Optional<Entry> own) {
    if (own.isEmpty()) {
      return witness.equals(NO_WITNESS) || book.knows(witness);
    }
    RegisterLine line = own.get().line();
    boolean atOnce = line.kind() != RegisterLine.Kind.RECOVERED;
    String justBefore = line.previousSha256().substring(0, RegisterLine.WITNESS_DIGITS);
    return witness.equals(justBefore)
        || (!atOnce && (witness.equals(NO_WITNESS) || isBefore(witness, own.get())));
  }

  /** What is entered afterwards may have been made when fewer lines stood there. */
  private boolean isBefore(String witness, Entry own) {
    return book.registers().stream()
        .filter(register -> register.rig().equals(own.rig()))
        .flatMap(register -> register.check().lines().stream())
        .anyMatch(line -> line.number() < own.line().number() && line.witness().equals(witness));
  }
}
