package io.github.platenwire.commission;

import io.github.platenwire.device.DeviceDefinition;
import io.github.platenwire.device.Fault;
import io.github.platenwire.device.FrameDecoder;
import io.github.platenwire.device.FrameSink;
import io.github.platenwire.port.Chunk;
import io.github.platenwire.quantity.Unit;
import io.github.platenwire.reading.EscapedBytes;
import io.github.platenwire.reading.Quality;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Decodes a sample byte by byte, so that it is known where in it each frame stands. Used once; not
 * thread-safe.
 */
public final class SampleDecoder implements FrameSink {
  private final DeviceDefinition definition;
  private final byte[] bytes;
  private final List<ChannelTotals> channels = new ArrayList<>();
  private final List<Undecoded> undecoded = new ArrayList<>();
  private final List<String> readings = new ArrayList<>();
  private int fed;
  private int cursor;
  private boolean ended;
  private long explained;
  private long frames;
  private long undecodedFrames;
  private int shortestFrame = Integer.MAX_VALUE;
  private int unfinished;

  private SampleDecoder(DeviceDefinition definition, byte[] bytes) {
    this.definition = definition;
    this.bytes = bytes;
    definition.valueFields().forEach(field -> channels.add(new ChannelTotals(field)));
  }

  /** What a definition makes of a sample. */
  public static SampleReport decode(DeviceDefinition definition, Sample sample) {
    return new SampleDecoder(definition, sample.bytes()).run(sample);
  }

  private SampleReport run(Sample sample) {
    FrameDecoder decoder = definition.newDecoder();
    for (Chunk chunk : sample.chunks()) {
      for (int i = 0; i < chunk.bytes().length; i++) {
        fed++;
        decoder.accept(chunk.bytes(), i, 1, chunk.arrivalNanos(), this);
      }
    }
    ended = true;
    if (frames > 0 && onlyLineEnds(cursor)) {
      explained += bytes.length - cursor;
    }
    decoder.cut(this);
    return report();
  }

  /** Line feeds after a last CR belong to the line before. */
  private boolean onlyLineEnds(int from) {
    for (int i = from; i < bytes.length; i++) {
      if (bytes[i] != '\r' && bytes[i] != '\n') {
        return false;
      }
    }
    return true;
  }

  private SampleReport report() {
    int torn = tornHead();
    return new SampleReport(
        bytes.length,
        explained,
        frames,
        undecodedFrames,
        channels.stream().map(ChannelTotals::range).toList(),
        undecoded,
        torn,
        unfinished,
        readings);
  }

  /** A first frame that is shorter than every whole one was joined in its middle. */
  private int tornHead() {
    if (undecoded.isEmpty() || frames == 0) {
      return 0;
    }
    Undecoded first = undecoded.get(0);
    if (first.offset() > 0 || first.bytes().length >= shortestFrame) {
      return 0;
    }
    undecoded.remove(0);
    undecodedFrames--;
    return first.bytes().length;
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
    if (field == 0) {
      int at = place(frame, from, length);
      explained += fed - cursor;
      cursor = Math.max(fed, at + length);
      frames++;
      shortestFrame = Math.min(shortestFrame, length);
    }
    channels.get(field).add(value, unit, quality);
    if (readings.size() < SampleReport.MOST_READINGS) {
      readings.add(ReadingText.words(definition.valueFields().get(field), value, unit, quality));
    }
  }

  @Override
  public void garbled(byte[] frame, int from, int length, long arrivalNanos) {
    int at = place(frame, from, length);
    byte[] received = Arrays.copyOfRange(frame, from, from + length);
    cursor = at + length;
    if (ended && cursor == bytes.length && frames > 0) {
      unfinished += length;
      return;
    }
    undecodedFrames++;
    if (undecoded.size() < SampleReport.MOST_KEPT) {
      undecoded.add(new Undecoded(at, received, fault(received)));
    }
  }

  private Fault fault(byte[] received) {
    return ended ? new Fault(received.length, "the sample ends here") : definition.fault(received);
  }

  /**
   * Where a frame stands that was just told: at the cursor where frames follow each other without a
   * gap, else at the last place that fits, for only a terminator can stand behind it.
   */
  private int place(byte[] frame, int from, int length) {
    if (isAt(frame, from, length, cursor)) {
      return cursor;
    }
    for (int at = fed - length; at > cursor; at--) {
      if (isAt(frame, from, length, at)) {
        return at;
      }
    }
    return Math.min(cursor, bytes.length - length);
  }

  private boolean isAt(byte[] frame, int from, int length, int at) {
    return at + length <= fed && Arrays.equals(frame, from, from + length, bytes, at, at + length);
  }

  /** Some bytes as a person reads them, as long as they fit. */
  public static String shown(byte[] bytes, int most) {
    String text = EscapedBytes.encode(bytes);
    return text.length() <= most ? text : text.substring(0, most - 1) + "…";
  }
}
