package io.github.platenwire.commission;

import io.github.platenwire.device.DeviceDefinition;
import io.github.platenwire.device.FrameSink;
import io.github.platenwire.quantity.Unit;
import io.github.platenwire.reading.Quality;
import java.util.ArrayList;
import java.util.List;

/** Counts what a running stream brings, channel by channel. Not thread-safe. */
public final class StreamTally implements FrameSink {
  private final List<ChannelTotals> totals = new ArrayList<>();
  private final List<Rhythm> rhythms = new ArrayList<>();
  private long frames;
  private long garbled;

  /** For the channels of a definition. */
  public StreamTally(DeviceDefinition definition) {
    definition
        .valueFields()
        .forEach(
            field -> {
              totals.add(new ChannelTotals(field));
              rhythms.add(new Rhythm());
            });
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
    frames += field == 0 ? 1 : 0;
    totals.get(field).add(value, unit, quality);
    rhythms.get(field).at(arrivalNanos);
  }

  @Override
  public void garbled(byte[] frame, int from, int length, long arrivalNanos) {
    garbled++;
  }

  /** The link broke: what lies between is no interval of the device's. */
  public void pause() {
    rhythms.forEach(Rhythm::pause);
  }

  /** How many frames were decoded. */
  public long frames() {
    return frames;
  }

  /** How many stretches were garbled. */
  public long garbled() {
    return garbled;
  }

  /** The share of frames that were garbled, 0 to 1; NaN before the first frame. */
  public double badShare() {
    return (double) garbled / (frames + garbled);
  }

  /** What each channel said so far, in the definition's order. */
  public List<ChannelRange> channels() {
    return totals.stream().map(ChannelTotals::range).toList();
  }

  /** How evenly a channel's readings arrived. */
  public Rhythm rhythm(int channel) {
    return rhythms.get(channel);
  }
}
