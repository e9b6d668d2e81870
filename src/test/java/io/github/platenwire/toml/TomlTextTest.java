package io.github.platenwire.toml;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.CharRange;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TomlTextTest {
  /** Everything but lone surrogates, which no UTF-8 file can hold. */
  @Property
  void quote_anyText_readsBackEqual(
      @ForAll @CharRange(from = '\0', to = '\uD7FF') @CharRange(from = '\uE000', to = '\uFFFD')
          String text)
      throws TomlException {
    String document = "value = " + TomlText.quote(text) + "\n";
    assertThat(TomlSection.parse(document, "t").string("value")).isEqualTo(text);
  }

  @Property
  void quote_textBeyondTheBasicPlane_readsBackEqual(
      @ForAll @CharRange(from = 'a', to = 'e') String text) throws TomlException {
    String outside = text + "\uD83D\uDD29" + text;
    assertThat(TomlSection.parse("v = " + TomlText.quote(outside), "t").string("v"))
        .isEqualTo(outside);
  }

  @Property
  void key_anyText_readsBackEqual(@ForAll @CharRange(from = '\0', to = '\uD7FF') String name)
      throws TomlException {
    TomlSection section = TomlSection.parse(TomlText.key(name) + " = 1\n", "t");
    assertThat(section.keys()).containsExactly(name);
    assertThat(section.whole(name)).isEqualTo(1);
  }

  @Property
  void number_anyFiniteDouble_readsBackTheSameBits(@ForAll long bits) throws TomlException {
    double value = Double.longBitsToDouble(bits);
    if (Double.isFinite(value)) {
      assertNumberReadsBack(value);
    }
  }

  @ParameterizedTest
  @ValueSource(
      doubles = {0.0, -0.0, 1.0, 1e7, 1e-3, 9.99e-4, 1e300, Double.MIN_VALUE, Double.MAX_VALUE})
  void number_edge_readsBackTheSameBits(double value) throws TomlException {
    assertNumberReadsBack(value);
  }

  private static void assertNumberReadsBack(double value) throws TomlException {
    String document = "value = " + TomlText.number(value) + "\n";
    assertThat(Double.doubleToRawLongBits(TomlSection.parse(document, "t").number("value")))
        .isEqualTo(Double.doubleToRawLongBits(value));
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY})
  void number_notFinite_isRefused(double value) {
    assertThatThrownBy(() -> TomlText.number(value)).isInstanceOf(IllegalArgumentException.class);
  }
}
