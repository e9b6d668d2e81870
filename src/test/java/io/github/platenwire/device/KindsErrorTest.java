package io.github.platenwire.device;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import io.github.platenwire.toml.TomlException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Each row spoils one line of a good definition of a device that is asked, sends binary frames, or
 * speaks Modbus RTU, and names the place and words of the error; every key is met once.
 */
class KindsErrorTest {
  private static final String ASKED =
      """
      format = "platenwire-device 1"
      name = "box-1"
      title = "A box"
      kind = "asked-line"
      [ask]
      opening = ["*RST"]
      identity = "*IDN?"
      command = "READ?"
      terminator = "LF"
      interval-ms = 100
      timeout-ms = 500
      [line]
      layout = "{load}"
      terminator = "LF"
      [fields.load]
      kind = "number"
      unit = "N"
      """;

  private static final String BINARY =
      """
      format = "platenwire-device 1"
      name = "box-1"
      title = "A box"
      kind = "binary"
      [binary]
      length = 13
      sync = "\\\\xAA\\\\x55"
      [checksum]
      kind = "crc-16"
      at = 11
      from = 2
      to = 11
      byte-order = "low-first"
      polynomial = 0x8005
      initial = 0xFFFF
      reflect-in = true
      reflect-out = true
      xor-out = 0
      [fields.load]
      kind = "integer"
      at = 2
      order = "ABCD"
      signed = true
      unit = "N"
      scale = 0.1
      offset = 0
      over = [0x7FFFFFFF]
      [fields.state]
      kind = "status"
      at = 10
      order = "A"
      mask = 3
      codes = { "0" = "ok", "2" = "over" }
      of = "load"
      """;

  private static final String MODBUS =
      """
      format = "platenwire-device 1"
      name = "box-1"
      title = "A box"
      kind = "modbus-rtu"
      [modbus]
      unit = 1
      registers = "holding"
      first = 100
      count = 4
      interval-ms = 50
      timeout-ms = 300
      [fields.load]
      kind = "float"
      register = 100
      order = "ABCD"
      unit = "N"
      """;

  private static void assertProblem(String good, int line, String replacement, String expected)
      throws TomlException {
    String[] lines = good.split("\n", -1);
    lines[line - 1] = replacement.replace("¶", "\n");
    String text = String.join("\n", lines);
    if (expected.equals("ok")) {
      assertThat(DeviceDefinition.parse(text, "box.toml").valueFields()).hasSize(1);
      return;
    }
    TomlException problem =
        catchThrowableOfType(
            TomlException.class, () -> DeviceDefinition.parse(text, "devices/box.toml"));
    assertThat(problem).as("no error").isNotNull();
    assertThat(problem.getMessage()).startsWith("devices/box.toml:" + expected);
  }

