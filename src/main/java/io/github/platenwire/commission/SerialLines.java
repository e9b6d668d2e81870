package io.github.platenwire.commission;

import java.util.ArrayList;
import java.util.List;

/** Writes the table {@code [serial]}. Stateless. */
final class SerialLines {
  private SerialLines() {}

  /** What is known of the line; a log does not tell at what speed it was read. */
  static List<String> of(Hints hints) {
    List<String> out = new ArrayList<>();
    out.add("");
    if (hints.serial().isEmpty()) {
      out.add("# As the device is set; a log does not tell. 'platenwire probe PORT' tries speeds.");
      out.add("[serial]");
      out.add("baud = 9600");
    } else {
      out.add("[serial]");
      out.addAll(hints.serial());
    }
    return out;
  }
}
