package io.github.platenwire.emulate;

import io.github.platenwire.port.Chunk;
import io.github.platenwire.port.InMemoryPort;
import java.io.IOException;
import java.io.InterruptedIOException;
import java.util.Arrays;

/**
 * Hands an emulated device's bytes to a port in memory, each with the time at which the device
 * sends it.
 */
public final class InMemoryOutlet implements ByteOutlet {
  private final InMemoryPort port;

  /** Sends to a port. */
  public InMemoryOutlet(InMemoryPort port) {
    this.port = port;
  }

  @Override
  public void send(byte[] bytes, int from, int length, long emulatedNanos) throws IOException {
    try {
      if (!port.offer(new Chunk(Arrays.copyOfRange(bytes, from, from + length), emulatedNanos))) {
        throw new IOException(port.address() + " was closed");
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new InterruptedIOException("interrupted while sending to " + port.address());
    }
  }

  @Override
  public void close() {
    port.end();
  }
}
