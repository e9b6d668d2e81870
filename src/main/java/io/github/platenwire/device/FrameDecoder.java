package io.github.platenwire.device;

/**
 * Makes frames out of a stream of bytes, whatever way it is split. Decodes, marks or passes over;
 * never throws for what a device sent, never grows. Not thread-safe.
 */
public interface FrameDecoder {
  /**
   * Takes the next bytes.
   *
   * @param bytes holds them
   * @param from index of the first
   * @param length how many
   * @param arrivalNanos monotonic time at which they came
   * @param sink told of each frame that they end
   */
  void accept(byte[] bytes, int from, int length, long arrivalNanos, FrameSink sink);

  /**
   * The stream was cut: whatever stood half-read is reported as garbled, and the next frame is
   * taken as joined in its middle.
   *
   * @param sink told of the torn frame, if there was one
   */
  void cut(FrameSink sink);
}
