package io.github.platenwire.device;

import io.github.platenwire.port.LineSettings;
import io.github.platenwire.port.LineSettings.Flow;
import io.github.platenwire.port.LineSettings.Parity;
import io.github.platenwire.toml.TomlException;
import io.github.platenwire.toml.TomlSection;
import java.util.Locale;
import java.util.Optional;

/** Reads the table {@code [serial]} of a definition. Stateless. */
final class SerialTable {
  private SerialTable() {}

  /** The settings of the table; what is absent is as in {@link LineSettings#COMMON}. */
  static LineSettings parse(TomlSection root) throws TomlException {
    Optional<TomlSection> found = root.optionalSection("serial");
    if (found.isEmpty()) {
      return LineSettings.COMMON;
    }
    TomlSection serial = found.get();
    serial.allow("baud", "data-bits", "parity", "stop-bits", "flow");
    LineSettings common = LineSettings.COMMON;
    int baud = whole(serial, "baud", common.baud());
    int dataBits = whole(serial, "data-bits", common.dataBits());
    int stopBits = whole(serial, "stop-bits", common.stopBits());
    // Each number is tried alone first, so that the error stands at its own line.
    check(serial, "baud", baud, common.dataBits(), common.stopBits());
    check(serial, "data-bits", common.baud(), dataBits, common.stopBits());
    check(serial, "stop-bits", common.baud(), common.dataBits(), stopBits);
    String parity = serial.choiceOr("parity", "none", "none", "even", "odd");
    String flow = serial.choiceOr("flow", "none", "none", "hardware", "software");
    return new LineSettings(
        baud,
        dataBits,
        Parity.valueOf(parity.toUpperCase(Locale.ROOT)),
        stopBits,
        Flow.valueOf(flow.toUpperCase(Locale.ROOT)));
  }

  private static int whole(TomlSection serial, String key, int absent) throws TomlException {
    long value = serial.optionalWhole(key).orElse(absent);
    if (value != (int) value) {
      throw serial.error(key, value + " is not possible for " + key);
    }
    return (int) value;
  }

  private static void check(TomlSection serial, String key, int baud, int dataBits, int stopBits)
      throws TomlException {
    try {
      new LineSettings(baud, dataBits, Parity.NONE, stopBits, Flow.NONE);
    } catch (IllegalArgumentException e) {
      throw serial.error(key, String.valueOf(e.getMessage()));
    }
  }
}
