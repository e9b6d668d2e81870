package io.github.platenwire.recorder;

import io.github.platenwire.method.MethodRun;
import io.github.platenwire.method.MethodRun.Happening;
import io.github.platenwire.reading.MonotonicClock;
import io.github.platenwire.reading.Quality;
import io.github.platenwire.record.ChannelTally;
import io.github.platenwire.record.CloseReason;
import io.github.platenwire.record.Closing;
import io.github.platenwire.record.RawFileWriter;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.TimeUnit;

/**
 * Keeps the order in which a test's readings go: appended, written, only then analysed. What the
 * analysis finds becomes event rows of the same file.
 *
 * <p>Confined to the recorder thread. Any {@link IOException} is the end of the record.
 */
final class TestFile implements AutoCloseable {
  private static final long CHECK_EVERY_MICROS = 900_000;
  private static final long SLOW_NANOS = TimeUnit.MILLISECONDS.toNanos(250);
  private static final int WRITE_ABOVE_BYTES = 256 * 1024;

  private final RawFileWriter writer;
  private final MethodRun run;
  private final Forcer forcer;
  private final MonotonicClock stopwatch;
  private final List<ChannelTally> tallies;
  private final Batch batch = new Batch();
  private final boolean[] typed;
  private final long[] lastMicros;
  private long lastAnyMicros;
  private long lastEventMicros;
  private long lastCheckMicros;
  private String lastEvent = "";
  private long events;

  TestFile(
      RawFileWriter writer,
      MethodRun run,
      List<ChannelTally> tallies,
      boolean[] typed,
      MonotonicClock stopwatch) {
    this.writer = writer;
    this.run = run;
    this.tallies = tallies;
    this.typed = typed;
    this.stopwatch = stopwatch;
    this.lastMicros = new long[tallies.size()];
    this.forcer = Forcer.start(writer, stopwatch);
  }

  /** Appends one reading. Within a channel time never goes back. */
  void reading(
      int channel, byte[] frame, int from, int length, long micros, double value, Quality quality) {
    long at = Math.max(micros, lastMicros[channel]);
    lastMicros[channel] = at;
    lastAnyMicros = Math.max(lastAnyMicros, at);
    long seq = writer.reading(at, channel, frame, from, length, value, quality);
    String line = typed[channel] ? new String(frame, from, length, StandardCharsets.UTF_8) : null;
    batch.add(seq, at, channel, length, value, quality, line);
  }

  /** Appends the row that says a channel is late. */
  void late(int channel, long micros) {
    long at = Math.max(micros, lastMicros[channel]);
    lastMicros[channel] = at;
    lastAnyMicros = Math.max(lastAnyMicros, at);
    batch.add(writer.late(at, channel), at, channel, 0, Double.NaN, Quality.LATE);
  }

  /** The time that an event of a time will have. */
  long eventMicros(long micros) {
    return Math.max(micros, lastEventMicros);
  }

  /** Appends an event at a time, or at the last event's time if that is later. */
  void event(long micros, String text) {
    lastEventMicros = eventMicros(micros);
    lastAnyMicros = Math.max(lastAnyMicros, lastEventMicros);
    writer.event(lastEventMicros, text);
    lastEvent = text;
    events++;
  }

  /** Whether so much is waiting that it should be written before more is appended. */
  boolean isFull() {
    return writer.pendingBytes() >= WRITE_ABOVE_BYTES;
  }

  /** Writes what waits, then lets it be analysed, then writes what the analysis found. */
  void writeAndAnalyse() throws IOException {
    if (writer.pendingBytes() > 0) {
      writeWatched();
    }
    batch.release(writer.writtenSeq(), run, tallies);
    writeHappenings();
    if (lastAnyMicros - lastCheckMicros >= CHECK_EVERY_MICROS) {
      lastCheckMicros = lastAnyMicros;
      writer.check();
      forcer.written();
    }
    watchForces();
  }

  /** Lets the analysis know the time, and writes what it makes of it. */
  void time(long micros) throws IOException {
    run.time(micros);
    writeHappenings();
  }

  private void writeHappenings() throws IOException {
    List<Happening> happenings = run.takeHappenings();
    if (happenings.isEmpty()) {
      return;
    }
    boolean force = false;
    for (Happening happening : happenings) {
      event(lastAnyMicros, happening.text());
      force |= happening.force();
    }
    writeWatched();
    if (force) {
      force();
    }
  }

  private void force() throws ForceFailedException {
    try {
      writer.force();
    } catch (IOException e) {
      throw new ForceFailedException(e);
    }
  }

  private void writeWatched() throws IOException {
    long from = stopwatch.nanos();
    writer.write();
    long took = stopwatch.nanos() - from;
    forcer.written();
    if (took > SLOW_NANOS) {
      slow(took);
    }
  }

  private void watchForces() throws IOException {
    Optional<IOException> failure = forcer.failure();
    if (failure.isPresent()) {
      throw new ForceFailedException(failure.get());
    }
    long slowest = forcer.takeSlowestNanos();
    if (slowest > SLOW_NANOS) {
      slow(slowest);
    }
  }

  private void slow(long nanos) {
    event(lastAnyMicros, String.format(Locale.ROOT, "storage slow %.1f s", nanos / 1e9));
  }

  /** Ends the record: the event that says why, the last line, a last force. */
  Closing finish(CloseReason reason, String stopText, long micros, Instant ended, long lost)
      throws IOException {
    event(micros, stopText);
    writer.check();
    batch.release(writer.writtenSeq(), run, tallies);
    forcer.close();
    Closing closing = writer.finishUnforced(reason, ended, lost);
    force();
    return closing;
  }

  /**
   * After a failure: what little can still be written. The readings that did reach the file are
   * still analysed. Where the last line was written already and only its force failed, nothing may
   * follow it.
   */
  Closing finishAfterFailure(String stopText, Instant ended, long lost, boolean force)
      throws IOException {
    batch.release(writer.writtenSeq(), run, tallies);
    forcer.close();
    if (writer.closing().isPresent()) {
      return writer.closing().get();
    }
    event(lastAnyMicros, stopText);
    return force
        ? writer.finish(CloseReason.INTERRUPTED, ended, lost)
        : writer.finishUnforced(CloseReason.INTERRUPTED, ended, lost);
  }

  String lastEvent() {
    return lastEvent;
  }

  long events() {
    return events;
  }

  long lastAnyMicros() {
    return lastAnyMicros;
  }

  @Override
  public void close() throws IOException {
    forcer.close();
    writer.close();
  }

  /** The disk refused to make something durable; it must not be asked again. */
  static final class ForceFailedException extends IOException {
    private static final long serialVersionUID = 1L;

    ForceFailedException(IOException cause) {
      super("the disk did not confirm what was written: " + cause.getMessage(), cause);
    }
  }
}
