package io.github.platenwire.recorder;

import io.github.platenwire.device.Decoding;
import io.github.platenwire.device.DeviceDefinition;
import io.github.platenwire.device.FrameDecoder;
import io.github.platenwire.device.FrameReader;
import io.github.platenwire.device.FrameSink;
import io.github.platenwire.port.Chunk;
import io.github.platenwire.quantity.Unit;
import io.github.platenwire.reading.EscapedBytes;
import io.github.platenwire.reading.Quality;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One port with the device on it, and the channels that its frames feed: decodes, converts to the
 * channel's unit, applies the calibration, judges the range. Not thread-safe; confined to the
 * recorder thread.
 */
final class Source {
  private final String port;
  private final DeviceDefinition device;
  private final List<Integer> channels = new ArrayList<>();
  private final @Nullable ChannelSetup[] setupByField;
  private final int[] channelByField;
  private FrameDecoder decoder;
  private @Nullable FrameReader frames;
  private String identity = "";

  Source(String port, DeviceDefinition device) {
    this.port = port;
    this.device = device;
    int fields = device.valueFields().size();
    this.setupByField = new ChannelSetup[fields];
    this.channelByField = new int[fields];
    this.decoder = device.newDecoder();
  }

  String port() {
    return port;
  }

  DeviceDefinition device() {
    return device;
  }

  /** Indices of the channels that it feeds, in rig order. */
  List<Integer> channels() {
    return channels;
  }

  /**
   * Feeds one more channel.
   *
   * @throws IllegalArgumentException if another channel already takes the same field
   */
  void feed(int channel, ChannelSetup setup) {
    int field = setup.header().field();
    if (setupByField[field] != null) {
      throw new IllegalArgumentException(
          "two channels take the same field, port="
              + port
              + " field="
              + device.valueFields().get(field).name());
    }
    setupByField[field] = setup;
    channelByField[field] = channel;
    channels.add(channel);
  }

  /** Decodes from here on as from a stream just joined. */
  void join() {
    decoder = device.newDecoder();
  }

  void decode(Chunk chunk, ReadingSink sink) {
    Decoding.accept(decoder, chunk, new Feeder(sink));
  }

  /**
   * Takes what the device said when it was asked who it is.
   *
   * @return whether it differs from what it said before
   */
  boolean identify(Chunk chunk) {
    String said = EscapedBytes.encode(chunk.bytes()).replaceAll("(\\\\x0[AD])+$", "").strip();
    boolean news = !said.equals(identity);
    identity = said;
    return news;
  }

  /** What the device said of itself last; empty if nothing yet. */
  String identity() {
    return identity;
  }

  void cut(ReadingSink sink) {
    decoder.cut(new Feeder(sink));
  }

  /** Decodes one frame of a record again. */
  void decodeFrame(byte[] frame, ReadingSink sink) {
    if (frames == null) {
      frames = device.newFrameReader();
    }
    frames.read(frame, 0, new Feeder(sink));
  }

  /** Takes a channel's readings, converted and judged. */
  interface ReadingSink {
    /** One reading; the frame must not be kept. */
    void reading(
        int channel,
        byte[] frame,
        int from,
        int length,
        long arrivalNanos,
        double value,
        Quality quality);
  }

  /** Goes between the decoder's fields and the rig's channels. */
  private final class Feeder implements FrameSink {
    private final ReadingSink sink;

    Feeder(ReadingSink sink) {
      this.sink = sink;
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
      ChannelSetup setup = setupByField[field];
      if (setup == null) {
        return;
      }
      double shown = ChannelValue.shown(value, unit, setup.header());
      double corrected = setup.header().correction().apply(shown);
      sink.reading(
          channelByField[field],
          frame,
          from,
          length,
          arrivalNanos,
          corrected,
          ChannelValue.judge(shown, corrected, quality, setup.header()));
    }

    @Override
    public void garbled(byte[] frame, int from, int length, long arrivalNanos) {
      sink.reading(channels.get(0), frame, from, length, arrivalNanos, Double.NaN, Quality.GARBLED);
    }
  }
}
