package io.github.platenwire.audit;

import io.github.platenwire.record.Digests;
import io.github.platenwire.recorder.RecordStart;
import java.io.IOException;
import java.nio.file.FileVisitOption;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Looks for what lies in the folder of records beside raw files. Confined to one thread. */
final class FolderAudit {
  private static final Pattern SUMMARY = Pattern.compile("(.+)\\.summary(?:-([0-9]{1,6}))?\\.json");
  private static final Pattern TORN = Pattern.compile("(.+)\\.raw\\.csv\\.torn(?:-[0-9]{1,6})?");

  private static final Pattern ENCLOSURE =
      Pattern.compile("(.+)\\.enclosure-[0-9]{1,6}(?:\\.[a-z0-9]{1,5})?");

  /** What the program itself puts there. */
  private static final Set<String> OWN = Set.of(".reserve", "README.txt");

  private final AuditContext context;
  private final RegisterBook book;
  private final Findings findings;
  private final Map<String, RecordFacts> byFile = new HashMap<>();
  private final Set<String> tornSeen = new HashSet<>();

  FolderAudit(AuditContext context, RegisterBook book, Findings findings) {
    this.context = context;
    this.book = book;
    this.findings = findings;
  }

  /** Looks at every file; only at those beside the records if not all of the archive is audited. */
  void run(List<RecordFacts> records) throws IOException {
    records.forEach(record -> byFile.put(record.file(), record));
    for (Path file : files()) {
      String name = String.valueOf(file.getFileName());
      Matcher summary = SUMMARY.matcher(name);
      Matcher torn = TORN.matcher(name);
      Matcher enclosure = ENCLOSURE.matcher(name);
      if (summary.matches()) {
        summary(file, summary.group(1), summary.group(2));
      } else if (torn.matches()) {
        torn(file, torn.group(1));
      } else if (enclosure.matches()) {
        enclosure(file, enclosure.group(1));
      } else if (!OWN.contains(name) && !byFile.containsKey(context.relative(file))) {
        foreign(file);
      }
    }
    records.forEach(this::tornMissing);
  }

  private List<Path> files() throws IOException {
    Path folder = context.lab().root().resolve("records");
    List<Path> files = new ArrayList<>();
    if (Files.isDirectory(folder)) {
      Files.walkFileTree(
          folder,
          EnumSet.of(FileVisitOption.FOLLOW_LINKS),
          Integer.MAX_VALUE,
          new SimpleFileVisitor<>() {
            @Override
            public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) {
              files.add(file);
              return FileVisitResult.CONTINUE;
            }

            @Override
            public FileVisitResult visitFileFailed(Path file, IOException e) {
              findings.add(
                  RawCheck.UNREADABLE,
                  Location.of(context.relative(file)),
                  "a file or folder that can be read",
                  e.getClass().getSimpleName() + ": " + e.getMessage());
              return FileVisitResult.CONTINUE;
            }
          });
    }
    files.sort(null);
    return files;
  }

  private String rawBeside(Path file, String stem) {
    return context.relative(file.resolveSibling(stem + ".raw.csv"));
  }

  private void summary(Path file, String stem, String number) {
    Path raw = file.resolveSibling(stem + ".raw.csv");
    RecordFacts record = byFile.get(rawBeside(file, stem));
    if (record != null) {
      int version = number == null ? 1 : Integer.parseInt(number);
      if (version > record.versions().size()) {
        findings.add(
            SummaryVersionCheck.VERSIONS_OUT_OF_ORDER,
            Location.of(context.relative(file)),
            record.test(),
            "version " + (record.versions().size() + 1) + " before it",
            "no such version");
      }
    } else if (context.scope().isArchive() && !Files.exists(raw) && book.of(stem).isEmpty()) {
      findings.add(
          SummaryVersionCheck.SUMMARY_ALONE,
          Location.of(context.relative(file)),
          stem,
          stem + ".raw.csv beside it",
          "no such file");
    }
  }

  private void enclosure(Path file, String stem) {
    RecordFacts record = byFile.get(rawBeside(file, stem));
    if (record == null && !context.scope().isArchive()) {
      return;
    }
    String name = String.valueOf(file.getFileName());
    boolean named =
        record != null
            && record.versions().stream().anyMatch(one -> one.enclosures().contains(name));
    if (!named) {
      findings.add(
          SummaryVersionCheck.ENCLOSURE_UNNAMED,
          Location.of(context.relative(file)),
          stem,
          "a file that a summary beside it names",
          record == null ? "no record " + stem : "no summary that names it");
    }
  }

  private void torn(Path file, String stem) throws IOException {
    RecordFacts record = byFile.get(rawBeside(file, stem));
    if (record == null && !context.scope().isArchive()) {
      return;
    }
    Location location = Location.of(context.relative(file));
    if (record == null || record.head().isEmpty() || record.closed().isEmpty()) {
      findings.add(
          RawCheck.TORN_FILE, location, stem, "a record without interruption", "a torn file");
      return;
    }
    String sha256 = Digests.sha256Hex(file);
    tornSeen.add(sha256);
    boolean told = record.head().get().torn().contains(sha256);
    findings.add(
        told ? RawCheck.TORN_FILE : RawCheck.TORN_FILE_DIFFERS,
        location,
        record.test(),
        told ? "a record without interruption" : "a torn end that the record tells of",
        "a torn end of " + Files.size(file) + " bytes, sha256=" + sha256);
  }

  private void tornMissing(RecordFacts record) {
    for (String sha256 : record.head().map(RecordFacts.Head::torn).orElse(List.of())) {
      if (!tornSeen.contains(sha256)) {
        findings.add(
            RawCheck.TORN_FILE_DIFFERS,
            record.location(),
            record.test(),
            "a torn end with sha256=" + sha256 + " beside the record",
            "no such file");
      }
    }
  }

  private void foreign(Path file) {
    if (context.scope().isArchive()) {
      findings.add(
          RawCheck.FOREIGN_FILE,
          Location.of(context.relative(file)),
          "raw files, summaries, enclosures and torn ends",
          RecordStart.stem(file).equals(String.valueOf(file.getFileName()))
              ? "a file of another kind"
              : "a raw file in a folder below the months");
    }
  }
}
