package io.github.platenwire.emulate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.github.platenwire.quantity.Unit;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LineLayoutTest {
  private static String line(LineLayout layout, long counts, boolean over) {
    return new String(layout.line(counts, over), StandardCharsets.US_ASCII);
  }

  @Test
  void line_shippedLayouts_areExact() {
    assertThat(line(LineLayout.POUNDS, 12_345, false)).isEqualTo("+0012345 lbf\r\n");
    assertThat(line(LineLayout.POUNDS, -1, false)).isEqualTo("-0000001 lbf\r\n");
    assertThat(line(LineLayout.KILONEWTONS, 12_345, false)).isEqualTo("+0123.45 kN\r\n");
    assertThat(line(LineLayout.KILONEWTONS, -5, false)).isEqualTo("-0000.05 kN\r\n");
    assertThat(line(LineLayout.KILONEWTONS, 0, true)).isEqualTo("+0000.00 kN\r\n");
    assertThat(line(LineLayout.STATUS_KILONEWTONS, 12_345, false)).isEqualTo("ST,+00123.45,kN\r\n");
    assertThat(line(LineLayout.STATUS_KILONEWTONS, 9_999_999, true)).isEqualTo("OL,-------,kN\r\n");
  }

  @Test
  void line_decimalCommaAndOtherTerminator_areExact() {
    LineLayout layout = new LineLayout(Optional.empty(), 3, 1, true, ' ', Unit.TONNE_FORCE, "\n");

    assertThat(line(layout, -12, false)).isEqualTo("-001,2 tf\n");
    assertThat(layout.greatestCounts()).isEqualTo(9999);
  }

  @Test
  void line_moreThanTheDigitsShow_refuses() {
    assertThatThrownBy(() -> LineLayout.KILONEWTONS.line(1_000_000, false))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("too great for the digits, counts=1000000 greatest=999999");
  }

  @Test
  void new_partsThatClash_refuses() {
    assertThatThrownBy(
            () -> new LineLayout(Optional.empty(), 4, 2, true, ',', Unit.KILONEWTON, "\n"))
        .hasMessageContaining("comma");
    assertThatThrownBy(() -> new LineLayout(Optional.empty(), 4, 2, false, ' ', Unit.POUND, "\n"))
        .hasMessageContaining("unit=lb");
    assertThatThrownBy(
            () -> new LineLayout(Optional.empty(), 4, 2, false, ' ', Unit.KILONEWTON, "x"))
        .hasMessageContaining("control characters");
    assertThatThrownBy(
            () -> new LineLayout(Optional.empty(), 4, 2, false, ' ', Unit.KILONEWTON, ""))
        .hasMessageContaining("terminator length");
  }

  /**
   * Shown values by the definitions of the units: 1 lbf = 4.4482216152605 N (from the international
   * pound and standard gravity); ties go to the even step.
   */
  @ParameterizedTest
  @CsvSource({
    "4448.2216152605, POUNDS, 10, 1000",
    "4470.4627233368, POUNDS, 10, 1000",
    "4470.5, POUNDS, 10, 1010",
    "1000, POUNDS, 1, 225",
    "123449, KILONEWTONS, 0.01, 12345",
    "123424, KILONEWTONS, 0.05, 12340",
    "123426, KILONEWTONS, 0.05, 12345",
    "-123449, KILONEWTONS, 0.1, -12340",
    "5e6, KILONEWTONS, 0.05, 150000",
    "-5e6, KILONEWTONS, 0.05, -150000"
  })
  void shown_load_isQuantisedAndHeldAtCapacity(
      double newtons, String layout, String step, long counts) {
    LineLayout lines = layout.equals("POUNDS") ? LineLayout.POUNDS : LineLayout.KILONEWTONS;
    EmulatedIndicator indicator = EmulatedIndicator.perfect(lines, new BigDecimal(step), 1.5e6, 10);

    assertThat(indicator.shownCounts(newtons)).isEqualTo(counts);
  }

  @Test
  void newIndicator_resolutionOrCapacityNotOfTheLayout_refuses() {
    assertThatThrownBy(
            () ->
                EmulatedIndicator.perfect(LineLayout.KILONEWTONS, new BigDecimal("0.005"), 1e6, 10))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("resolution=0.005 decimals=2");
    assertThatThrownBy(
            () -> EmulatedIndicator.perfect(LineLayout.KILONEWTONS, BigDecimal.ZERO, 1e6, 10))
        .hasMessageContaining("must be positive");
    assertThatThrownBy(
            () -> EmulatedIndicator.perfect(LineLayout.KILONEWTONS, BigDecimal.ONE, 2e7, 10))
        .hasMessageContaining("capacity does not fit the digits");
  }
}
