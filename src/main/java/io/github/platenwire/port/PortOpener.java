package io.github.platenwire.port;

import java.io.IOException;

/** Opens one port, again and again if its link is lost. Called by one thread at a time. */
@FunctionalInterface
public interface PortOpener {
  /**
   * Opens the port.
   *
   * @throws PortException with the remedy, if it cannot be opened
   * @throws IOException for any other failure
   */
  Port open() throws IOException;
}
