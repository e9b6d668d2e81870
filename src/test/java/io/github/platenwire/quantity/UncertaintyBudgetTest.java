package io.github.platenwire.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.platenwire.quantity.UncertaintyBudget.Line;
import java.util.List;
import org.junit.jupiter.api.Test;

class UncertaintyBudgetTest {
  private static final double INF = Double.POSITIVE_INFINITY;

  /**
   * JCGM 100:2008, H.1 (end gauge), contributions in nanometres; the inputs as the uncertainty
   * library GTC has them in docs/API/GUM_H1.rst and examples/GUM_H1.py; u(d) = 9.7 with 25.6
   * degrees of freedom from memory, 9.682 and 25.64 when computed.
   */
  private static final UncertaintyBudget END_GAUGE =
      new UncertaintyBudget(
          List.of(
              new Line("standard", 25, 18),
              new Line("comparison, three effects in one", 9.7, 25.6),
              new Line("difference in expansion", 50.000623e6 * 0.1 * 1e-6 / Math.sqrt(3), 50),
              new Line(
                  "difference in temperature", 50.000623e6 * 11.5e-6 * 0.05 / Math.sqrt(3), 2)));

  @Test
  void combined_endGauge_isAsInTheGuide() {
    // 31.669 in GTC docs/API/GUM_H1.rst; 32 nm in the guide
    assertThat(END_GAUGE.combined()).isCloseTo(31.669, within(0.001));
    assertThat(END_GAUGE.expanded()).isEqualTo(2 * END_GAUGE.combined());
  }

  @Test
  void effectiveDegreesOfFreedom_endGauge_isAsInTheGuide() {
    // 16.7 in the guide, from memory; 16.763 when computed outside this program
    assertThat(END_GAUGE.effectiveDegreesOfFreedom()).isCloseTo(16.763, within(0.02));
  }

  @Test
  void effectiveDegreesOfFreedom_onlyKnownEstimates_isInfinite() {
    UncertaintyBudget budget = new UncertaintyBudget(List.of(new Line("a", 3, INF)));
    assertThat(budget.effectiveDegreesOfFreedom()).isInfinite();
  }

  /** EA-4/02 S2, 10 kg weight, milligrams: from memory u = 29.3; 29.2617 when computed. */
  @Test
  void combined_tenKilogramWeight_isAsPublished() {
    double rectangular10 = 10 / Math.sqrt(3);
    UncertaintyBudget budget =
        new UncertaintyBudget(
            List.of(
                new Line("standard", 22.5, INF),
                new Line("drift", 15 / Math.sqrt(3), INF),
                new Line("repeatability", 25 / Math.sqrt(3), INF),
                new Line("eccentricity", rectangular10, INF),
                new Line("buoyancy", rectangular10, INF)));
    assertThat(budget.combined()).isCloseTo(29.2617, within(5e-5));
  }

  @Test
  void combined_noLines_isNought() {
    assertThat(new UncertaintyBudget(List.of()).combined()).isZero();
    assertThat(new UncertaintyBudget(List.of()).effectiveDegreesOfFreedom()).isInfinite();
  }
}
