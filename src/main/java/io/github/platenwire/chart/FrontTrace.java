package io.github.platenwire.chart;

import io.github.platenwire.method.FrontPart;
import io.github.platenwire.method.Method;
import io.github.platenwire.method.MethodResult;
import io.github.platenwire.method.MethodRun;
import io.github.platenwire.reading.Quality;
import io.github.platenwire.record.RawFileException;
import io.github.platenwire.record.RawFileReader;
import io.github.platenwire.record.RawHeader;
import io.github.platenwire.record.RawRow;
import io.github.platenwire.toml.TomlException;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Optional;

/**
 * A front against time, followed once more by the method out of the raw file's rows. Immutable.
 *
 * @param header the raw file's head
 * @param front what was read, as far as it counts
 * @param result what the log came to
 */
public record FrontTrace(RawHeader header, FrontPart front, MethodResult result) {
  /**
   * Reads a raw file.
   *
   * @return empty if the record is none of a front
   * @throws IOException if the file cannot be read
   * @throws RawFileException if it is not as the format says
   */
  public static Optional<FrontTrace> read(Path file) throws IOException, RawFileException {
    try (RawFileReader reader = RawFileReader.open(file)) {
      RawHeader header = reader.header();
      MethodRun run = start(header);
      if (run.view().front().isEmpty()) {
        return Optional.empty();
      }
      reader.readRows(row -> follow(row, header, run));
      FrontPart front = run.view().front().orElseThrow();
      return Optional.of(new FrontTrace(header, front, run.finish()));
    }
  }

  private static MethodRun start(RawHeader header) throws RawFileException {
    try {
      return Method.parse(header.method().text(), "method " + header.method().name())
          .start(header.specimen(), header.setting());
    } catch (TomlException | IllegalArgumentException e) {
      throw new RawFileException(
          header.test(), 1, "the method in the head cannot be used: " + e.getMessage());
    }
  }

  private static void follow(RawRow row, RawHeader header, MethodRun run) {
    for (int i = 0; i < header.channels().size(); i++) {
      if (!header.channels().get(i).facts().name().equals(row.channel())) {
        continue;
      }
      if (header.channels().get(i).isTyped() && row.quality() != Quality.LATE) {
        String line = new String(row.received(), StandardCharsets.UTF_8);
        run.entry(row.seq(), row.elapsedMicros(), i, line, row.value(), row.quality());
      } else {
        run.reading(row.seq(), row.elapsedMicros(), i, row.value(), row.quality());
      }
      run.takeHappenings();
    }
  }
}
