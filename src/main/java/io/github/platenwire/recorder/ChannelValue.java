package io.github.platenwire.recorder;

import io.github.platenwire.quantity.Unit;
import io.github.platenwire.reading.Quality;
import io.github.platenwire.record.RawHeader.HeaderChannel;

/**
 * From a device's value to a channel's: unit, calibration, range. The same doubles each time.
 * Stateless.
 */
final class ChannelValue {
  private ChannelValue() {}

  /** The value in the channel's unit, calibrated. */
  static double of(double value, Unit unit, HeaderChannel channel) {
    double converted = unit.convert(value, channel.facts().unit());
    return channel.scale() == 1 ? converted : converted * channel.scale();
  }

  /** A good reading beyond the channel's range is {@link Quality#OVER}; other marks stay. */
  static Quality judge(double value, Quality quality, HeaderChannel channel) {
    boolean within = value >= channel.facts().rangeLow() && value <= channel.facts().rangeHigh();
    return quality == Quality.OK && !within ? Quality.OVER : quality;
  }
}
