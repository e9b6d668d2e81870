package io.github.platenwire.record;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Arrays;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Closes in order a raw file that an interrupted program or a power cut left without its last line.
 * What is good stays, byte for byte; what was torn goes into a file of its own; the record then
 * ends with an event that says so and with {@code reason=interrupted}.
 *
 * <p>May itself be interrupted anywhere and done again: the torn part is safe in its own file
 * before the raw file is cut, and a recovery that was cut off looks like any other torn end.
 * Stateless; nobody else may write the file meanwhile.
 */
public final class RawFileRecovery {
  private static final int LAST_LINE_AT_MOST = 400;
  private static final String CLOSED = "# closed ";

  private RawFileRecovery() {}

  /** What became of a file. */
  public enum Outcome {
    /** It had its last line; nothing was touched. */
    WAS_CLOSED,
    /** It was closed as interrupted. */
    CLOSED,
    /** Not even its head was whole, so that it held no reading: all of it was set aside. */
    SET_ASIDE
  }

  /**
   * A recovery that was done.
   *
   * @param outcome what became of the file
   * @param tornBytes how many bytes were set aside
   * @param tornFile where they are now, if there were any
   * @param keptRows rows that stayed, without the event that tells of the recovery
   */
  public record Recovered(
      Outcome outcome, long tornBytes, Optional<Path> tornFile, long keptRows) {}

  /**
   * Whether a file ends with the line that closes a record; looks at its end only.
   *
   * @throws IOException if it cannot be read
   */
  public static boolean isClosed(Path raw) throws IOException {
    try (RandomAccessFile file = new RandomAccessFile(raw.toFile(), "r")) {
      int length = (int) Math.min(LAST_LINE_AT_MOST, file.length());
      byte[] end = new byte[length];
      file.seek(file.length() - length);
      file.readFully(end);
      String text = new String(end, StandardCharsets.ISO_8859_1);
      int before = text.lastIndexOf('\n', text.length() - 2);
      return text.endsWith("\n") && text.startsWith(CLOSED, before + 1);
    }
  }

  /**
   * Closes a file, if it is not closed.
   *
   * @param folder opens and makes files
   * @param raw the raw file
   * @param now the time of day, for the event
   * @throws RawFileException if the file has its last line but is damaged before it: that is no
   *     interruption, and nothing was touched
   * @throws IOException if the disk fails; it may be tried again
   */
  public static Recovered recover(RecordFolder folder, Path raw, Instant now)
      throws IOException, RawFileException {
    boolean closed = isClosed(raw);
    Damage damage = read(raw, closed);
    if (damage.problem() != null) {
      throw damage.problem();
    }
    if (closed) {
      return new Recovered(Outcome.WAS_CLOSED, 0, Optional.empty(), 0);
    }
    GoodPrefix good = damage.good();
    return good == null ? setAside(raw) : close(folder, raw, good, now);
  }

  /**
   * How far a file is good.
   *
   * @param good what can be kept; null if not even the head can
   * @param problem what no interruption explains
   */
  private record Damage(@Nullable GoodPrefix good, @Nullable RawFileException problem) {}

  private static Damage read(Path raw, boolean closed) throws IOException {
    try (RawFileReader reader = RawFileReader.open(raw)) {
      try {
        reader.readRows(row -> {});
      } catch (RawFileException e) {
        return new Damage(reader.kept(), closed || reader.sawLastLine() ? e : null);
      }
      return new Damage(reader.kept(), closed || !reader.sawLastLine() ? null : surplus(raw));
    } catch (RawFileException e) {
      return new Damage(null, closed ? e : null);
    }
  }

  private static RawFileException surplus(Path raw) {
    return new RawFileException(
        String.valueOf(raw.getFileName()), 0, "something follows the line that closes the record");
  }

  private static Recovered setAside(Path raw) throws IOException {
    long bytes = Files.size(raw);
    Path torn = TornFile.keepWhole(raw);
    return new Recovered(Outcome.SET_ASIDE, bytes, Optional.of(torn), 0);
  }

  private static Recovered close(RecordFolder folder, Path raw, GoodPrefix good, Instant now)
      throws IOException {
    byte[] all = Files.readAllBytes(raw);
    int length = (int) good.bytes();
    Optional<Path> torn = TornFile.keepTail(raw, all, length);
    int tornBytes = all.length - length;
    try (RawFileWriter writer = RawFileWriter.resume(folder, raw, good)) {
      writer.event(good.lastMicros(), "recovered " + words(all, length, now));
      writer.check();
      Instant ended = good.header().start().plus(good.lastMicros(), ChronoUnit.MICROS);
      writer.finish(CloseReason.INTERRUPTED, ended, 0);
    }
    return new Recovered(Outcome.CLOSED, tornBytes, torn, good.lastSeq());
  }

  private static String words(byte[] all, int from, Instant now) {
    int torn = all.length - from;
    String digest =
        torn == 0
            ? ""
            : " torn_sha256=" + Digests.sha256Hex(Arrays.copyOfRange(all, from, all.length));
    return "at=" + now.truncatedTo(ChronoUnit.MILLIS) + " torn_bytes=" + torn + digest;
  }
}
