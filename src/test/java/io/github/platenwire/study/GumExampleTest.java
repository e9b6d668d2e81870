package io.github.platenwire.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.platenwire.statistics.StudentT;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What JCGM 100:2008 (GUM) prints of coverage factors. */
class GumExampleTest {
  /** H.1, end gauge: t99(16) = 2.92 and U = 93 nm out of 32 nm (from memory; t also computed). */
  @Test
  void twoSided_endGauge_isAsInTheGuide() {
    double t = StudentT.twoSided(0.99, 16);
    assertThat(t).isCloseTo(2.92078, within(5e-6));
    assertThat(Math.rint(t * 32)).isEqualTo(93);
  }

  /** Table G.2, from memory, each computed too. */
  @ParameterizedTest
  @CsvSource({
    "1, 0.95, 12.71",
    "2, 0.9545, 4.53",
    "2, 0.9973, 19.21",
    "5, 0.99, 4.03",
    "10, 0.95, 2.23",
    "16, 0.99, 2.92",
    "20, 0.9545, 2.13",
    "50, 0.9973, 3.16",
    "Infinity, 0.9545, 2.000",
    "Infinity, 0.9973, 3.000",
  })
  void twoSided_tableG2_agrees(double degrees, double level, double printed) {
    assertThat(StudentT.twoSided(level, degrees)).isCloseTo(printed, within(0.0051));
  }
}
