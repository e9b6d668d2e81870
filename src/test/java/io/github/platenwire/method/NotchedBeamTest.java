package io.github.platenwire.method;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.platenwire.emulate.BeamDevice;
import io.github.platenwire.method.MethodResult.Figure;
import io.github.platenwire.toml.TomlException;
import java.util.List;
import java.util.Map;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class NotchedBeamTest {
  private static final Map<Dimension, Double> NOMINAL =
      Map.of(
          Dimension.WIDTH, 150.0,
          Dimension.DEPTH, 150.0,
          Dimension.NOTCH_DEPTH, 25.0,
          Dimension.SPAN, 500.0);

  /** EN 14651 (formula from memory), b 150, h_sp 125, l 500 mm: exact by hand. */
  @ParameterizedTest
  @CsvSource({"10, 3.2", "15, 4.8", "20, 6.4"})
  void strength_nominalBeam_asByHand(double kilonewtons, double megapascals) {
    assertThat(NotchedBeamFigures.strength(kilonewtons * 1000, 500, 150, 125))
        .isCloseTo(megapascals, within(1e-12));
  }

  /** Load on opening, noiseless: up to 15 kN at 0.04 mm, then a fall to 10 kN at 0.5 mm and on. */
  private static double load(double opening) {
    if (opening <= 0.04) {
      return 15 * opening / 0.04;
    }
    return opening <= 0.5 ? 15 - 5 * (opening - 0.04) / 0.46 : 10 - 4 * (opening - 0.5) / 3.0;
  }

  private static double opening(double seconds) {
    if (seconds < 4) {
      return 0;
    }
    double slow = 0.05 / 60 * (seconds - 4);
    return slow <= 0.1 ? slow : 0.1 + 0.2 / 60 * (seconds - 4 - 120);
  }

  private static BeamBench test(Specimen specimen) {
    return test(BeamBench.NOTCHED, specimen);
  }

  private static BeamBench test(Method method, Specimen specimen) {
    return test(method, specimen, NotchedBeamTest::opening);
  }

  private static BeamBench test(Method method, Specimen specimen, DoubleUnaryOperator openingAt) {
    BeamBench bench =
        new BeamBench(
            method, specimen, List.of(BeamDevice.load(20, 0, 0), BeamDevice.gauge(0, 20, 0, 0)));
    for (int i = 0; i < 20 * 1400 && bench.run.ending().isEmpty(); i++) {
      double seconds = i / 20.0;
      double opening = openingAt.applyAsDouble(seconds);
      bench.give(0, i * 50_000L, load(opening));
      bench.give(1, i * 50_000L, opening);
    }
    return bench;
  }

  @Test
  void finish_knownCurve_limitAndResidualStrengthsByTheStandard() {
    BeamBench bench = test(BeamBench.beam(NOMINAL));
    assertThat(bench.run.ending()).contains(MethodRun.Ending.RANGE);
    MethodResult result = bench.run.finish();
    assertStrength(result, "f-lop", 15);
    assertStrength(result, "f-r1", 10);
    assertStrength(result, "f-r2", 10 - 4.0 / 3);
    assertStrength(result, "f-r3", 10 - 8.0 / 3);
    assertStrength(result, "f-r4", 6);
    assertThat(result.checks().stream().filter(c -> c.name().startsWith("opening-rate")))
        .hasSize(2)
        .allMatch(MethodResult.Check::met);
  }

  /**
   * EN 14651 (formula from memory): deflection = 0.85 CMOD + 0.04 mm; its values at these openings
   * computed outside this program. The standard's table has them to 0.01 mm.
   */
  @ParameterizedTest
  @CsvSource({
    "0.05, 0.0825",
    "0.1, 0.125",
    "0.2, 0.21",
    "0.5, 0.465",
    "1.5, 1.315",
    "2.5, 2.165",
    "3.5, 3.015",
    "4.0, 3.44"
  })
  void at_openingsOfTheTable_isTheDeflection(double opening, double deflection) {
    assertThat(new CrackRules.Deflection(0.85, 0.04).at(opening))
        .isCloseTo(deflection, within(1e-12));
  }

  @Test
  void finish_deflectionAskedFor_standsBesideEachResidualStrength() {
    MethodResult result = test(BeamBench.beam(NOMINAL)).run.finish();
    assertThat(result.figure("deflection-r1").orElseThrow().exact())
        .isCloseTo(0.465, within(1e-12));
    assertThat(result.figure("deflection-r4").orElseThrow().rounded()).isEqualTo("3.015");
    assertThat(result.figure("deflection-r4").orElseThrow().rows())
        .isEqualTo(result.figure("f-r4").orElseThrow().rows());
  }

  @Test
  void finish_deflectionNotAskedFor_isNotThere() throws TomlException {
    String text = BeamBench.NOTCHED.text();
    String without = text.replaceFirst("(?s)\\[deflection].*?(?=\\[asked])", "");
    BeamBench bench = test(Method.parse(without, "without"), BeamBench.beam(NOMINAL));
    MethodResult result = bench.run.finish();
    assertThat(result.figure("f-r1")).isPresent();
    assertThat(result.figure("deflection-r1")).isEmpty();
  }

  /** EN 14651 (from memory): 0.05 mm/min to an opening of 0.1 mm, then 0.2 mm/min. */
  @Test
  void finish_openedTooFast_saysSoForThatBand() {
    BeamBench bench =
        test(BeamBench.NOTCHED, BeamBench.beam(NOMINAL), seconds -> opening(4 + 2 * (seconds - 4)));
    MethodResult result = bench.run.finish();
    assertThat(result.checks().stream().filter(c -> c.name().startsWith("opening-rate")))
        .hasSize(2)
        .noneMatch(MethodResult.Check::met);
    assertThat(result.departures()).anyMatch(words -> words.contains("mm/min"));
  }

  private static void assertStrength(MethodResult result, String name, double kilonewtons) {
    Figure figure = result.figure(name).orElseThrow();
    double expected = kilonewtons * 0.32;
    assertThat(figure.exact()).as(name).isCloseTo(expected, within(0.003 * expected));
    assertThat(figure.uncertainty().orElseThrow().expanded()).isBetween(0.001, 0.2);
    assertThat(figure.rows()).isNotEmpty();
  }

  @Test
  void examine_sizesMissingOrOff_refusedOrDeparture() {
    BeamBench bench =
        test(
            BeamBench.beam(
                Map.of(
                    Dimension.WIDTH,
                    150.0,
                    Dimension.DEPTH,
                    160.0,
                    Dimension.NOTCH_DEPTH,
                    25.0,
                    Dimension.SPAN,
                    500.0)));
    assertThat(bench.run.finish().departures())
        .anyMatch(words -> words.contains("depth is 160 mm"));
    TestSetting setting =
        new TestSetting(
            Bench.START,
            Bench.ZONE,
            List.of(
                BeamBench.facts(BeamDevice.load(20, 0, 0), 0),
                BeamBench.facts(BeamDevice.gauge(0, 20, 0, 0), 1)),
            java.util.Optional.empty());
    assertThat(BeamBench.NOTCHED.examine(BeamBench.beam(), setting))
        .filteredOn(objection -> objection.weight() == Method.Weight.REFUSED)
        .hasSize(4)
        .allMatch(objection -> objection.problem().contains("missing"));
  }
}
