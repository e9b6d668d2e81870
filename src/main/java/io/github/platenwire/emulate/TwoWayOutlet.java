package io.github.platenwire.emulate;

import java.io.IOException;

/** An outlet whose other side also sends, such as a request. Confined to one thread. */
public interface TwoWayOutlet extends ByteOutlet {
  /**
   * Waits for bytes from the other side, at most about 0.1 s.
   *
   * @return what came; none if nothing did
   * @throws IOException if the outlet is closed or broken
   */
  byte[] receive() throws IOException;
}
