package io.github.platenwire.audit;

import java.time.Instant;
import java.time.ZoneId;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * What an audit looked at and what it found. Immutable.
 *
 * @param lab the lab's name
 * @param zone the lab's time zone, in which days are shown
 * @param scope what was looked at, in words, such as {@code the whole archive}
 * @param made when the audit was made
 * @param program name, version and commit of the program that made it
 * @param files files that were read
 * @param rows rows of raw files that were read
 * @param bytes bytes that were read
 * @param records each record, the oldest first
 * @param registers each rig's register
 * @param findings what was found, in the order of {@link Finding#HEAVIEST_FIRST}
 */
public record AuditReport(
    String lab,
    ZoneId zone,
    String scope,
    Instant made,
    String program,
    long files,
    long rows,
    long bytes,
    List<RecordSeen> records,
    List<RegisterSeen> registers,
    List<Finding> findings) {
  /** Puts the findings in order and makes the lists immutable. */
  public AuditReport {
    records = List.copyOf(records);
    registers = List.copyOf(registers);
    findings = findings.stream().sorted(Finding.HEAVIEST_FIRST).toList();
  }

  /**
   * One record.
   *
   * @param test its id; of a file whose head cannot be read, the stem of its name
   * @param file the raw file, relative to the lab folder
   * @param start when the test started; empty if its head cannot be read
   * @param ended when the record ended; empty if it was not closed, or cannot be read so far
   * @param rig the rig; empty if the head cannot be read
   * @param specimen the specimen's name; empty if the head cannot be read
   * @param series its series; empty if the head cannot be read
   * @param rows its rows
   * @param worst the heaviest of its findings; empty if there are none
   */
  public record RecordSeen(
      String test,
      String file,
      Optional<Instant> start,
      Optional<Instant> ended,
      Optional<String> rig,
      Optional<String> specimen,
      Optional<String> series,
      long rows,
      Optional<Severity> worst) {}

  /**
   * One rig's register.
   *
   * @param rig the rig
   * @param lines how many lines it has
   * @param witness the witness of its last line, 16 hex digits; empty if it has none
   */
  public record RegisterSeen(String rig, long lines, Optional<String> witness) {}

  /** When the oldest record started. */
  public Optional<Instant> from() {
    return records.stream().flatMap(r -> r.start().stream()).min(Comparator.naturalOrder());
  }

  /** When the last record ended, or started if it has no end. */
  public Optional<Instant> to() {
    return records.stream()
        .flatMap(r -> r.ended().or(r::start).stream())
        .max(Comparator.naturalOrder());
  }

  /** How many findings have a severity. */
  public long count(Severity severity) {
    return findings.stream().filter(finding -> finding.severity() == severity).count();
  }

  /** The heaviest of all findings; empty if there are none. */
  public Optional<Severity> worst() {
    return findings.stream().map(Finding::severity).max(Comparator.naturalOrder());
  }

  /** The findings of one record. */
  public List<Finding> of(RecordSeen record) {
    return findings.stream()
        .filter(finding -> finding.test().equals(Optional.of(record.test())))
        .toList();
  }
}
