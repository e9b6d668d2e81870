package io.github.platenwire.device;

import static io.github.platenwire.device.Definitions.field;
import static io.github.platenwire.device.Definitions.line;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LineLayoutTest {
  private static final String LOAD = field("load", "number", "unit = 'lbf'");
  private static final String UNIT =
      field("unit", "unit", "spellings = { 'lbf' = 'lbf', 'LB' = 'lbf', 'KN' = 'kN' }");
  private static final String STATE =
      field("state", "status", "codes = { 'ST' = 'ok', 'US' = 'unstable', 'OL' = 'over' }");
  private static final String A = field("a", "number", "unit = 'mm'");
  private static final String B = field("b", "number", "unit = 'mm'");

  private static List<String> decoded(DeviceDefinition definition, String sent) {
    return Frames.afterStart(definition, sent + "\r\n").stream()
        .map(found -> found.substring(found.indexOf("-> ") + 3))
        .toList();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "12.5 lbf     | 0: 12.5 lbf ok",
        "12.5lbf      | 0: 12.5 lbf ok",
        "'12.5 \t LB' | 0: 12.5 lbf ok",
        "12.5 KN      | 0: 12.5 kN ok",
        "12.5 kN      | garbled",
        "12.5 mm      | garbled",
        "12.5         | garbled",
        "lbf          | garbled",
        "'12.5 lbf '  | garbled",
        "12.5 lbfx    | garbled",
      })
  void decode_numberAndUnit_passesUnitAsSent(String sent, String expected) {
    assertThat(decoded(line("{load} {unit}", LOAD + UNIT), sent)).containsExactly(expected);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "'ST,GS, 12.5' | 0: 12.5 lbf ok",
        "US,GS,12.5    | 0: 12.5 lbf unstable",
        "OL,GS,12.5    | 0: 12.5 lbf over",
        "XX,GS,12.5    | garbled",
        "st,GS,12.5    | garbled",
        "ST,GS12.5     | garbled",
      })
  void decode_status_setsQuality(String sent, String expected) {
    assertThat(decoded(line("{state},GS,{load}", LOAD + STATE), sent)).containsExactly(expected);
  }

  @Test
  void decode_unstableAfterOverText_staysOver() {
    String load = field("load", "number", "unit = 'lbf'; over = ['----']");
    assertThat(decoded(line("{load} {state}", load + STATE), "---- US"))
        .containsExactly("0: NaN lbf over");
  }

  @Test
  void decode_blankStateOfWidthOne_isAWord() {
    String state = field("state", "status", "width = 1; codes = { '' = 'ok', 'M' = 'unstable' }");
    DeviceDefinition definition = line("{load}{state}", LOAD + state);
    assertThat(decoded(definition, "12.5 ")).containsExactly("0: 12.5 lbf ok");
    assertThat(decoded(definition, "12.5M")).containsExactly("0: 12.5 lbf unstable");
    assertThat(decoded(definition, "12.5")).containsExactly("garbled");
  }

  @Test
  void decode_severalNumbers_givesOneValueEachInLayoutOrder() {
    DeviceDefinition definition = line("{b};{a}", A + B);
    assertThat(definition.valueFields())
        .extracting(DeviceDefinition.ValueField::name)
        .containsExactly("b", "a");
    assertThat(decoded(definition, "1;2")).containsExactly("0: 1.0 mm ok", "1: 2.0 mm ok");
    assertThat(decoded(definition, "1;x")).containsExactly("garbled");
  }

  @Test
  void decode_fieldTiedToOneNumber_leavesTheOtherAlone() {
    String unit = field("u", "unit", "of = 'b'; spellings = { 'in' = 'in', 'mm' = 'mm' }");
    String state = field("s", "status", "of = 'a'; codes = { '*' = 'unstable', '=' = 'ok' }");
    assertThat(decoded(line("{s}{a};{b} {u}", A + B + unit + state), "*1;2 in"))
        .containsExactly("0: 1.0 mm unstable", "1: 2.0 in ok");
  }

  @Test
  void decode_statusTiedToNone_coversAllNumbers() {
    assertThat(decoded(line("{state} {a};{b}", A + B + STATE), "US 1;2"))
        .containsExactly("0: 1.0 mm unstable", "1: 2.0 mm unstable");
  }

  /** The unit sent by one line must not cling to the next. */
  @Test
  void decode_unitAndStateOfEarlierLine_areForgotten() {
    DeviceDefinition definition = line("{state} {load} {unit}", LOAD + UNIT + STATE);
    assertThat(decoded(definition, "OL 1 KN\r\nST 2 lbf"))
        .containsExactly("0: 1.0 kN over", "0: 2.0 lbf ok");
  }

  @Test
  void decode_twoNumbersAndSpace_needTheBlank() {
    DeviceDefinition definition = line("{a} {b}", A + B);
    assertThat(decoded(definition, "12.5 13.5")).containsExactly("0: 12.5 mm ok", "1: 13.5 mm ok");
    assertThat(decoded(definition, "12.513.5")).containsExactly("garbled");
  }

  @Test
  void decode_numbersOfExactDigits_standSideBySide() {
    String a = field("a", "number", "unit = 'mm'; implied-decimals = 2; digits = 4");
    String b = field("b", "number", "unit = 'mm'; implied-decimals = 2; digits = 4");
    assertThat(decoded(line("{a}{b}", a + b), "12345678"))
        .containsExactly("0: 12.34 mm ok", "1: 56.78 mm ok");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "{text} {load}           | 'A7 5'       | 0: 5.0 lbf ok",
        "{text} {load}           | ' 5'         | 0: 5.0 lbf ok",
        "{text} {load}           | A7           | garbled",
        "{text}: {load}          | 'no. 7: 5'   | 0: 5.0 lbf ok",
        "{text}: {load}          | 'no. 7 5'    | garbled",
        "{load} {text}           | '5 any : \u00e9' | 0: 5.0 lbf ok",
        "{load} {text}           | '5 '         | 0: 5.0 lbf ok",
        "'{load},{text} '        | '5,x  '      | 0: 5.0 lbf ok",
        "'{load},{text} '        | '5,'         | 0: 5.0 lbf ok",
        "'{load} {text} ;'       | '5 x  ;'     | 0: 5.0 lbf ok",
        "'{load} {text} ;'       | '5 x;'       | garbled",
      })
  void decode_text_isPassedOver(String layout, String sent, String expected) {
    assertThat(decoded(line(layout, LOAD + field("text", "text", "")), sent))
        .containsExactly(expected);
  }

  @Test
  void decode_textOfWidth_takesJustThatMany() {
    DeviceDefinition definition = line("{text}{load}", LOAD + field("text", "text", "width = 3"));
    assertThat(decoded(definition, "1 212.5")).containsExactly("0: 12.5 lbf ok");
    assertThat(decoded(definition, "12")).containsExactly("garbled");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "\\x02{load}\\x03 | '\u00025\u0003' | 0: 5.0 lbf ok",
        "\\x02{load}\\x03 | '5\u0003'       | garbled",
        "{{{load}}}       | {5}             | 0: 5.0 lbf ok",
        "\\\\{load}       | \\5             | 0: 5.0 lbf ok",
        "\\xB1{load}      | \u00b15         | 0: 5.0 lbf ok",
        "W\\x20{load}     | 'W 5'           | 0: 5.0 lbf ok",
        "W\\x20{load}     | 'W5'            | garbled",
      })
  void decode_escapedLiteral_matchesTheByte(String layout, String sent, String expected) {
    assertThat(decoded(line(layout, LOAD), sent)).containsExactly(expected);
  }

  @Test
  void decode_unitSpeltWithHighByte_isKnown() {
    String unit = field("unit", "unit", "spellings = { '\\xB5m' = 'um', 'mm' = 'mm' }");
    assertThat(decoded(line("{a} {unit}", A + unit), "5 \u00b5m")).containsExactly("0: 5.0 µm ok");
  }

  @Test
  void decode_wordsThatBeginAlike_takesTheLongest() {
    String unit = field("unit", "unit", "spellings = { 'm' = 'm', 'mm' = 'mm' }");
    DeviceDefinition definition = line("{a}{unit}", A + unit);
    assertThat(decoded(definition, "5m")).containsExactly("0: 5.0 m ok");
    assertThat(decoded(definition, "5mm")).containsExactly("0: 5.0 mm ok");
  }
}
