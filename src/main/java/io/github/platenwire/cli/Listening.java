package io.github.platenwire.cli;

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
import io.github.platenwire.terminal.Glyphs;
import io.github.platenwire.terminal.TerminalOut;
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
  private static final int BYTES_A_LINE = 16;

  private final Optional<DeviceDefinition> definition;
  private final @Nullable FrameDecoder decoder;
  private final TerminalOut out;
  private final Glyphs glyphs;
  private final @Nullable ByteLogWriter log;
  private final long originNanos;
  private final CountDownLatch end = new CountDownLatch(1);
  private final Thread ending = new Thread(this::close, "platenwire-end");
  private long bytes;
  private long readings;
  private long garbled;
  private long firstNanos;
  private long lastNanos;
  private volatile boolean begun;
  private boolean summedUp;

  Listening(
      Optional<DeviceDefinition> definition,
      TerminalOut out,
      Glyphs glyphs,
      MonotonicClock clock,
      Optional<Path> save)
      throws IOException {
    this.definition = definition;
    this.decoder = definition.map(DeviceDefinition::newDecoder).orElse(null);
    this.out = out;
    this.glyphs = glyphs;
    this.originNanos = clock.nanos();
    this.log = save.isPresent() ? ByteLogWriter.create(save.get(), originNanos) : null;
    Runtime.getRuntime().addShutdownHook(ending);
  }

  /** The link is open: waits for the end of the time, or for Ctrl-C. */
  void await(long nanos) throws InterruptedException {
    begun = true;
    boolean ended = end.await(nanos, TimeUnit.NANOSECONDS);
    LOG.debug("listening ended {}", ended ? "by the person" : "by its time");
  }

  @Override
  public synchronized void bytes(Chunk chunk) {
    bytes += chunk.bytes().length;
    if (bytes == chunk.bytes().length) {
      firstNanos = chunk.arrivalNanos();
    }
    lastNanos = chunk.arrivalNanos();
    keep(chunk);
    if (decoder == null) {
      hex(chunk);
    } else {
      decoder.accept(chunk.bytes(), 0, chunk.bytes().length, chunk.arrivalNanos(), this);
    }
  }

  private void keep(Chunk chunk) {
    if (log == null) {
      return;
    }
    try {
      log.append(chunk);
    } catch (IOException e) {
      say("the byte log could not be written: " + e.getMessage());
    }
  }

  private void hex(Chunk chunk) {
    for (int from = 0; from < chunk.bytes().length; from += BYTES_A_LINE) {
      int to = Math.min(from + BYTES_A_LINE, chunk.bytes().length);
      byte[] part = Arrays.copyOfRange(chunk.bytes(), from, to);
      StringBuilder hex = new StringBuilder();
      for (byte b : part) {
        hex.append(String.format(Locale.ROOT, "%02X ", b));
      }
      say(
          String.format(
              Locale.ROOT,
              "%10.3f s  %-48s %s",
              seconds(chunk.arrivalNanos()),
              hex,
              EscapedBytes.encode(part)));
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
    readings++;
    String name = definition.orElseThrow().valueFields().get(field).name();
    say(
        String.format(
            Locale.ROOT,
            "%10.3f s  %-28s %s = %s %s  %s",
            seconds(arrivalNanos),
            EscapedBytes.encode(Arrays.copyOfRange(frame, from, from + length)),
            name,
            value,
            unit.symbol(),
            quality.word()));
  }

  @Override
  public void garbled(byte[] frame, int from, int length, long arrivalNanos) {
    garbled++;
    say(
        String.format(
            Locale.ROOT,
            "%10.3f s  %-28s %s",
            seconds(arrivalNanos),
            EscapedBytes.encode(Arrays.copyOfRange(frame, from, from + length)),
            Quality.GARBLED.word()));
  }

  @Override
  public synchronized void lost(long atNanos, String why) {
    if (decoder != null) {
      decoder.cut(this);
    }
    say(String.format(Locale.ROOT, "%10.3f s  link lost: %s", seconds(atNanos), why));
  }

  @Override
  public synchronized void back(long atNanos) {
    say(String.format(Locale.ROOT, "%10.3f s  link back", seconds(atNanos)));
  }

  private double seconds(long nanos) {
    return (nanos - originNanos) / 1e9;
  }

  private void say(String line) {
    out.lines(List.of(glyphs.text(line)));
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
      sumUp();
    }
    closeLog();
  }

  private void sumUp() {
    double span = (lastNanos - firstNanos) / 1e9;
    String rate =
        readings > 1 && span > 0
            ? String.format(Locale.ROOT, ", %.1f readings a second", (readings - 1) / span)
            : "";
    say(bytes + " bytes, " + readings + " readings" + rate + ", " + garbled + " garbled");
  }

  private void closeLog() {
    if (log != null) {
      try {
        log.close();
      } catch (IOException e) {
        say("the byte log could not be closed: " + e.getMessage());
      }
    }
  }
}
