package io.github.platenwire.toml;

import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * With assertions on, the TOML library throws an error of its own at an escape that is cut short.
 */
class CutEscapeTest {
  @ParameterizedTest
  @ValueSource(strings = {"a = 1\nb = \"\\u12\"\n", "a = 1\nb = \"\\q\"\n", "a = 1\nb = \"\\\n"})
  void parse_escapeThatIsNone_isRefusedWithItsLine(String text) {
    assertThatThrownBy(() -> TomlSection.parse(text, "f"))
        .isInstanceOf(TomlException.class)
        .hasMessageStartingWith("f:2:");
  }
}
