package io.github.platenwire.device;

/**
 * Decodes whole frames one after the other, as a raw file keeps them. Each is decoded as if it were
 * the only one. Not thread-safe.
 */
@FunctionalInterface
public interface FrameReader {
  /**
   * As {@link DeviceDefinition#decodeFrame}.
   *
   * @param frame the frame as it was handed to a {@link FrameSink}
   * @param arrivalNanos handed on to the sink
   * @param sink told of the frame's values, or that it is garbled
   */
  void read(byte[] frame, long arrivalNanos, FrameSink sink);
}
