package io.github.platenwire.method;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class FractureTypeTest {
  @ParameterizedTest
  @EnumSource(FractureType.class)
  void sketch_everyType_isSevenLinesOfElevenPrintableCharacters(FractureType type) {
    assertThat(type.sketch()).hasSize(7);
    assertThat(type.sketch()).allMatch(line -> line.matches("[ -~]{11}"));
    assertThat(type.sketch()).anyMatch(line -> line.contains("#"));
    assertThat(type.words()).isNotEmpty();
  }

  /** Six types, numbered from 1: ASTM C39, from memory. */
  @Test
  void ofNumber_oneToSix_findsEachAndNoOther() {
    for (int number = 1; number <= 6; number++) {
      assertThat(FractureType.ofNumber(number).orElseThrow().number()).isEqualTo(number);
    }
    assertThat(FractureType.ofNumber(0)).isEmpty();
    assertThat(FractureType.ofNumber(7)).isEmpty();
  }

  @ParameterizedTest
  @EnumSource(FractureType.class)
  void ofKey_keyOrNumber_findsTheType(FractureType type) {
    assertThat(FractureType.ofKey(type.key())).contains(type);
    assertThat(FractureType.ofKey(String.valueOf(type.number()))).contains(type);
  }

  @Test
  void ofKey_unknown_isEmpty() {
    assertThat(FractureType.ofKey("shear")).isEmpty();
  }

  @Test
  void sketch_types_allDiffer() {
    assertThat(Arrays.stream(FractureType.values()).map(FractureType::sketch))
        .doesNotHaveDuplicates();
  }

  @Test
  void key_aggregateBreaks_areDistinctWords() {
    assertThat(Arrays.stream(AggregateBreak.values()).map(AggregateBreak::key))
        .containsExactly("through", "around", "mixed", "not-seen");
    assertThat(AggregateBreak.values()).allMatch(value -> !value.words().isEmpty());
  }
}
