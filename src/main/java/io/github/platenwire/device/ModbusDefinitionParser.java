package io.github.platenwire.device;

import io.github.platenwire.toml.TomlException;
import io.github.platenwire.toml.TomlSection;
import java.util.List;
import java.util.Optional;

/** Reads definitions of devices that answer by Modbus RTU. Stateless. */
final class ModbusDefinitionParser {
  /* Modbus Application Protocol V1.1b3, section 6.3; Modbus over Serial Line V1.02, section 2.2. */
  private static final int MOST_REGISTERS = 125;
  private static final int MOST_UNIT = 247;
  private static final int MOST_ADDRESS = 0xFFFF;
  private static final int READ_HOLDING = 3;
  private static final int READ_INPUT = 4;

  private ModbusDefinitionParser() {}

  static DeviceDefinition parse(TomlSection root, String text) throws TomlException {
    root.allow("format", "name", "title", "kind", "serial", "modbus", "fields");
    String name = DefinitionParser.name(root);
    String title = DefinitionParser.title(root);
    TomlSection modbus = root.section("modbus");
    modbus.allow("unit", "registers", "first", "count", "interval-ms", "timeout-ms");
    ModbusFrame frame = frame(modbus);
    PackedFields fields =
        new PackedFields(root, "register", (section, bytes) -> firstByte(section, bytes, frame));
    Asking asking =
        new Asking(
            List.of(),
            Optional.empty(),
            frame.request(),
            AskTable.intervalNanos(modbus),
            AskTable.timeoutNanos(modbus),
            frame.longest(),
            frame::wholeLength,
            frame::wholeLength);
    return new PackedDefinition(
        name,
        title,
        SerialTable.parse(root),
        fields.values(),
        text,
        frame,
        fields.fields(),
        Optional.of(asking));
  }

  private static ModbusFrame frame(TomlSection modbus) throws TomlException {
    int unit = BinaryDefinitionParser.within(modbus, "unit", 1, MOST_UNIT);
    boolean holding = modbus.choice("registers", "holding", "input").equals("holding");
    int first = BinaryDefinitionParser.within(modbus, "first", 0, MOST_ADDRESS);
    int count = BinaryDefinitionParser.within(modbus, "count", 1, MOST_REGISTERS);
    if (first + count > MOST_ADDRESS + 1) {
      throw modbus.error("count", "registers beyond the address 65535 are asked for");
    }
    return new ModbusFrame(unit, holding ? READ_HOLDING : READ_INPUT, first, count);
  }

  private static int firstByte(TomlSection section, int bytes, ModbusFrame frame)
      throws TomlException {
    if (bytes % 2 != 0) {
      throw section.error("order", "a register has two bytes, so write two letters for each");
    }
    int last = frame.first() + frame.count() - 1;
    int register = BinaryDefinitionParser.within(section, "register", frame.first(), last);
    int end = register + bytes / 2 - 1;
    if (end > last) {
      throw section.error(
          "register",
          "registers "
              + register
              + " to "
              + end
              + " reach beyond "
              + last
              + ", the last one asked for");
    }
    return 2 * (register - frame.first());
  }
}
