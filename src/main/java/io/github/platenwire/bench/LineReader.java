package io.github.platenwire.bench;

import io.github.platenwire.port.Port;
import java.io.IOException;
import java.nio.file.Path;

/** Reads a number of lines from a port into a file. */
interface LineReader {
  /**
   * Reads them.
   *
   * @param port where they come from
   * @param file takes them; must not exist
   * @param lines how many
   * @throws IOException if reading or writing fails
   */
  void read(Port port, Path file, long lines) throws IOException;
}