  @Test
  void parse_goodDefinitions_areTaken() throws TomlException {
    for (String good : new String[] {ASKED, BINARY, MODBUS}) {
      assertProblem(good, 3, "title = \"A box\"", "ok");
    }
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "5  | [asks]                        | 5:",
        "6  | openings = [\"*RST\"]         | 6:1: unknown key 'openings', did you mean 'opening'?",
        "6  | opening = \"*RST\"            | 6:1: 'opening' must be a list in square brackets",
        "6  | opening = [5]                 | 6:1: 'opening' must be texts in double quotes",
        "6  | opening = [\"\"]              | 6:1: a command has 1 to 256 bytes",
        "6  | opening = [\"£\"]             | 6:1: '£' is no ASCII character",
        "7  | identity = 1                  | 7:1: 'identity' must be a text in double quotes",
        "7  | identity = \"\"               | 7:1: a command has 1 to 256 bytes",
        "7  | identity = '\\x'              | 7:1: ",
        "7  | #                             | ok",
        "8  | #                             | 5:1: 'command' is missing",
        "8  | command = \"\"                | 8:1: a command has 1 to 256 bytes",
        "8  | command = true                | 8:1: 'command' must be a text",
        "9  | terminator = \"lf\"           | 9:1: 'lf' is no terminator",
        "9  | terminator = 10               | 9:1: 'terminator' must be a text",
        "9  | #                             | ok",
        "10 | interval-ms = 0               | 10:1: interval-ms must be 1 to 60000, but it is 0",
        "10 | interval-ms = 60001           | 10:1: interval-ms must be 1 to 60000",
        "10 | interval-ms = \"100\"         | 10:1: 'interval-ms' must be a number",
        "10 | interval = 100                | 10:1: unknown key 'interval'; known here: command,",
        "11 | timeout-ms = 9                | 11:1: timeout-ms must be 10 to 60000, but it is 9",
        "11 | timeout-ms = -5               | 11:1: timeout-ms must be 10 to 60000",
        "11 | timeout-ms = nan              | 11:1: ",
        "13 | layout = \"{laod}\"           | 13:1: {laod} is not defined; did you mean {load}?",
      })
  void parse_askedWithSpoiltLine_saysWhereAndWhat(int line, String replacement, String expected)
      throws TomlException {
    assertProblem(ASKED, line, replacement, expected);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "6  | length = 0                    | 6:1: length must be 1 to 1024, but it is 0",
        "6  | length = 1025                 | 6:1: length must be 1 to 1024",
        "6  | length = 12                   | 10:1: bytes 11 to 12 reach beyond the frame's 12",
        "6  | #                             | 5:1: 'length' is missing",
        "6  | lenght = 13                   | 6:1: unknown key 'lenght', did you mean 'length'?",
        "7  | sync = 5                      | 7:1: 'sync' must be a text",
        "7  | sync = \"0123456789ABC\"      | 7:1: the sync bytes are 13, but a frame has only 13",
        "7  | sync = '\\xZZ'                | 7:1: ",
        "7  | #                             | ok",
        "9  | kind = \"crc16\"              | 9:1: 'crc16' is not possible for kind, did you mean 'crc-16'?",
        "9  | kind = \"xor\"                | 14:1: unknown key 'polynomial'",
        "9  | kind = \"md5\"                | 9:1: 'md5' is not possible for kind",
        "9  | kind = \"crc-8\"              | 14:1: polynomial must be 1 to 255",
        "10 | at = 12                       | 10:1: bytes 12 to 13 reach beyond the frame's 13",
        "10 | at = -1                       | 10:1: at must be 0 to 12, but it is -1",
        "10 | at = 5                        | 10:1: the checksum lies within the bytes that it covers",
        "11 | from = 11                     | 12:1: the checksum covers no byte",
        "11 | from = 13                     | 11:1: from must be 0 to 12",
        "12 | to = 14                       | 12:1: to must be 1 to 13",
        "12 | to = 2                        | 12:1: the checksum covers no byte: from 2 up to",
        "13 | byte-order = \"little\"       | 13:1: 'little' is not possible for byte-order",
        "14 | polynomial = 0                | 14:1: polynomial must be 1 to 65535",
        "14 | polynomial = 0x18005          | 14:1: polynomial must be 1 to 65535",
        "14 | #                             | 8:1: 'polynomial' is missing",
        "15 | initial = -1                  | 15:1: initial must be 0 to 65535",
        "16 | reflect-in = 1                | 16:1: 'reflect-in' must be true or false",
        "17 | reflect-out = \"yes\"         | 17:1: 'reflect-out' must be true or false",
        "18 | xor-out = 65536               | 18:1: xor-out must be 0 to 65535",
        "20 | kind = \"int\"                | 20:1: 'int' is not possible for kind",
        "20 | kind = \"float\"              | 23:1: a float always has a sign; leave 'signed' out",
        "21 | at = 10                       | 21:1: bytes 10 to 13 reach beyond the frame's 13",
        "21 | register = 2                  | 21:1: unknown key 'register'",
        "22 | order = \"ABCC\"              | 22:1: 'ABCC' is no order",
        "22 | order = \"abcd\"              | 22:1: 'abcd' is no order",
        "22 | order = \"\"                  | 22:1: '' is no order",
        "22 | order = \"ABCDE\"             | 22:1: 'ABCDE' is no order",
        "23 | signed = \"no\"               | 23:1: 'signed' must be true or false",
        "24 | unit = \"lb\"                 | 24:1: 'lb' is a mass",
        "24 | unit = \"V\"                  | 24:1: 'V' is no unit",
        "25 | scale = 0                     | 25:1: scale must be a number other than 0",
        "25 | scale = 1e13                  | 25:1: scale must be a number other than 0, within 1e12",
        "25 | scale = inf                   | 25:1: ",
        "26 | offset = \"0\"                | 26:1: 'offset' must be a number",
        "27 | over = 5                      | 27:1: 'over' must be a list",
        "31 | order = \"AB\"                | ok",
        "31 | order = \"ABCD\"              | 30:1: bytes 10 to 13 reach beyond the frame's 13",
        "32 | mask = 0                      | 32:1: the mask must be 1 to 255, but it is 0",
        "32 | mask = 256                    | 32:1: the mask must be 1 to 255",
        "33 | codes = { \"4\" = \"ok\" }    | 33:11: 4 has bits that the mask leaves out",
        "33 | codes = { \"x\" = \"ok\" }    | 33:11: 'x' is no code",
        "33 | codes = { \"1\" = \"ok\", \"0x1\" = \"over\" } | 33:11: the code 1 is listed twice",
        "33 | codes = { \"1\" = \"fine\" }  | 33:11: 'fine' is not possible for 1",
        "33 | codes = {}                    | 33:1: 'codes' is empty",
        "34 | of = \"laod\"                 | 34:1: there is no value 'laod', did you mean 'load'?",
      })
  void parse_binaryWithSpoiltLine_saysWhereAndWhat(int line, String replacement, String expected)
      throws TomlException {
    assertProblem(BINARY, line, replacement, expected);
  }

  @Test
  void parse_binaryWithoutSyncAndChecksum_isRefused() throws TomlException {
    String text = BINARY.replaceAll("(?s)\\[checksum].*?\\[fields.load]", "[fields.load]");
    assertProblem(text, 7, "#", "5:1: there is neither 'sync' nor a table [checksum]");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "6  | unit = 0                      | 6:1: unit must be 1 to 247, but it is 0",
        "6  | unit = 248                    | 6:1: unit must be 1 to 247",
        "6  | units = 1                     | 6:1: unknown key 'units', did you mean 'unit'?",
        "6  | #                             | 5:1: 'unit' is missing",
        "7  | registers = \"coils\"         | 7:1: 'coils' is not possible for registers",
        "7  | registers = 3                 | 7:1: 'registers' must be a text",
        "8  | first = -1                    | 8:1: first must be 0 to 65535",
        "8  | first = 65536                 | 8:1: first must be 0 to 65535",
        "8  | first = 65533                 | 9:1: registers beyond the address 65535 are asked for",
        "9  | count = 0                     | 9:1: count must be 1 to 125",
        "9  | count = 126                   | 9:1: count must be 1 to 125",
        "9  | count = 1                     | 14:1: registers 100 to 101 reach beyond 100",
        "9  | count = 1.5                   | 9:1: 'count' must be a whole number",
        "10 | interval-ms = 0.5             | 10:1: interval-ms must be 1 to 60000",
        "11 | timeout-ms = 99999            | 11:1: timeout-ms must be 10 to 60000",
        "13 | kind = \"text\"               | 13:1: 'text' is not possible for kind",
        "14 | register = 99                 | 14:1: register must be 100 to 103, but it is 99",
        "14 | register = 103                | 14:1: registers 103 to 104 reach beyond 103",
        "14 | at = 0                        | 14:1: unknown key 'at'",
        "15 | order = \"AB\"                | 15:1: 'AB' is no order",
        "15 | order = \"ABCDEFGH\"          | ok",
        "16 | unit = \"kp\"                 | 16:1: 'kp' is no unit",
      })
  void parse_modbusWithSpoiltLine_saysWhereAndWhat(int line, String replacement, String expected)
      throws TomlException {
    assertProblem(MODBUS, line, replacement, expected);
  }

  @Test
  void parse_modbusWithOddBytes_isRefused() throws TomlException {
    assertProblem(
        MODBUS.replace("kind = \"float\"", "kind = \"integer\""),
        15,
        "order = \"ABC\"",
        "15:1: a register has two bytes, so write two letters for each");
  }
}
