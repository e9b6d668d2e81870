package io.github.platenwire.terminal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class TerminalTraitsTest {
  private static final Map<String, String> ORDINARY = Map.of("TERM", "xterm");

  @Test
  void of_ordinaryTerminal_redrawsInColour() {
    assertThat(TerminalTraits.of(true, StandardCharsets.UTF_8, ORDINARY))
        .isEqualTo(new TerminalTraits(true, Palette.COLOURS, Glyphs.UNICODE));
  }

  /** NO_COLOR counts when it is not empty: no-color.org, from memory. */
  @Test
  void of_noColour_redrawsWithout() {
    Map<String, String> refused = Map.of("TERM", "xterm", "NO_COLOR", "1");
    Map<String, String> empty = Map.of("TERM", "xterm", "NO_COLOR", "");
    assertThat(TerminalTraits.of(true, StandardCharsets.UTF_8, refused))
        .isEqualTo(new TerminalTraits(true, Palette.PLAIN, Glyphs.UNICODE));
    assertThat(TerminalTraits.of(true, StandardCharsets.UTF_8, empty).palette())
        .isEqualTo(Palette.COLOURS);
  }

  @Test
  void of_pipeOrDumbTerminal_plainLines() {
    TerminalTraits plain = new TerminalTraits(false, Palette.PLAIN, Glyphs.ASCII);
    assertThat(TerminalTraits.of(false, StandardCharsets.US_ASCII, ORDINARY)).isEqualTo(plain);
    assertThat(TerminalTraits.of(true, StandardCharsets.US_ASCII, Map.of("TERM", "dumb")))
        .isEqualTo(plain);
    assertThat(TerminalTraits.of(true, StandardCharsets.US_ASCII, Map.of())).isEqualTo(plain);
  }

  @ParameterizedTest
  @ValueSource(strings = {"US-ASCII", "ISO-8859-1", "windows-1252"})
  void of_narrowCharset_ascii(String charset) {
    assertThat(Glyphs.of(Charset.forName(charset))).isEqualTo(Glyphs.ASCII);
  }

  @Test
  void text_ascii_standsIn() {
    assertThat(Glyphs.ASCII.text("±0.1 µm, 5 mm², kg/m³ – Müller, Åse, Straße, 水"))
        .isEqualTo("+/-0.1 um, 5 mm2, kg/m3 - Muller, Ase, Strasse, ?");
    for (Glyphs glyphs : List.of(Glyphs.ASCII, Glyphs.UNICODE)) {
      assertThat(glyphs.text("a\tb\u00a0c\u0007\u001b\u0085\u200f")).isEqualTo("a b c????");
    }
  }

  @ParameterizedTest
  @CsvSource({"24 80, 80, 24", "' 60 200\n', 200, 60"})
  void parse_sttySize_columnsAndLines(String text, int columns, int lines) {
    assertThat(SystemTerminal.parse(text)).contains(new TerminalSize(columns, lines));
  }

  @ParameterizedTest
  @ValueSource(strings = {"", " ", "0 0", "24", "24 x", "-1 80", "24 80 3", "99999 80"})
  void parse_noSize_isEmpty(String text) {
    assertThat(SystemTerminal.parse(text)).isEmpty();
  }

  @Test
  void fromEnvironment_linesAndColumns_areTakenTogether() {
    assertThat(SystemTerminal.fromEnvironment(Map.of("COLUMNS", "132", "LINES", "50")))
        .contains(new TerminalSize(132, 50));
    assertThat(SystemTerminal.fromEnvironment(Map.of("COLUMNS", "132"))).isEmpty();
  }

  @Test
  void system_underTest_noTerminalAndSomeSize() {
    assertThat(SystemTerminal.traits().redraws()).isFalse();
    assertThat(SystemTerminal.sizes().get().columns()).isPositive();
  }

  @Test
  void new_sizeOfZero_isRefused() {
    assertThatThrownBy(() -> new TerminalSize(0, 24)).hasMessageContaining("columns=0");
  }

  @Test
  void wrap_texts_breaksAtSpacesOrWithinLongWords() {
    assertThat(TextWidth.wrap("one two three", 7)).containsExactly("one two", "three");
    assertThat(TextWidth.wrap("abcdefghij k", 4)).containsExactly("abcd", "efgh", "ij k");
    assertThat(TextWidth.wrap("", 4)).containsExactly("");
    assertThat(TextWidth.wrap("水水水", 4)).containsExactly("水水", "水");
  }

  @Test
  void clip_texts_countsColumnsNotCharacters() {
    assertThat(TextWidth.clip("水水水", 5, "…")).isEqualTo("水水…");
    assertThat(TextWidth.columns("e\u0301")).isEqualTo(1);
    assertThat(TextWidth.clip("abc", 3, "…")).isEqualTo("abc");
    assertThat(TextWidth.clip("abcd", 2, "...")).isEqualTo("ab");
  }
}
