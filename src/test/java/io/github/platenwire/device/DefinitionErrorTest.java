package io.github.platenwire.device;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import io.github.platenwire.port.LineSettings;
import io.github.platenwire.toml.TomlException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Each row spoils one line of a good definition and names the place and words of the error. */
class DefinitionErrorTest {
  private static final String GOOD =
      """
      format = "platenwire-device 1"
      name = "box-1"
      title = "A box"
      kind = "line"
      [serial]
      baud = 9600
      data-bits = 8
      parity = "none"
      stop-bits = 1
      flow = "none"
      [line]
      layout = "{state},{load} {unit}"
      terminator = "CRLF"
      longest = 40
      [fields.load]
      kind = "number"
      unit = "lbf"
      decimal = "."
      over = ["OL"]
      [fields.unit]
      kind = "unit"
      spellings = { "lbf" = "lbf", "LB" = "lbf" }
      [fields.state]
      kind = "status"
      codes = { "ST" = "ok" }
      """;

  private static String problem(String text) {
    TomlException problem =
        catchThrowableOfType(
            TomlException.class, () -> DeviceDefinition.parse(text, "devices/box.toml"));
    assertThat(problem).as("no error").isNotNull();
    return problem.getMessage();
  }

  private static String spoilt(int line, String replacement) {
    String[] lines = GOOD.split("\n", -1);
    lines[line - 1] = replacement.replace("¶", "\n");
    return String.join("\n", lines);
  }

  @Test
  void parse_goodDefinition_keepsAllThatWasSaid() throws TomlException {
    DeviceDefinition definition = DeviceDefinition.parse(GOOD, "box.toml");
    assertThat(definition.name()).isEqualTo("box-1");
    assertThat(definition.title()).isEqualTo("A box");
    assertThat(definition.text()).isEqualTo(GOOD);
    assertThat(definition.lineSettings()).isEqualTo(LineSettings.COMMON);
    assertThat(definition.valueFields())
        .extracting(field -> field.name() + " " + field.unit().symbol())
        .containsExactly("load lbf");
  }

