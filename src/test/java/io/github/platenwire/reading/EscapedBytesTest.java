package io.github.platenwire.reading;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.util.HexFormat;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.AlphaChars;
import net.jqwik.api.constraints.Chars;
import net.jqwik.api.constraints.StringLength;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class EscapedBytesTest {
  /** Codes of the characters: ASCII (ISO/IEC 646), from memory. */
  @ParameterizedTest
  @CsvSource({
    "2B3030313233342E35206B4E, '+001234.5 kN'",
    "020D0A, '\\x02\\x0D\\x0A'",
    "5C, '\\\\'",
    "23, '\\x23'",
    "00, '\\x00'",
    "7E7F80FF, '~\\x7F\\x80\\xFF'",
    "1F2021, '\\x1F !'",
    "222C27, '\",'''",
  })
  void encode_knownBytes_givesText(String hex, String text) {
    byte[] bytes = HexFormat.of().parseHex(hex);

    assertThat(EscapedBytes.encode(bytes)).isEqualTo(text);
    assertThat(EscapedBytes.decode(text)).isEqualTo(bytes);
  }

  @Property
  void decode_ofEncoded_givesSameBytes(@ForAll byte[] bytes) {
    String text = EscapedBytes.encode(bytes);

    assertThat(EscapedBytes.decode(text)).isEqualTo(bytes);
    assertThat(text.chars()).allMatch(c -> c >= 0x20 && c <= 0x7E && c != '#');
  }

  @Property
  void encode_intoBuffer_touchesOnlyItsOwnRange(@ForAll byte[] bytes) {
    byte[] framed = new byte[bytes.length + 5];
    System.arraycopy(bytes, 0, framed, 2, bytes.length);
    byte[] to = new byte[bytes.length * EscapedBytes.LONGEST + 7];

    int end = EscapedBytes.encode(framed, 2, bytes.length, to, 7);

    assertThat(new String(to, 7, end - 7, StandardCharsets.US_ASCII))
        .isEqualTo(EscapedBytes.encode(bytes));
    assertThat(to).startsWith(new byte[7]);
  }

  @Property
  void decode_anyText_givesBytesOfThatVeryTextOrRefuses(
      @ForAll
          @AlphaChars
          @Chars({'\\', 'x', '#', '0', 'A', '5', 'C', 'é', '\n'})
          @StringLength(max = 12)
          String text) {
    byte[] bytes;
    try {
      bytes = EscapedBytes.decode(text);
    } catch (IllegalArgumentException refused) {
      assertThat(refused).hasMessageStartingWith("character ");
      return;
    }
    assertThat(EscapedBytes.encode(bytes)).isEqualTo(text);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "\\", "\\x", "\\x1", "\\x0d", "\\n", "\\X0D", "\\x5C", "\\x41", "#", "\n", "é", "€", "\\xG0"
      })
  void decode_notWrittenByUs_refuses(String text) {
    assertThatThrownBy(() -> EscapedBytes.decode("ab" + text))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageStartingWith("character 3: ");
  }

  @Test
  void decode_empty_givesNoBytes() {
    assertThat(EscapedBytes.decode("")).isEmpty();
    assertThat(EscapedBytes.encode(new byte[0])).isEmpty();
  }
}
