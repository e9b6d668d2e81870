package io.github.platenwire.lab;

import io.github.platenwire.record.DurableFile;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.FileVisitOption;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** How records are called and where they lie. Stateless. */
final class RecordNames {
  private static final String RAW = ".raw.csv";
  private static final String SUMMARY = ".summary.json";

  private static final DateTimeFormatter MONTH = utc("yyyy-MM");
  private static final DateTimeFormatter STAMP = utc("yyyyMMdd'T'HHmmss'Z'");

  /** Length of a stamp such as 20261125T071502Z. */
  private static final int STAMP_LENGTH = 16;

  private RecordNames() {}

  private static DateTimeFormatter utc(String pattern) {
    return DateTimeFormatter.ofPattern(pattern, Locale.ROOT).withZone(ZoneOffset.UTC);
  }

  /** A raw file's path that nothing bears yet, upper and lower case counting as the same. */
  static Path free(Path records, Instant start, String specimenName) throws IOException {
    Path month = records.resolve(MONTH.format(start));
    if (!Files.isDirectory(month)) {
      Files.createDirectories(month);
      // without that a power cut can lose the month's first records by their folder's very name
      DurableFile.forceName(month);
    }
    Set<String> taken = lowerCaseNames(month);
    String base = STAMP.format(start) + "_" + Names.forFile(specimenName);
    String candidate = base;
    for (int number = 2; isTaken(candidate, taken); number++) {
      candidate = base + "-" + number;
    }
    return month.resolve(candidate + RAW);
  }

  private static boolean isTaken(String candidate, Set<String> taken) {
    return taken.contains(Names.lower(candidate + RAW))
        || taken.contains(Names.lower(candidate + SUMMARY));
  }

  private static Set<String> lowerCaseNames(Path folder) throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.map(file -> Names.lower(fileName(file))).collect(Collectors.toSet());
    } catch (UncheckedIOException e) {
      throw e.getCause();
    }
  }

  /**
   * Every raw file in or one folder below a folder, oldest first. A file that vanishes meanwhile,
   * as the draft of a summary does while another process closes a test, is passed over.
   */
  static List<Path> all(Path records) throws IOException {
    if (!Files.isDirectory(records)) {
      return List.of();
    }
    List<Path> found = new ArrayList<>();
    Files.walkFileTree(
        records,
        EnumSet.of(FileVisitOption.FOLLOW_LINKS),
        2,
        new SimpleFileVisitor<>() {
          @Override
          public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) {
            if (attributes.isRegularFile() && fileName(file).endsWith(RAW)) {
              found.add(file);
            }
            return FileVisitResult.CONTINUE;
          }

          @Override
          public FileVisitResult visitFileFailed(Path file, IOException failure)
              throws IOException {
            if (failure instanceof NoSuchFileException) {
              return FileVisitResult.CONTINUE;
            }
            throw failure;
          }
        });
    found.sort(oldestFirst());
    return List.copyOf(found);
  }

  /** By time stamp; at the same second the shorter name is older, as -2 comes after none. */
  private static Comparator<Path> oldestFirst() {
    return Comparator.comparing((Path file) -> stamp(fileName(file)))
        .thenComparing(file -> fileName(file).length())
        .thenComparing(RecordNames::fileName)
        .thenComparing(Path::toString);
  }

  private static String stamp(String name) {
    return name.substring(0, Math.min(STAMP_LENGTH, name.length()));
  }

  /** The summary's path beside a raw file. */
  static Path summaryOf(Path rawFile) {
    return summaryOf(rawFile, 1);
  }

  private static Path summaryOf(Path rawFile, int version) {
    String name = fileName(rawFile);
    if (!name.endsWith(RAW)) {
      throw new IllegalArgumentException("a raw file's name ends in " + RAW + ", file=" + rawFile);
    }
    String stem = name.substring(0, name.length() - RAW.length());
    return rawFile.resolveSibling(
        stem + (version == 1 ? SUMMARY : ".summary-" + version + ".json"));
  }

  private static int versions(Path rawFile) {
    int versions = 0;
    while (Files.exists(summaryOf(rawFile, versions + 1))) {
      versions++;
    }
    return versions;
  }

  static Optional<Path> newestSummaryOf(Path rawFile) {
    int versions = versions(rawFile);
    return versions == 0 ? Optional.empty() : Optional.of(summaryOf(rawFile, versions));
  }

  static List<Path> summariesOf(Path rawFile) {
    return IntStream.rangeClosed(1, versions(rawFile))
        .mapToObj(version -> summaryOf(rawFile, version))
        .toList();
  }

  static Path nextSummaryOf(Path rawFile) {
    return summaryOf(rawFile, versions(rawFile) + 1);
  }

  private static String fileName(Path file) {
    return String.valueOf(file.getFileName());
  }
}
