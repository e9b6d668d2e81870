package io.github.platenwire.recorder;

import io.github.platenwire.quantity.Unit;
import io.github.platenwire.reading.Quality;
import io.github.platenwire.record.RawHeader.HeaderChannel;

/**
 * From a device's value to a channel's: unit, calibration, range. The same doubles each time.
 * Stateless.
 */
public final class ChannelValue {
  private ChannelValue() {}

  /** What the device shows, in the channel's unit, not yet corrected. */
  public static double shown(double value, Unit unit, HeaderChannel channel) {
    return unit.convert(value, channel.facts().unit());
  }

  /**
   * A good reading beyond the channel's range, or where its correction was not calibrated, is
   * {@link Quality#OVER}; other marks stay.
   *
   * @param shown by the device, in the channel's unit
   * @param value the same, corrected
   */
  static Quality judge(double shown, double value, Quality quality, HeaderChannel channel) {
    boolean within =
        value >= channel.facts().rangeLow()
            && value <= channel.facts().rangeHigh()
            && channel.correction().covers(shown);
    return quality == Quality.OK && !within ? Quality.OVER : quality;
  }
}
