package io.github.platenwire.method;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.platenwire.quantity.Quantity;
import io.github.platenwire.quantity.UncertaintyBudget;
import io.github.platenwire.quantity.Unit;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class StrengthBudgetTest {
  private static final double STRENGTH = 31.83098861837907;

  private static UncertaintyBudget budget(
      OptionalDouble certificate, OptionalDouble resolution, double after) {
    return budget(certificate, OptionalDouble.empty(), resolution, after);
  }

  private static UncertaintyBudget budget(
      OptionalDouble certificate,
      OptionalDouble correction,
      OptionalDouble resolution,
      double after) {
    ChannelFacts channel =
        new ChannelFacts(
                "load",
                Quantity.FORCE,
                Unit.KILONEWTON,
                0,
                2000,
                resolution,
                5,
                OptionalDouble.empty(),
                certificate)
            .corrected(correction);
    Specimen specimen = new Bench.SpecimenBuilder().diameters(99.8, 100.2).build();
    Bench bench = new Bench(specimen, channel, 100);
    bench.hold(0, 2).ramp(250, 1.963).hold(20, 1).hold(after, 3);
    return Bench.figure(bench.run.finish(), "strength").uncertainty().orElseThrow();
  }

  private static double line(UncertaintyBudget budget, String start) {
    return budget.lines().stream()
        .filter(line -> line.source().startsWith(start))
        .findFirst()
        .orElseThrow()
        .contribution();
  }

  /** Each by hand from JCGM 100:2008 5.1 with f = 4 P/(pi d^2); rectangular: 4.3.7. */
  @Test
  void ofStrength_knownInputs_eachLineIsAsByHand() {
    UncertaintyBudget budget = budget(OptionalDouble.of(0.5), OptionalDouble.of(0.1), 20);
    double root3 = Math.sqrt(3);
    assertThat(line(budget, "load: calibration")).isCloseTo(STRENGTH * 0.0025, within(1e-9));
    assertThat(line(budget, "load: resolution"))
        .isCloseTo(STRENGTH / 250 * 0.05 / root3, within(1e-9));
    assertThat(line(budget, "load: peak between")).isCloseTo(0.25 * 0.01 / 2 / root3, within(2e-5));
    assertThat(line(budget, "diameter: step"))
        .isCloseTo(2 * STRENGTH / 100 * 0.125 / root3 / Math.sqrt(2), within(1e-9));
    // two diameters 0.4 mm apart: s = 0.4/sqrt 2, of the mean 0.2 mm
    assertThat(line(budget, "diameter: spread")).isCloseTo(2 * STRENGTH / 100 * 0.2, within(1e-9));
    assertThat(line(budget, "zero: noise")).isZero();
    assertThat(line(budget, "rounding")).isCloseTo(0.05 / root3, within(1e-12));
    double squares =
        budget.lines().stream().mapToDouble(l -> l.contribution() * l.contribution()).sum();
    assertThat(budget.expanded()).isCloseTo(2 * Math.sqrt(squares), within(1e-12));
    assertThat(budget.effectiveDegreesOfFreedom()).isFinite();
  }

  /** 0.3 % expanded (k = 2) are 0.15 % of the strength, beside the certificate's 0.25 %. */
  @Test
  void ofStrength_correctionWithResiduals_isALineOfItsOwn() {
    UncertaintyBudget budget =
        budget(OptionalDouble.of(0.5), OptionalDouble.of(0.3), OptionalDouble.of(0.1), 20);
    assertThat(budget.lines())
        .filteredOn(line -> line.source().startsWith("load: calibration certificate"))
        .extracting(UncertaintyBudget.Line::source)
        .containsExactly(
            "load: calibration certificate",
            "load: calibration certificate, residual of its correction");
    assertThat(line(budget, "load: calibration certificate, residual"))
        .isCloseTo(STRENGTH * 0.0015, within(1e-9));
    assertThat(line(budget, "load: calibration certificate"))
        .isCloseTo(STRENGTH * 0.0025, within(1e-9));
  }

  @Test
  void ofStrength_noCertificate_takesTheLimitOfTheMachine() {
    UncertaintyBudget budget = budget(OptionalDouble.empty(), OptionalDouble.empty(), 20);
    assertThat(line(budget, "load: no certificate"))
        .isCloseTo(STRENGTH * 0.01 / Math.sqrt(3), within(1e-9));
  }

  @Test
  void ofStrength_quietNearNoughtAfterTheBreak_takesTheDrift() {
    UncertaintyBudget budget = budget(OptionalDouble.of(0.5), OptionalDouble.of(0.1), 0.6);
    assertThat(line(budget, "zero: drift"))
        .isCloseTo(STRENGTH / 250 * 0.6 / Math.sqrt(3), within(1e-9));
  }

  /** A short cylinder, 150 mm on 100: what the correction brings is not in the figure before it. */
  @Test
  void ofUncorrected_shortCylinder_hasEveryLineButTheCorrection() {
    ChannelFacts channel =
        new ChannelFacts(
            "load",
            Quantity.FORCE,
            Unit.KILONEWTON,
            0,
            2000,
            OptionalDouble.of(0.1),
            5,
            OptionalDouble.empty(),
            OptionalDouble.of(0.5));
    Bench bench = new Bench(new Bench.SpecimenBuilder().length(150).build(), channel, 100);
    bench.hold(0, 2).ramp(250, 1.963).hold(20, 1).hold(20, 3);
    MethodResult result = bench.run.finish();
    UncertaintyBudget corrected = Bench.figure(result, "strength").uncertainty().orElseThrow();
    UncertaintyBudget before =
        Bench.figure(result, "strength-uncorrected").uncertainty().orElseThrow();
    assertThat(before.lines()).hasSize(corrected.lines().size() - 1);
    assertThat(before.lines()).noneMatch(line -> line.source().startsWith("correction"));
    // 0.96 is the printed factor at a ratio of 1.5
    assertThat(line(before, "load: calibration") * 0.96)
        .isCloseTo(line(corrected, "load: calibration"), within(1e-12));
  }
}
