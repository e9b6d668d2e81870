package io.github.platenwire.method;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.platenwire.method.Companions.Conditions;
import io.github.platenwire.method.Companions.Verdict;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CompanionsTest {
  private final Companions companions = Bench.METHOD.companions().orElseThrow();

  /** Ranges printed in ASTM C39, from memory; beyond three, C670's multipliers, from memory. */
  @ParameterizedTest
  @CsvSource({
    "LABORATORY, 150, 2, 6.6", "LABORATORY, 150, 3, 7.8", "FIELD, 152.4, 2, 8.0",
    "FIELD, 152.4, 3, 9.5", "LABORATORY, 100, 2, 9.0", "LABORATORY, 101.6, 3, 10.6",
    "LABORATORY, 150, 4, 8.6", "LABORATORY, 150, 5, 9.4", "LABORATORY, 150, 6, 9.6",
    "LABORATORY, 100, 7, 13.4", "LABORATORY, 100, 8, 13.8", "LABORATORY, 100, 9, 14.1",
    "LABORATORY, 100, 10, 14.4",
  })
  void judge_printedSize_hasThePrintedLimit(
      Conditions conditions, double diameter, int count, double limit) {
    Verdict verdict =
        companions.judge(conditions, diameter, new ArrayList<>(Collections.nCopies(count, 30.0)));
    assertThat(verdict.limitPercent()).hasValueCloseTo(limit, within(1e-12));
    assertThat(verdict.within()).contains(true);
  }

  @Test
  void judge_withinTheLimit_saysSoInBothUnits() {
    Verdict verdict = companions.judge(Conditions.LABORATORY, 100, List.of(31.2, 31.8, 32.5));
    // mean 31.8333, range 1.3: 4.08 %, by hand
    assertThat(verdict.words())
        .isEqualTo(
            "3 companions, range 4.1 % of the mean 31.8 MPa (4620 psi), limit 10.6 %: within");
    assertThat(verdict.meanRounded()).isEqualTo("31.8");
    assertThat(verdict.meanRoundedPsi()).isEqualTo("4620");
  }

  @Test
  void judge_beyondTheLimit_saysSo() {
    Verdict verdict = companions.judge(Conditions.LABORATORY, 150, List.of(30.0, 32.2));
    assertThat(verdict.within()).contains(false);
    assertThat(verdict.words())
        .endsWith("range 7.1 % of the mean 31.1 MPa (4510 psi), limit 6.6 %: beyond");
  }

  @Test
  void judge_roundsToTheLimit_isWithin() {
    // 6.64 % prints as 6.6 %
    Verdict verdict = companions.judge(Conditions.LABORATORY, 150, List.of(96.68, 103.32));
    assertThat(verdict.rangePercent()).isCloseTo(6.64, within(1e-9));
    assertThat(verdict.within()).contains(true);
  }

  @Test
  void judge_smallCylindersInTheField_saysThatNoLimitIsPrinted() {
    Verdict verdict = companions.judge(Conditions.FIELD, 100, List.of(30.0, 32.0));
    assertThat(verdict.limitPercent()).isEmpty();
    assertThat(verdict.within()).isEmpty();
    assertThat(verdict.words()).contains("no limit is printed for 2 of this size under field");
  }

  @Test
  void judge_elevenCompanions_haveNoLimit() {
    Verdict verdict = companions.judge(Conditions.LABORATORY, 150, Collections.nCopies(11, 30.0));
    assertThat(verdict.limitPercent()).isEmpty();
  }

  @Test
  void judge_single_hasNoRangeYet() {
    Verdict verdict = companions.judge(Conditions.LABORATORY, 150, List.of(30.0));
    assertThat(verdict.words()).isEqualTo("1 companion so far, 30.0 MPa (4350 psi): no range yet");
    assertThat(verdict.within()).isEmpty();
  }

  @Test
  void judge_noneOrNotAboveNought_isRefused() {
    assertThatThrownBy(() -> companions.judge(Conditions.FIELD, 150, List.of()))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> companions.judge(Conditions.FIELD, 150, List.of(30.0, Double.NaN)))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
