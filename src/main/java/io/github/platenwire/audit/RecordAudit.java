package io.github.platenwire.audit;

import io.github.platenwire.audit.RecordFacts.Closed;
import io.github.platenwire.audit.RecordFacts.Head;
import io.github.platenwire.audit.RecordFacts.Version;
import io.github.platenwire.audit.RowWatch.Backward;
import io.github.platenwire.record.Closing;
import io.github.platenwire.record.Digests;
import io.github.platenwire.record.RawFileEnd;
import io.github.platenwire.record.RawFileException;
import io.github.platenwire.record.RawFileReader;
import io.github.platenwire.record.RawHeader;
import io.github.platenwire.recorder.RecordStart;
import io.github.platenwire.recorder.Reduction;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.LongConsumer;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Audits one record by itself: its raw file from front to back, once, its summaries, its name.
 * Confined to one thread; used once.
 */
final class RecordAudit {
  /** So often the reader says how far it is. */
  private static final long TELL_EVERY_ROWS = 1 << 14;

  private static final int MOST_QUOTED = 160;
  private static final Pattern TORN = Pattern.compile("torn_sha256=([0-9a-f]{64})");

  private final AuditContext context;
  private final Path raw;
  private final String file;
  private final String stem;
  private final LongConsumer read;
  private final Findings findings = new Findings();
  private @Nullable RawHeader header;
  private @Nullable RowWatch watch;
  private @Nullable Reduction reduction;
  private @Nullable RawFileEnd end;
  private boolean damaged;
  private long rows;
  private long told;

  /**
   * Audits a record.
   *
   * @param read told how many more bytes were read
   */
  RecordAudit(AuditContext context, Path raw, LongConsumer read) {
    this.context = context;
    this.raw = raw;
    this.file = context.relative(raw);
    this.stem = RecordStart.stem(raw);
    this.read = read;
  }

  /** Empty if it turns out not to be in the scope. */
  Optional<RecordFacts> run() {
    if (!readRaw()) {
      return Optional.empty();
    }
    if (header != null) {
      HeadAudit.run(header, file, stem, findings);
    }
    rowsInOrder();
    SummaryAudit summaries = new SummaryAudit(context, raw, testId(), findings);
    List<Version> versions = summaries.run(reduction, isClosed());
    Reduction computed = reduction;
    if (computed != null && watch != null) {
      new TestAudit(context, file, computed, watch, findings)
          .run(summaries.newest(), summaries.corrected());
      watch.end(findings);
    }
    long summaryBytes = summaries.bytes();
    read.accept(summaryBytes);
    return Optional.of(facts(versions, fileBytes() + summaryBytes));
  }

  /** False if the record turns out not to be in the scope. */
  private boolean readRaw() {
    try (RawFileReader reader = RawFileReader.open(raw)) {
      RawHeader known = reader.header();
      header = known;
      if (!context.scope().isSeries(known.specimen().series())) {
        return false;
      }
      RowWatch watching = new RowWatch(known, context.watches(file, known));
      watch = watching;
      try {
        reduction =
            Reduction.of(
                raw,
                reader,
                specimen -> specimen,
                row -> {
                  watching.accept(row);
                  if (row.seq() % TELL_EVERY_ROWS == 0) {
                    tell(reader.offset());
                  }
                });
      } finally {
        rows = reader.goodRows();
        end = reader.end().orElse(null);
        tell(fileBytes());
      }
    } catch (RawFileException e) {
      damaged = true;
      damage(e);
    } catch (IOException | RuntimeException e) {
      // A file that was made up can break anything; the others must still be looked at.
      damaged = true;
      findings.add(
          RawCheck.UNREADABLE, Location.of(file), testId(), "a file that can be read", words(e));
    }
    return true;
  }

  private void tell(long offset) {
    read.accept(offset - told);
    told = offset;
  }

  private long fileBytes() {
    try {
      return Files.size(raw);
    } catch (IOException e) {
      return told;
    }
  }

  private static String words(Exception e) {
    return e.getClass().getSimpleName() + ": " + e.getMessage();
  }

