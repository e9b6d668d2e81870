package io.github.platenwire.port;

import java.io.IOException;
import java.util.Optional;

/**
 * One open source of bytes. Confined to the thread that reads it; only {@link #close} may be called
 * from another thread, and makes a waiting {@link #read} return or throw soon.
 */
public interface Port extends AutoCloseable {
  /** The address it was opened by, as the person wrote it. */
  String address();

  /**
   * Waits for bytes, at most about 100 ms.
   *
   * @return what came, or empty when nothing came in that time
   * @throws LinkLostException if the link is gone; the port must then be closed and opened anew
   * @throws IOException for any other failure, to be treated alike
   */
  Optional<Chunk> read() throws IOException;

  /**
   * Whether bytes have come that {@link #read} would hand over at once. A port that cannot tell
   * says no.
   *
   * @throws IOException as {@link #read}
   */
  default boolean hasBytes() throws IOException {
    return false;
  }

  /**
   * Sends bytes to the device.
   *
   * @throws IOException if not all of them could be handed over
   */
  void write(byte[] bytes) throws IOException;

  /** Gives the port back. Never throws, may be called twice. */
  @Override
  void close();
}
