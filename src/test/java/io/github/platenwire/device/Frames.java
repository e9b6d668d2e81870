package io.github.platenwire.device;

import io.github.platenwire.quantity.Unit;
import io.github.platenwire.reading.Quality;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/** Keeps what a decoder finds as lines of text, so that two runs can be compared. */
final class Frames implements FrameSink {
  final List<String> found = new ArrayList<>();
  final List<Double> values = new ArrayList<>();
  final List<Quality> qualities = new ArrayList<>();
  final List<Long> arrivals = new ArrayList<>();
  int longestGarbled;

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
    found.add(
        text(frame, from, length)
            + " -> "
            + field
            + ": "
            + value
            + " "
            + unit.symbol()
            + " "
            + quality.word());
    values.add(value);
    qualities.add(quality);
    arrivals.add(arrivalNanos);
  }

  @Override
  public void garbled(byte[] frame, int from, int length, long arrivalNanos) {
    found.add(text(frame, from, length) + " -> garbled");
    longestGarbled = Math.max(longestGarbled, length);
    arrivals.add(arrivalNanos);
  }

  private static String text(byte[] frame, int from, int length) {
    return new String(frame, from, length, StandardCharsets.ISO_8859_1);
  }

  static byte[] bytes(String latin1) {
    return latin1.getBytes(StandardCharsets.ISO_8859_1);
  }

  /** What a fresh decoder finds in a stream. */
  static Frames of(DeviceDefinition definition, String latin1) {
    Frames frames = new Frames();
    feed(definition.newDecoder(), latin1, frames);
    return frames;
  }

  /** What a decoder finds that has already seen the end of a line. */
  static List<String> afterStart(DeviceDefinition definition, String latin1) {
    FrameDecoder decoder = definition.newDecoder();
    Frames before = new Frames();
    feed(decoder, "?" + latin1.substring(latin1.length() - terminatorLength(latin1)), before);
    Frames frames = new Frames();
    feed(decoder, latin1, frames);
    return frames.found;
  }

  private static int terminatorLength(String latin1) {
    return latin1.endsWith("\r\n") ? 2 : 1;
  }

  static void feed(FrameDecoder decoder, String latin1, FrameSink sink) {
    byte[] bytes = bytes(latin1);
    decoder.accept(bytes, 0, bytes.length, 0, sink);
  }
}
