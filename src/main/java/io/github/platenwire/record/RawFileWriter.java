package io.github.platenwire.record;

import io.github.platenwire.reading.Quality;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Writes one raw file. <i>Appended</i> rows are in memory; {@link #write} hands them to the file
 * system (<i>written</i>); {@link #force} makes them survive a power cut (<i>forced</i>).
 *
 * <p>Confined to the recorder thread, except {@link #force}, which any thread may call. After an
 * {@link IOException} the file is cut back to its last whole row and only {@link #finish} and
 * {@link #close} make sense.
 */
public final class RawFileWriter implements AutoCloseable {
  private static final byte[] EVENT = "event".getBytes(StandardCharsets.US_ASCII);
  private static final byte[] NOTHING = {};

  private final RecordFile file;
  private final List<byte[]> channelNames;
  private final RowText rows = new RowText();
  private final MessageDigest digest;
  private long writtenBytes;
  private long appendedSeq;
  private long writtenSeq;
  private @Nullable Closing closing;

  private RawFileWriter(RecordFile file, RawHeader header, MessageDigest digest) {
    this.file = file;
    this.digest = digest;
    this.channelNames =
        header.channels().stream()
            .map(channel -> channel.facts().name().getBytes(StandardCharsets.US_ASCII))
            .toList();
  }

  /**
   * Makes the file and writes its head.
   *
   * @param folder makes the file
   * @param path its final name; must not exist
   * @param header what stands in its head
   * @throws IOException if it cannot be made or written; nothing else was changed then
   */
  public static RawFileWriter create(RecordFolder folder, Path path, RawHeader header)
      throws IOException {
    RawFileWriter writer = new RawFileWriter(folder.create(path), header, Digests.sha256());
    for (String line : HeaderText.write(header).split("\n", -1)) {
      writer.rows.line(line.isEmpty() ? "#" : "# " + line);
    }
    writer.rows.line(RowText.COLUMNS);
    writer.write();
    writer.force();
    return writer;
  }

  /**
   * Writes on where an interrupted program stopped. What comes after the good part is cut off; it
   * must have been set aside before.
   *
   * @param folder opens the file
   * @param path the interrupted raw file
   * @param good what of it is kept
   * @throws IOException if it cannot be opened or cut
   */
  static RawFileWriter resume(RecordFolder folder, Path path, GoodPrefix good) throws IOException {
    RawFileWriter writer =
        new RawFileWriter(folder.reopen(path, good.bytes()), good.header(), good.digest());
    writer.writtenBytes = good.bytes();
    writer.appendedSeq = good.lastSeq();
    writer.writtenSeq = good.lastSeq();
    return writer;
  }

  /**
   * Appends one reading.
   *
   * @param elapsedMicros time since the origin, in microseconds
   * @param channel index of its channel in the header
   * @param received holds the frame as received
   * @param from index of its first byte
   * @param count its length
   * @param value in the channel's unit; NaN for none
   * @param quality how far it can be trusted
   * @return its number
   */
  public long reading(
      long elapsedMicros,
      int channel,
      byte[] received,
      int from,
      int count,
      double value,
      Quality quality) {
    appendedSeq++;
    rows.row(
        appendedSeq,
        elapsedMicros,
        channelNames.get(channel),
        received,
        from,
        count,
        value,
        quality);
    return appendedSeq;
  }

  /** Appends the row that says a channel has been silent too long. */
  public long late(long elapsedMicros, int channel) {
    return reading(elapsedMicros, channel, NOTHING, 0, 0, Double.NaN, Quality.LATE);
  }

  /** Appends an event. */
  public long event(long elapsedMicros, String text) {
    byte[] utf8 = text.getBytes(StandardCharsets.UTF_8);
    appendedSeq++;
    rows.row(appendedSeq, elapsedMicros, EVENT, utf8, 0, utf8.length, Double.NaN, Quality.OK);
    return appendedSeq;
  }

  /** Bytes appended and not yet written. */
  public int pendingBytes() {
    return rows.length();
  }

  /** Number of the last row that the file system has. */
  public long writtenSeq() {
    return writtenSeq;
  }

  /**
   * Hands everything appended to the file system.
   *
   * @throws IOException if it does not take all of it; the file was then cut back to its last whole
   *     line, and {@link #writtenSeq} tells the last row in it
   */
  public void write() throws IOException {
    ByteBuffer bytes = ByteBuffer.wrap(rows.bytes(), 0, rows.length());
    try {
      while (bytes.hasRemaining()) {
        if (file.write(bytes) <= 0) {
          throw new IOException("the file system took no bytes");
        }
      }
    } catch (IOException e) {
      cutBack(bytes.position(), e);
      throw e;
    }
    kept(rows.length());
    writtenSeq = appendedSeq;
    rows.clear();
  }

  /** After a write that failed in the middle: keeps the whole lines and drops the torn one. */
  private void cutBack(int taken, IOException cause) {
    byte[] bytes = rows.bytes();
    int whole = taken;
    while (whole > 0 && bytes[whole - 1] != '\n') {
      whole--;
    }
    try {
      file.truncate(writtenBytes + whole);
    } catch (IOException e) {
      cause.addSuppressed(e);
    }
    for (int i = 0; i < whole; i++) {
      boolean lineStart = i == 0 || bytes[i - 1] == '\n';
      if (lineStart && bytes[i] >= '0' && bytes[i] <= '9') {
        writtenSeq++;
      }
    }
    kept(whole);
    appendedSeq = writtenSeq;
    rows.clear();
  }

  private void kept(int count) {
    digest.update(rows.bytes(), 0, count);
    writtenBytes += count;
  }

  /** Writes what is pending and a check line over every byte before it. */
  public void check() throws IOException {
    write();
    rows.line("# check seq=" + writtenSeq + " sha256=" + Digests.hexSoFar(digest));
    write();
  }

  /** Makes everything written so far survive a power cut. Any thread. */
  public void force() throws IOException {
    file.force();
  }

  /**
   * Writes what is pending and the last line, and forces the file.
   *
   * @param reason why the record ends
   * @param ended when, in UTC
   * @param lost readings that are known to have been lost
   * @return the last line's content and the digest of the whole file
   */
  public Closing finish(CloseReason reason, Instant ended, long lost) throws IOException {
    Closing closing = finishUnforced(reason, ended, lost);
    force();
    return closing;
  }

  /**
   * As {@link #finish}, without asking the disk for anything: for the record of a disk that has
   * already failed to confirm.
   */
  public Closing finishUnforced(CloseReason reason, Instant ended, long lost) throws IOException {
    write();
    String sealed = Digests.hexSoFar(digest);
    rows.line(
        "# closed seq="
            + writtenSeq
            + " ended="
            + ended
            + " reason="
            + reason.word()
            + " rows="
            + writtenSeq
            + " lost="
            + lost
            + " sha256="
            + sealed);
    write();
    closing =
        new Closing(writtenSeq, ended, reason, writtenSeq, lost, sealed, Digests.hexSoFar(digest));
    return closing;
  }

  /** The last line, once it is written; nothing may be appended then. */
  public Optional<Closing> closing() {
    return Optional.ofNullable(closing);
  }

  @Override
  public void close() throws IOException {
    file.close();
  }
}
