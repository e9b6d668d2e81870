package io.github.platenwire.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RoundingTest {
  /**
   * ISO 80000-1 Annex B rule A, from memory; IBM ROUNDTOEVEN page; concretebasics.org (IS 2:1960);
   * MPa and psi rows by the ASTM E29 rule.
   */
  @ParameterizedTest
  @CsvSource({
    "12.223, 0.1, 12.2",
    "12.251, 0.1, 12.3",
    "12.275, 0.1, 12.3",
    "1222.3, 10, 1220",
    "1225.1, 10, 1230",
    "1227.5, 10, 1230",
    "12.25, 0.1, 12.2",
    "12.35, 0.1, 12.4",
    "1225.0, 10, 1220",
    "1235.0, 10, 1240",
    "23.5, 1, 24",
    "24.5, 1, 24",
    "-23.5, 1, -24",
    "-24.5, 1, -24",
    "4.36, 1, 4",
    "2.355, 1, 2",
    "15.205, 0.1, 15.2",
    "9.625, 1, 10",
    "2.651, 0.1, 2.7",
    "0.3552, 0.01, 0.36",
    "12.545001, 0.01, 12.55",
    "4385, 10, 4380",
    "4375, 10, 4380",
    "27.55, 0.1, 27.6",
    "27.45, 0.1, 27.4",
    "28.25, 0.1, 28.2",
    "28.35, 0.1, 28.4",
    "4.275, 0.05, 4.30",
    "12.254, 0.1, 12.3",
  })
  void halfEven_publishedValue_roundsAsPrinted(double value, String step, String expected) {
    assertThat(Rounding.halfEven(value, new BigDecimal(step)).toPlainString()).isEqualTo(expected);
  }

  @Test
  void halfEven_stepNotPositive_refuses() {
    assertThatThrownBy(() -> Rounding.halfEven(1.0, BigDecimal.ZERO))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
