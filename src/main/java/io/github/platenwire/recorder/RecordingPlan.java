package io.github.platenwire.recorder;

import io.github.platenwire.method.Method;
import io.github.platenwire.record.RawHeader;
import io.github.platenwire.record.RecordFolder;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;

/**
 * What is to be recorded and how long it may be silent. Immutable.
 *
 * @param folder makes the file
 * @param namer gives the new file's path
 * @param headers makes its head
 * @param method follows the test
 * @param giveUpAfter ends the record as interrupted when nothing has come on any channel for so
 *     long; empty: waits for the operator
 */
public record RecordingPlan(
    RecordFolder folder,
    FileNamer namer,
    HeaderMaker headers,
    Method method,
    Optional<Duration> giveUpAfter) {

  /** Names a new raw file. */
  @FunctionalInterface
  public interface FileNamer {
    /**
     * A path that is not taken.
     *
     * @param start when the test's clock stood at zero
     * @throws IOException if its folder cannot be made
     */
    Path newFile(Instant start) throws IOException;
  }

  /** Makes the head of a raw file. */
  @FunctionalInterface
  public interface HeaderMaker {
    /**
     * The head.
     *
     * @param start when the test's clock stood at zero
     * @param originNanos the monotonic clock then
     * @param file the raw file
     */
    RawHeader header(Instant start, long originNanos, Path file);
  }
}
