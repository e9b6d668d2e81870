package io.github.platenwire.cli;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class AfterTestQuestionsTest {
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {"140 mm | 140", "140mm | 140", "5.5 in | 139.7", "139,7 mm | 139.7"})
  void distance_withUnit_isMillimetres(String answer, double millimetres) {
    assertThat(AfterTestQuestions.distance(answer)).contains(millimetres);
  }

  @Test
  void distance_withoutUnitOrNumber_isNone() {
    assertThat(AfterTestQuestions.distance("140")).isEmpty();
    assertThat(AfterTestQuestions.distance("far mm")).isEmpty();
  }
}
