package io.github.platenwire.emulate;

import io.github.platenwire.port.Chunk;
import io.github.platenwire.port.Port;
import java.io.IOException;
import java.util.Arrays;

/** Sends over an open port, such as a real serial line. Confined to the thread that sends. */
public final class PortOutlet implements TwoWayOutlet {
  private final Port port;

  /**
   * Takes over a port.
   *
   * @param port open; closed together with this outlet
   */
  public PortOutlet(Port port) {
    this.port = port;
  }

  @Override
  public void send(byte[] bytes, int from, int length, long emulatedNanos) throws IOException {
    port.write(Arrays.copyOfRange(bytes, from, from + length));
  }

  @Override
  public byte[] receive() throws IOException {
    return port.read().map(Chunk::bytes).orElseGet(() -> new byte[0]);
  }

  @Override
  public void close() {
    port.close();
  }
}
