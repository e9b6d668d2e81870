package io.github.platenwire.device;

import io.github.platenwire.quantity.Unit;
import io.github.platenwire.reading.Quality;

/**
 * Takes what a decoder finds, in order. Called by the thread that feeds the decoder; must not keep
 * the array.
 */
public interface FrameSink {
  /**
   * One value of one frame.
   *
   * @param frame holds the frame as received, without its terminator
   * @param from index of the frame's first byte
   * @param length the frame's length in bytes
   * @param arrivalNanos monotonic arrival time of the frame's last byte
   * @param field index of the value's field among {@link DeviceDefinition#valueFields}
   * @param value the value in {@code unit}; NaN where nothing could be decoded
   * @param unit the unit the device sent, or the definition states
   * @param quality never {@link Quality#LATE}
   */
  void value(
      byte[] frame,
      int from,
      int length,
      long arrivalNanos,
      int field,
      double value,
      Unit unit,
      Quality quality);

  /**
   * A frame out of which nothing could be decoded. Said once a frame, whatever its number of
   * fields.
   *
   * @param frame holds the bytes as received
   * @param from index of the first byte
   * @param length how many, at least 1, at most the definition's longest frame
   * @param arrivalNanos monotonic arrival time of the last byte
   */
  void garbled(byte[] frame, int from, int length, long arrivalNanos);
}
