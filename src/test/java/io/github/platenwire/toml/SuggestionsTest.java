package io.github.platenwire.toml;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SuggestionsTest {
  @ParameterizedTest
  @CsvSource({
    "bauds, baud",
    "bau, baud",
    "badu, baud",
    "abdu, ",
    "boud, baud",
    "stop-bit, stop-bits",
    "stopbits, stop-bits",
    "baud, baud",
    "temperature, ",
    "x, ",
    "'', ",
  })
  void nearest_word_isWithinAThirdOfItsLength(String word, String expected) {
    assertThat(Suggestions.nearest(word, List.of("baud", "parity", "stop-bits")).orElse(null))
        .isEqualTo(expected);
  }

  /** Distance 3 of "kitten" and "sitting": the textbook pair, from memory. */
  @Test
  void nearest_textbookPair_countsThreeEdits() {
    assertThat(Suggestions.nearest("sittings-", List.of("kittens-"))).contains("kittens-");
    assertThat(Suggestions.nearest("sitting", List.of("kitten"))).isEmpty();
  }

  @Test
  void nearest_twoEquallyNear_takesTheFirstInOrder() {
    assertThat(Suggestions.nearest("bat", List.of("cat", "bar"))).contains("bar");
  }

  @Test
  void nearest_nothingKnown_isEmpty() {
    assertThat(Suggestions.nearest("bat", List.of())).isEmpty();
  }

  @Test
  void nearest_oneLetterThatDiffers_isNoSuggestion() {
    assertThat(Suggestions.nearest(";", List.of(",", "."))).isEmpty();
    assertThat(Suggestions.nearest("", List.of("a"))).isEmpty();
  }
}
