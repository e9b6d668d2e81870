package io.github.platenwire.recorder;

import io.github.platenwire.port.LineSettings;
import io.github.platenwire.port.PortOpener;

/** Knows how to open the ports that a rig file names. */
@FunctionalInterface
public interface OpenerFactory {
  /**
   * An opener for a port.
   *
   * @param port as the rig file names it
   * @param settings how its line is set
   * @throws IllegalArgumentException if the text names no port
   */
  PortOpener opener(String port, LineSettings settings);
}
