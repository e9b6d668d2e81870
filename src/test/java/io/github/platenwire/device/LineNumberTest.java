package io.github.platenwire.device;

import static io.github.platenwire.device.Definitions.field;
import static io.github.platenwire.device.Definitions.line;
import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.math.BigInteger;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.BigRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.LongRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LineNumberTest {
  private static final String KN = "unit = \"kN\"; ";

  private static String decoded(String layout, String keys, String sent) {
    DeviceDefinition definition = line(layout, field("load", "number", KN + keys));
    String found = Frames.afterStart(definition, sent + "\r\n").get(0);
    return found.substring(found.indexOf("-> ") + 3).replace("0: ", "").replace(" kN ok", "");
  }

  /** The sign behind the number; a blank in its place is a plus. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "0012.5-   | -12.5",
        "0012.5+   | 12.5",
        "'12.5 '   | 12.5",
        "12.5      | 12.5",
        "000.0-    | 0.0",
        "-12.5     | garbled",
        "+12.5+    | garbled",
        "12.5--    | garbled",
        "12.5*     | garbled",
      })
  void decode_signAfter_givesNumberOrGarbled(String sent, String expected) {
    assertThat(decoded("{load}", "sign = \"after\"", sent)).isEqualTo(expected);
  }

  /** Spellings that indicators send: common practice, no source. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "123.45       | 123.45",
        "'  123.45  ' | 123.45",
        "'\t12'       | 12.0",
        "+00123.4     | 123.4",
        "'-  12.5'    | -12.5",
        "'+\t7'       | 7.0",
        "-.0021       | -0.0021",
        "12.          | 12.0",
        "0            | 0.0",
        "-0           | 0.0",
        "-0.000       | 0.0",
        "000000000000000000000000000000000012.5 | 12.5",
        "12.50000000000000000000000000000       | 12.5",
        "' '          | garbled",
        ".            | garbled",
        "-            | garbled",
        "+-5          | garbled",
        "5-           | garbled",
        "1.2.3        | garbled",
        "1,2          | garbled",
        "1 2          | garbled",
        "12 .5        | garbled",
        "1e3          | garbled",
        "0x10         | garbled",
        "NaN          | garbled",
        "Infinity     | garbled",
        "--5          | garbled",
      })
  void decode_plainOptions_givesNumberOrGarbled(String sent, String expected) {
    assertThat(decoded(" {load} ", "", sent)).isEqualTo(expected);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "decimal = ','        | 12,5       | 12.5",
        "decimal = ','        | 12.5       | garbled",
        "decimal = ','        | ,5         | 0.5",
        "sign = 'required'    | 12.5       | garbled",
        "sign = 'required'    | +12.5      | 12.5",
        "sign = 'required'    | -12.5      | -12.5",
        "sign = 'none'        | -12.5      | garbled",
        "sign = 'none'        | 12.5       | 12.5",
        "digits = 5           | 123.45     | 123.45",
        "digits = 5           | 12345.     | 12345.0",
        "digits = 5           | .12345     | 0.12345",
        "digits = 5           | 23.45      | garbled",
        "digits = 5           | 0123.45    | garbled",
        "digits = 5           | -00001     | -1.0",
        "implied-decimals = 1 | +0012345   | 1234.5",
        "implied-decimals = 3 | 7          | 0.007",
        "implied-decimals = 1 | 1234.5     | garbled",
        "exponent = true      | +1.2345E+2 | 123.45",
        "exponent = true      | -5e-1      | -0.5",
        "exponent = true      | 12.5       | 12.5",
        "exponent = true      | 12E        | garbled",
        "exponent = true      | 12E+       | garbled",
        "exponent = true      | 1E999      | garbled",
        "exponent = true      | 1E0001     | garbled",
        "exponent = true      | -1E-999    | 0.0",
        "exponent = true      | 1E25       | 1.0E25",
        "exponent = true      | 0E999      | 0.0",
        "width = 7            | ' 123.45'  | 123.45",
        "width = 7            | '123.45 '  | 123.45",
        "width = 7            | '123.45'   | garbled",
        "over = ['------']    | ------     | NaN kN over",
        "over = ['------']    | -----      | garbled",
        "over = ['------']    | -5         | -5.0",
        "over = ['OL', 'OLL'] | ' OLL'     | NaN kN over",
        "over = ['OL', 'OLL'] | OL         | NaN kN over",
        "over = ['OL']        | OLX        | garbled",
        "over = ['99999.9']   | 99999.9    | NaN kN over",
        "over = ['99999.9']   | 99999.8    | 99999.8",
        "over = ['99999.9']   | 99999.95   | 99999.95",
        "over = ['\\xB0\\xB0']| °°         | NaN kN over",
      })
  void decode_option_givesNumberOrGarbled(String keys, String sent, String expected) {
    String layout = keys.startsWith("width") ? "{load}" : " {load} "; // a width counts blanks
    assertThat(decoded(layout, keys, sent)).isEqualTo(expected);
  }

  @Test
  void decode_minusZero_hasNoSign() {
    Frames frames = Frames.of(line("{load}", field("load", "number", KN)), "-0.00\r\n");
    assertThat(Double.doubleToRawLongBits(frames.values.get(0))).isZero();
  }

  /** Against the JDK's own parser, which rounds to the nearest double. */
  @Property
  void decode_anyDecimal_isNearestDouble(
      @ForAll @LongRange(min = -9_999_999_999_999_999L, max = 9_999_999_999_999_999L) long unscaled,
      @ForAll @IntRange(max = 25) int scale) {
    String text = new BigDecimal(BigInteger.valueOf(unscaled), scale).toPlainString();
    DeviceDefinition definition = line("{load}", field("load", "number", KN));
    assertThat(Frames.of(definition, text + "\r\n").values)
        .containsExactly(unscaled == 0 ? 0.0 : Double.parseDouble(text));
  }

  @Property
  void decode_manyDigits_isNearestDouble(
      @ForAll @BigRange(min = "0", max = "999999999999999999999999999999") BigInteger unscaled,
      @ForAll @IntRange(max = 36) int scale) {
    String text = new BigDecimal(unscaled, scale).toPlainString().replace('.', ',');
    DeviceDefinition definition = line("{load}", field("load", "number", KN + "decimal = ','"));
    assertThat(Frames.of(definition, text + "\r\n").values)
        .containsExactly(new BigDecimal(unscaled, scale).doubleValue());
  }

  @Property
  void decode_exponent_isNearestDouble(
      @ForAll @LongRange(min = -999_999_999_999_999L, max = 999_999_999_999_999L) long mantissa,
      @ForAll @IntRange(min = -300, max = 290) int exponent) {
    String text = mantissa + "E" + exponent;
    DeviceDefinition definition = line("{load}", field("load", "number", KN + "exponent = true"));
    assertThat(Frames.of(definition, text + "\r\n").values)
        .containsExactly(mantissa == 0 ? 0.0 : Double.parseDouble(text));
  }
}
