package io.github.platenwire.cli;

import io.github.platenwire.commission.ReadingText;
import io.github.platenwire.commission.Rhythm;
import io.github.platenwire.commission.StreamTally;
import io.github.platenwire.device.Decoding;
import io.github.platenwire.device.DeviceDefinition;
import io.github.platenwire.device.FrameDecoder;
import io.github.platenwire.device.FrameSink;
import io.github.platenwire.port.ByteLogWriter;
import io.github.platenwire.port.Chunk;
import io.github.platenwire.port.LinkListener;
import io.github.platenwire.quantity.Unit;
import io.github.platenwire.reading.EscapedBytes;
import io.github.platenwire.reading.MonotonicClock;
import io.github.platenwire.reading.Quality;
import io.github.platenwire.terminal.Style;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Prints what comes, line by line, and sums it up at the end. Called by the link's thread; {@link
 * #await} and {@link #close} by the command's.
 */
final class Listening implements LinkListener, FrameSink, AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(Listening.class);

  private final Optional<DeviceDefinition> definition;
  private final @Nullable FrameDecoder decoder;
  private final @Nullable StreamTally tally;
  private final Face face;
  private final ListenShow show;
  private final boolean endsWithLink;
  private final @Nullable ByteLogWriter log;
  private final long originNanos;
  private final CountDownLatch end = new CountDownLatch(1);
  private final Thread ending = new Thread(this::close, "platenwire-end");
  private final Rhythm chunks = new Rhythm();
  private long bytes;
  private long losses;
  private long firstNanos;
  private long lastNanos;
  private volatile boolean begun;
  private boolean summedUp;

  /**
   * Prepares.
   *
   * @param endsWithLink whether a lost link is the end, as that of a byte log is
   * @param save the new byte log, if one is wanted
   * @throws IOException if the byte log cannot be begun
   */
  Listening(
      Optional<DeviceDefinition> definition,
      Face face,
      ListenShow show,
      boolean endsWithLink,
      MonotonicClock clock,
      Optional<Path> save)
      throws IOException {
    this.definition = definition;
    this.decoder = definition.map(DeviceDefinition::newDecoder).orElse(null);
    this.tally = definition.map(StreamTally::new).orElse(null);
    this.face = face;
    this.show = show;
    this.endsWithLink = endsWithLink;
    this.originNanos = clock.nanos();
    this.log = save.isPresent() ? ByteLogWriter.create(save.get(), originNanos) : null;
    Runtime.getRuntime().addShutdownHook(ending);
  }

  /** The link is open: waits for the end of the time, or for Ctrl-C. */
  void await(long nanos) throws InterruptedException {
    begun = true;
    boolean ended = end.await(nanos, TimeUnit.NANOSECONDS);
    LOG.debug("listening ended {}", ended ? "by the person or the log's end" : "by its time");
  }

  @Override
  public synchronized void bytes(Chunk chunk) {
    if (bytes == 0) {
      firstNanos = chunk.arrivalNanos();
    }
    bytes += chunk.bytes().length;
    lastNanos = chunk.arrivalNanos();
    chunks.at(lastNanos);
    keep(chunk);
    if (show == ListenShow.BYTES) {
      HexDump.lines(chunk.bytes(), face.columns() - 13)
          .forEach(line -> say(Style.PLAIN, time(chunk.arrivalNanos()) + line));
    }
    if (chunk.part() == Chunk.Part.IDENTITY) {
      say(Style.PLAIN, time(lastNanos) + "identity: " + EscapedBytes.encode(chunk.bytes()));
    }
    if (decoder != null) {
      Decoding.accept(decoder, chunk, this);
    }
  }

  private void keep(Chunk chunk) {
    if (log == null) {
      return;
    }
    try {
      log.append(chunk);
    } catch (IOException e) {
      say(Style.BAD, "the byte log could not be written: " + e.getMessage());
    }
  }

  @Override
  public void value(
      byte[] frame,
      int from,
      int length,
      long arrivalNanos,
      int field,
      double value,
      Unit unit,
      Quality quality) {
    if (tally != null) {
      tally.value(frame, from, length, arrivalNanos, field, value, unit, quality);
    }
    String words =
        ReadingText.words(definition.orElseThrow().valueFields().get(field), value, unit, quality);
    Style style = quality == Quality.OK ? Style.PLAIN : Style.WARNING;
    frame(arrivalNanos, field == 0 ? text(frame, from, length) : "", words, style);
  }

  @Override
  public void garbled(byte[] frame, int from, int length, long arrivalNanos) {
    if (tally != null) {
      tally.garbled(frame, from, length, arrivalNanos);
    }
    frame(arrivalNanos, text(frame, from, length), Quality.GARBLED.word(), Style.BAD);
  }

  private static String text(byte[] frame, int from, int length) {
    return EscapedBytes.encode(Arrays.copyOfRange(frame, from, from + length));
  }

  /** A reading; where the bytes stand above it already, without its frame. */
  private void frame(long nanos, String frame, String words, Style style) {
    String shown = show == ListenShow.READINGS ? String.format(Locale.ROOT, "%-28s ", frame) : "→ ";
    say(style, time(nanos) + shown + words);
  }

  @Override
  public synchronized void lost(long atNanos, String why) {
    if (decoder != null) {
      decoder.cut(this);
    }
    chunks.pause();
    if (tally != null) {
      tally.pause();
    }
    if (endsWithLink) {
      end.countDown();
      return;
    }
    losses++;
    say(Style.BAD, time(atNanos) + "link lost: " + why);
  }

  @Override
  public synchronized void back(long atNanos) {
    say(Style.GOOD, time(atNanos) + "link back");
  }

  private String time(long nanos) {
    return String.format(Locale.ROOT, "%8.3f s  ", (nanos - originNanos) / 1e9);
  }

  private void say(Style style, String line) {
    if (show != ListenShow.NOTHING) {
      face.lines(List.of(face.look().palette().paint(style, face.look().glyphs().text(line))));
    }
  }

  /** Sums up, once. */
  @Override
  public synchronized void close() {
    if (summedUp) {
      return;
    }
    summedUp = true;
    end.countDown();
    if (begun) {
      double span = bytes == 0 ? 0 : (lastNanos - firstNanos) / 1e9;
      ListenSummary summary =
          new ListenSummary(bytes, span, losses, chunks, Optional.ofNullable(tally));
      face.lines(show == ListenShow.NOTHING ? List.of(summary.json()) : summary.lines(face));
    }
    closeLog();
  }

  private void closeLog() {
    if (log != null) {
      try {
        log.close();
      } catch (IOException e) {
        say(Style.BAD, "the byte log could not be closed: " + e.getMessage());
      }
    }
  }
}
