package io.github.platenwire.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.platenwire.quantity.Unit;
import io.github.platenwire.statistics.Interval;
import org.junit.jupiter.api.Test;

class NiceStepsTest {
  @Test
  void within_loads_areRoundInTheirUnitAndInTheRange() {
    assertThat(NiceSteps.within(new Interval(0, 17_300), Unit.KILONEWTON, 14))
        .containsExactly(2000, 4000, 6000, 8000, 10_000, 12_000, 14_000, 16_000);
    assertThat(NiceSteps.within(new Interval(900, 2100), Unit.KILONEWTON, 14))
        .startsWith(900)
        .endsWith(2100)
        .hasSize(13);
  }

  @Test
  void within_endsOfTheRange_areTaken() {
    double[] widths = NiceSteps.within(new Interval(0.1, 0.5), Unit.MILLIMETRE, 4);
    assertThat(widths).hasSize(2);
    assertThat(widths[0]).isCloseTo(0.2, within(1e-12));
    for (double width : NiceSteps.within(new Interval(0.01, 0.0101), Unit.INCH, 5)) {
      assertThat(width).isBetween(0.01, 0.0101);
    }
  }
}
