package io.github.platenwire.recorder;

import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.Optional;

/** What a raw file's name tells. Stateless. */
public final class RecordStart {
  private static final String ENDING = ".raw.csv";
  private static final DateTimeFormatter STAMP =
      DateTimeFormatter.ofPattern("uuuuMMdd'T'HHmmss'Z'", Locale.ROOT);

  private RecordStart() {}

  /** When the test started, to the second, if the name is one of ours. */
  public static Optional<Instant> of(String fileName) {
    int end = fileName.indexOf('_');
    try {
      return end < 0
          ? Optional.empty()
          : Optional.of(
              LocalDateTime.parse(fileName.substring(0, end), STAMP).toInstant(ZoneOffset.UTC));
    } catch (DateTimeException e) {
      return Optional.empty();
    }
  }

  /** The test's id: the name without its ending. */
  public static String stem(Path file) {
    String name = file.getFileName().toString();
    return name.endsWith(ENDING) ? name.substring(0, name.length() - ENDING.length()) : name;
  }
}