  @Test
  void parse_serialTable_isTakenOver() throws TomlException {
    String text =
        GOOD.replace("9600", "19200")
            .replace("data-bits = 8", "data-bits = 7")
            .replace("parity = \"none\"", "parity = \"even\"")
            .replace("stop-bits = 1", "stop-bits = 2")
            .replace("flow = \"none\"", "flow = \"software\"");
    assertThat(DeviceDefinition.parse(text, "box.toml").lineSettings())
        .isEqualTo(
            new LineSettings(19200, 7, LineSettings.Parity.EVEN, 2, LineSettings.Flow.SOFTWARE));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "1  | format = \"platenwire-device 2\" | 1:1: this program reads format \"platenwire-device 1\"",
        "1  | # none                           | 1:1: 'format' is missing",
        "1  | format = 1                       | 1:1: 'format' must be a text",
        "2  | nmae = \"box-1\"                 | 2:1: unknown key 'nmae', did you mean 'name'?",
        "2  | name = \"Box 1\"                 | 2:1: 'Box 1' is no name",
        "2  | name = \"../box\"                | 2:1: '../box' is no name",
        "2  | name = \"\"                      | 2:1: '' is no name",
        "3  | title = \" \"                    | 3:1: the title is empty",
        "4  | kind = \"lines\"                 | 4:1: 'lines' is not possible for kind, did you mean 'line'?",
        "4  | kind = \"modbus\"                | 4:1: 'modbus' is not possible for kind; possible: line",
        "6  | bauds = 9600                     | 6:1: unknown key 'bauds', did you mean 'baud'?",
        "6  | baud = \"9600\"                  | 6:1: 'baud' must be a whole number",
        "6  | baud = 20                        | 6:1: baud must be 50 to 4000000",
        "6  | baud = 99999999999               | 6:1: 99999999999 is not possible for baud",
        "7  | data-bits = 9                    | 7:1: data bits must be 7 or 8",
        "8  | parity = \"evne\"                | 8:1: 'evne' is not possible for parity, did you mean 'even'?",
        "9  | stop-bits = 0                    | 9:1: stop bits must be 1 or 2",
        "10 | flow = \"yes\"                   | 10:1: 'yes' is not possible for flow",
        "11 | [lines]                          | 11:1: unknown key 'lines', did you mean 'line'?",
        "12 | # none                           | 11:1: 'layout' is missing in [line]",
        "12 | layout = \"{state},{lod} {unit}\" | 12:1: {lod} is not defined; did you mean {load}?",
        "12 | layout = \"{state},{load} {unit} {other}\" | 12:1: {other} is not defined; add a table [fields.other]",
        "12 | layout = \"{state},{load}\"      | 20:1: the layout has no {unit}",
        "12 | layout = \"{state},{load} {unit};{load}\" | 12:1: {load} stands in the layout twice",
        "12 | layout = \"{state},{load {unit}\" | 12:1: {load {unit} is no field name",
        "12 | layout = \"{state},load} {unit}\" | 12:1: character 13 is a '}' that closes nothing",
        "12 | layout = \"{state},{load\"       | 12:1: character 9 is a '{' that is never closed",
        "12 | layout = \"{state},{} {unit}\"   | 12:1: {} is no field name",
        "12 | layout = '{state}\\x0{load} {unit}' | 12:1: after a backslash must come x and two hexadecimal digits",
        "12 | layout = '{state}\\'             | 12:1: after a backslash must come x",
        "12 | layout = \"{state}°{load} {unit}\" | 12:1: '°' is no ASCII character",
        "12 | layout = '{state},{load} {unit}\\x0D\\x0A' | 12:1: the layout holds the terminator",
        "12 | layout = \"{state}{unit}{load}\" | ok",
        "12 | layout = \"{state},{load}.{unit}\" | 12:1: where {load} ends and the character '.' begins cannot be told, because '.' could belong to either",
        "12 | layout = \"{state},{load}5{unit}\" | 12:1: where {load} ends and the character '5' begins",
        "13 | terminator = \"crlf\"            | 13:1: 'crlf' is no terminator; possible: CR, LF, CRLF",
        "13 | terminator = \"\"                | 13:1: a terminator has 1 to 8 bytes",
        "13 | terminator = '\\x3'              | 13:1: after a backslash must come x",
        "13 | # none                           | 11:1: 'terminator' is missing in [line]",
        "14 | longest = 4                      | 14:1: longest is 4 bytes, but the shortest line of this layout has 6",
        "14 | longest = 0                      | 14:1: longest must be 1 to 1024, but it is 0",
        "14 | longest = 40.5                   | 14:1: 'longest' must be a whole number",
        "15 | [fields.Load]                    | 12:1: {load} is not defined",
        "16 | kind = \"numbr\"                 | 16:1: 'numbr' is not possible for kind, did you mean 'number'?",
        "16 | kind = \"text\"                  | 12:1: no field of the layout is a number",
        "17 | unit = \"lb\"                    | 17:1: 'lb' is a mass; a load in pounds is written 'lbf'",
        "17 | unit = \"ms\"                    | 17:1: 'ms' is no unit of force; possible: N, kN",
        "17 | unit = \"MPa\"                   | 17:1: 'MPa' is no unit of force",
        "17 | # none                           | 15:1: 'unit' is missing in [fields.load]",
        "18 | decimal = \";\"                  | 18:1: ';' is not possible for decimal; possible: ., ,",
        "18 | decimals = \".\"                 | 18:1: unknown key 'decimals', did you mean 'decimal'?",
        "18 | decimal = \".\"¶implied-decimals = 1 | 19:1: either a mark is sent",
        "18 | digits = 0                       | 18:1: digits must be 1 to 40, but it is 0",
        "18 | sign = \"always\"                | 18:1: 'always' is not possible for sign; possible: required, optional, none",
        "18 | exponent = \"yes\"               | 18:1: 'exponent' must be true or false",
        "18 | width = -1                       | 18:1: width must be 1 to 1024, but it is -1",
        "18 | of = \"load\"                    | 18:1: unknown key 'of'",
        "19 | over = \"OL\"                    | 19:1: 'over' must be a list in square brackets",
        "19 | over = [1]                       | 19:1: 'over' must be texts in double quotes",
        "19 | over = [\"\"]                    | 19:1: '' is empty",
        "19 | over = [\" OL\"]                 | 19:1: ' OL' is empty or begins or ends with a blank",
        "19 | over = [\"0L\"]                  | 19:1: '0L' begins like a number",
        "19 | over = [\"OL\", '\\x4FL']        | 19:1: two of the words are the same bytes",
        "22 | spellings = {}                   | 22:1: 'spellings' is empty",
        "22 | spellings = [\"lbf\"]            | 22:1: 'spellings' must be a table",
        "22 | spellings = { \"lbf\" = \"lbf\", \"LB\" = \"lb\" } | 22:30: 'lb' is a mass; a load in pounds is written 'lbf'",
        "22 | spellings = { \"MM\" = \"mm\" }  | 22:15: 'mm' is no unit of force; possible: N, kN",
        "22 | spellings = { \"LB\" = 1 }       | 22:15: 'LB' must be a text in double quotes",
        "22 | spellings = { \"LB \" = \"lbf\" } | 22:15: 'LB ' begins or ends with a blank",
        "22 | spellings = { \"\" = \"lbf\" }   | 22:15: an empty word can only stand in a field with a width",
        "22 | spellings = { \"£\" = \"lbf\" }  | 22:15: '£' is no ASCII character",
        "22 | spellings = { \"5\" = \"lbf\" }  | ok",
        "22 | width = 2¶spellings = { \"lbf\" = \"lbf\" } | 23:15: 'lbf' is longer than the field's width of 2",
        "22 | spellings = { \"lbf\" = \"lbf\" }¶of = \"laod\" | 23:1: there is no number field 'laod', did you mean 'load'?",
        "25 | codes = { \"ST\" = \"okay\" }    | 25:11: 'okay' is not possible for ST",
        "25 | codes = { \"ST\" = \"suspect\" } | 25:11: 'suspect' is not possible for ST; possible: ok, unstable, over",
        "25 | codes = { \"A\" = \"ok\", \"A,\" = \"over\" } | 12:1: where {state} ends and the character ',' begins",
        "25 | codes = { \"ST\" = \"ok\", \"ST\" = \"over\" } | 25:",
        "25 | codes = { \"ST\" = \"ok\"        | 2",
      })
  void parse_spoiltLine_saysWhereAndWhat(int line, String replacement, String expected)
      throws TomlException {
    String text = spoilt(line, replacement);
    if (expected.equals("ok")) {
      assertThat(DeviceDefinition.parse(text, "box.toml").valueFields()).hasSize(1);
    } else {
      assertThat(problem(text)).startsWith("devices/box.toml:" + expected);
    }
  }

  @Test
  void parse_tableOfAFieldTwice_isRefusedAtTheSecond() {
    assertThat(problem(GOOD + "[fields.load]\nkind = \"text\"\n"))
        .startsWith("devices/box.toml:26:");
  }

  @Test
  void parse_fieldThatIsNoTable_isRefused() {
    String text = GOOD.substring(0, GOOD.indexOf("[fields.load]")) + "[fields]\nload = \"x\"\n";
    assertThat(problem(text)).startsWith("devices/box.toml:16:1: 'load' must be a table");
  }

  private static String layoutProblem(String layout, String fields) {
    return problem(Definitions.text(layout, "CRLF", fields));
  }

  private static String number(String name, String keys) {
    return Definitions.field(name, "number", "unit = 'mm'; " + keys);
  }

  @Test
  void parse_adjacentNumbers_isRefusedWithReason() {
    assertThat(layoutProblem("{a}{b}", number("a", "") + number("b", "")))
        .isEqualTo(
            "devices/box.toml:6:1: where {a} ends and {b} begins cannot be told, because '.' could"
                + " belong to either; put a character between them that neither can hold, or give"
                + " {a} a width");
  }

  @Test
  void parse_adjacentNumbersThatDiffer_isTaken() throws TomlException {
    String signed = number("a", "") + number("b", "sign = 'required'");
    String wide = number("a", "width = 8") + number("b", "");
    for (String fields : new String[] {signed, wide}) {
      String text = Definitions.text("{a}{b}", "CRLF", fields);
      assertThat(DeviceDefinition.parse(text, "box.toml").valueFields()).hasSize(2);
    }
  }

  @Test
  void parse_unitThatGoesOnLikeANumber_isRefused() {
    String unit = Definitions.field("u", "unit", "spellings = { 'EM' = 'mm' }");
    assertThat(layoutProblem("{a}{u}", number("a", "exponent = true") + unit))
        .contains(":6:1: where {a} ends and {u} begins cannot be told, because 'E' could");
  }

  @Test
  void parse_textRightBeforeAField_isRefused() {
    assertThat(layoutProblem("{t}{a}", number("a", "") + Definitions.field("t", "text", "")))
        .contains(":6:1: the text {t} is followed by another field at once");
    assertThat(layoutProblem("{a}{t}", number("a", "") + Definitions.field("t", "text", "")))
        .contains(":6:1: where {a} ends and {t} begins cannot be told");
  }

  @Test
  void parse_spaceBeforePaddedWidth_isRefused() {
    assertThat(layoutProblem("x {a}", number("a", "width = 8")))
        .contains(":6:1: the space before {a} stands for any run of blanks");
    assertThat(layoutProblem("{a} \\x20x", number("a", "")))
        .contains(":6:1: the space before the character a space");
  }

  @Test
  void parse_unitWithoutOfAmongSeveralNumbers_isRefused() {
    String unit = Definitions.field("u", "unit", "spellings = { 'mm' = 'mm' }");
    assertThat(layoutProblem("{a};{b}{u}", number("a", "") + number("b", "") + unit))
        .contains("'of' is missing in [fields.u]; there are several numbers")
        .contains("of = \"a\"");
  }

  @Test
  void parse_twoUnitsOfOneNumber_isRefused() {
    String units =
        Definitions.field("u", "unit", "spellings = { 'mm' = 'mm' }")
            + Definitions.field("v", "unit", "spellings = { 'in' = 'in' }");
    assertThat(layoutProblem("{a}{u};{v}", number("a", "") + units))
        .contains("{u} already says the unit of {a}");
  }

  @Test
  void parse_unitsWithoutANumber_isRefused() {
    String unit = Definitions.field("u", "unit", "spellings = { 'mm' = 'mm' }");
    assertThat(layoutProblem("{u}", unit)).contains("no field of the layout is a number");
  }
}