  private String testId() {
    return header == null ? stem : header.test();
  }

  private boolean isClosed() {
    return !damaged && end != null && end.closing().isPresent();
  }

  private void damage(RawFileException e) {
    RawCheck check =
        switch (e.damage()) {
          case HEAD -> RawCheck.HEAD_DAMAGED;
          case LINE -> RawCheck.ROW_DAMAGED;
          case SEQ -> RawCheck.ROW_MISSING;
          case SEAL -> RawCheck.SEAL_BROKEN;
          case SURPLUS -> RawCheck.AFTER_THE_END;
        };
    String seen = e.seen();
    findings.add(
        check,
        Location.of(file, Math.max(1, e.line()), e.offset()),
        testId(),
        e.expected(),
        seen.length() > MOST_QUOTED ? seen.substring(0, MOST_QUOTED) + " …" : seen);
  }

  private void rowsInOrder() {
    RawFileEnd reached = end;
    if (reached == null || damaged || watch == null) {
      return;
    }
    Location whole = Location.of(file);
    for (Backward backward : watch.backward()) {
      findings.add(
          RawCheck.TIME_BACKWARD,
          Location.of(file, backward.line()),
          testId(),
          backward.channel() + " at " + backward.before() + " us or later",
          backward.after() + " us");
    }
    if (reached.closing().isEmpty()) {
      findings.add(
          RawCheck.NOT_RECOVERED,
          whole,
          testId(),
          "a last line that closes the record",
          "the file ends after row " + reached.lastSeq() + torn(reached));
      return;
    }
    closed(reached, reached.closing().get(), whole);
  }

  private void closed(RawFileEnd reached, Closing closing, Location whole) {
    if (reached.tornBytes() > 0) {
      findings.add(
          RawCheck.AFTER_THE_END,
          whole,
          testId(),
          "nothing after the last line",
          reached.tornBytes() + " bytes");
    }
    if (closing.rows() != reached.lastSeq()) {
      findings.add(
          RawCheck.ROW_COUNT,
          whole,
          testId(),
          reached.lastSeq() + " rows, as there are",
          closing.rows() + " rows in the last line");
    }
    List<String> differences = reduction == null ? List.of() : reduction.rowDifferences();
    if (!differences.isEmpty()) {
      findings.add(
          RawCheck.VALUE_DIFFERS,
          whole,
          testId(),
          "in each row what its bytes give",
          String.join("; ", differences.subList(0, Math.min(3, differences.size())))
              + (differences.size() > 3 ? "; and more" : ""));
    }
  }

  private static String torn(RawFileEnd end) {
    return end.tornBytes() == 0 ? "" : " and " + end.tornBytes() + " bytes of a torn line";
  }

  private RecordFacts facts(List<Version> versions, long bytes) {
    return new RecordFacts(
        stem,
        file,
        Optional.ofNullable(header).map(this::head),
        Optional.ofNullable(end)
            .flatMap(RawFileEnd::closing)
            .map(closing -> new Closed(closing.ended(), closing.reason())),
        digest(),
        rows,
        bytes,
        versions,
        findings.list());
  }

  private Head head(RawHeader known) {
    return new Head(
        known.test(),
        known.start(),
        known.rig().name(),
        known.specimen().name(),
        known.specimen().series(),
        watch == null ? Map.of() : Zeros.of(known, watch),
        watch == null ? List.of() : torn(watch));
  }

  private static List<String> torn(RowWatch watch) {
    return watch.events("recovered ").stream()
        .map(event -> TORN.matcher(event.text()))
        .filter(Matcher::find)
        .map(found -> found.group(1))
        .toList();
  }

  /** The reader has it, if it came to a last line with nothing behind it; else the file is read. */
  private Optional<String> digest() {
    RawFileEnd reached = end;
    if (reached != null && reached.tornBytes() == 0 && reached.closing().isPresent()) {
      return reached.closing().map(Closing::fileSha256);
    }
    try {
      return Optional.of(Digests.sha256Hex(raw));
    } catch (IOException e) {
      return Optional.empty();
    }
  }
}
