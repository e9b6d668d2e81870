package io.github.platenwire.emulate;

import java.io.IOException;

/** Where an emulated device's bytes go. Confined to the thread that sends. */
public interface ByteOutlet extends AutoCloseable {
  /**
   * Hands bytes over; may wait until there is room for them.
   *
   * @param bytes holds them; not kept
   * @param from index of the first
   * @param length how many
   * @param emulatedNanos when the device sends them, on the clock that paces it
   * @throws IOException if they can no longer be handed over
   */
  void send(byte[] bytes, int from, int length, long emulatedNanos) throws IOException;

  /**
   * Ends the sending, after what was sent has gone out.
   *
   * @throws IOException if that could not be made sure
   */
  @Override
  void close() throws IOException;
}
