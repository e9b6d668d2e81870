package io.github.platenwire.method;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.platenwire.emulate.BeamDevice;
import io.github.platenwire.emulate.BeamProgram;
import io.github.platenwire.emulate.BeamTruth;
import io.github.platenwire.emulate.EmulatedBeam;
import io.github.platenwire.method.MethodResult.Figure;
import io.github.platenwire.quantity.Unit;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SplitBeamRunTest {
  private static final double THREE_THOUSAND_POUNDS = Unit.POUND_FORCE.toBase(3000);

  private static List<BeamDevice> devices() {
    return List.of(
        BeamDevice.load(100, 5, 1),
        BeamDevice.gauge(0, 10, 0.0005, 0.0001),
        BeamDevice.gauge(1, 60, 0.0005, 0.0001));
  }

  private static BeamTruth truth(EmulatedBeam beam) {
    BeamProgram program =
        new BeamProgram(4).to(12_000, 400).hold(15).to(2_000, 800).hold(1).to(24_000, 400).hold(1);
    return new BeamTruth(beam, program);
  }

  private static EmulatedBeam poor() {
    return EmulatedBeam.withWidth(9_000, THREE_THOUSAND_POUNDS, 0.30);
  }

  private static EmulatedBeam well() {
    return EmulatedBeam.withWidth(9_000, THREE_THOUSAND_POUNDS, 0.03);
  }

  private static BeamBench bench() {
    return new BeamBench(BeamBench.SPLIT, BeamBench.beam(), devices());
  }

  private static Figure figure(BeamBench bench, String name) {
    return bench.run.finish().figure(name).orElseThrow();
  }

  @Test
  void send_loneWildLoad_entersNeitherPeakNorCurveAndIsListed() {
    BeamBench plain = bench().send(truth(poor()), 1);
    MethodResult untouched = plain.run.finish();
    long row = plain.rowAfter(30, 0);
    BeamBench bench = bench();
    bench.wild.put(row, 77.7);
    MethodResult result = bench.send(truth(poor()), 1).run.finish();
    assertThat(result.suspects()).containsExactly(row);
    assertThat(bench.happenings).contains("suspect load seq=" + row);
    assertThat(result.departures()).anyMatch(text -> text.startsWith("1 lone reading of the load"));
    assertThat(result.figure("peak-load").orElseThrow().exact())
        .isEqualTo(untouched.figure("peak-load").orElseThrow().exact());
    assertThat(result.curve().orElseThrow().points())
        .last()
        .matches(point -> point.newtons() < 25_000);
  }

  /** The crack opens under a falling load: an error of width tells nothing about the load. */
  @Test
  void finish_crackOpensUnderFallingLoad_saysWhyItsLoadHasNoUncertainty() {
    BeamBench bench = bench();
    for (int i = 0; i < 2_600; i++) {
      double seconds = i * 0.01;
      double load = Math.max(0, Math.min(seconds - 4, 12)) - Math.max(0, seconds - 16) * 0.1;
      // less stretch above 8 kN than below it: what is left once it is taken off falls with the
      // load
      double stretch = Math.min(load, 8) * 4e-4;
      double width = stretch + Math.max(0, seconds - 16.5) * 0.05;
      bench.give(0, Math.round(seconds * 1e6), load);
      bench.give(1, Math.round(seconds * 1e6) + 1_000, 0.1 + width);
      bench.give(2, Math.round(seconds * 1e6) + 2_000, 0.1 + width);
    }
    MethodResult result = bench.run.finish();
    assertThat(result.figure("load-at-0.30-mm").orElseThrow().uncertainty()).isEmpty();
    assertThat(result.departures())
        .anyMatch(
            words ->
                words.startsWith("No uncertainty is given of")
                    && words.contains("the load at a crack of 0.30 mm")
                    && words.contains("did not open with rising load there"));
  }

  /**
   * The bar slips: the load falls by a tenth while the crack opens on, and is then raised again.
   */
  @Test
  void give_loadFallsWhileTheCrackRuns_isAnEventAndStandsInTheSummary() {
    BeamBench bench = bench();
    for (int i = 0; i < 4_000; i++) {
      double seconds = i * 0.01;
      double load = Math.max(0, Math.min(seconds - 4, 15)) - (seconds > 22 ? 1.8 : 0);
      double width = Math.max(0, load - 9) * 0.01 + Math.max(0, Math.min(seconds - 21, 3)) * 0.08;
      bench.give(0, Math.round(seconds * 1e6), load);
      bench.give(1, Math.round(seconds * 1e6) + 1_000, 0.1 + width + (i % 2) * 0.0002);
      bench.give(2, Math.round(seconds * 1e6) + 2_000, 0.1 + width + (i % 2) * 0.0002);
    }
    MethodResult result = bench.run.finish();
    assertThat(bench.happenings)
        .filteredOn(text -> text.startsWith("load fell load=13.2"))
        .hasSize(1);
    assertThat(result.checks())
        .filteredOn(check -> check.name().equals("load-falls"))
        .singleElement()
        .satisfies(check -> assertThat(check.met()).isTrue())
        .satisfies(check -> assertThat(check.words()).contains("from 15.00 kN", "(3372 lbf)"));
  }

  @Test
  void send_poorlyBondedBeam_saysEverythingThatHappensInOrder() {
    BeamBench bench = bench().send(truth(poor()), 1);
    assertThat(bench.happenings.get(0)).startsWith("zero load=0.02").contains("unit=kN");
    assertThat(bench.happenings.get(1)).startsWith("zero gauge-a=0.1");
    assertThat(bench.happenings.get(2)).startsWith("zero gauge-b=0.1");
    assertThat(bench.happenings)
        .anyMatch(text -> text.startsWith("first crack departure load="))
        .anyMatch(text -> text.startsWith("first crack width=0.05 mm load="))
        .anyMatch(text -> text.startsWith("threshold 0.20 mm load="))
        .anyMatch(text -> text.equals("hold 1"))
        .anyMatch(text -> text.equals("cycle 1"))
        .anyMatch(text -> text.equals("stop width 0.6 mm"));
    assertThat(bench.run.ending()).contains(MethodRun.Ending.RANGE);
    MethodResult result = bench.run.finish();
    assertThat(result.figures().stream().map(Figure::name))
        .contains("residual-1", "creep-1", "stiffness-before", "stiffness-after", "work");
    assertThat(result.curve().orElseThrow().points()).hasSizeBetween(100, 401);
    assertThat(result.departures()).isEmpty();
  }

  /**
   * Common practice, no source: the same load opens a poorly bonded bar's crack many times wider.
   */
  @Test
  void finish_twoBeamsTenfoldApart_comeOutTenfoldWithinTheirInterval() {
    Figure wide = figure(bench().send(truth(poor()), 2), "width-at-3000-lbf");
    Figure narrow = figure(bench().send(truth(well()), 3), "width-at-3000-lbf");
    double ratio = wide.exact() / narrow.exact();
    double relative =
        Math.hypot(
            wide.uncertainty().orElseThrow().expanded() / wide.exact(),
            narrow.uncertainty().orElseThrow().expanded() / narrow.exact());
    // The program holds at 12 kN on the way, where each crack creeps by 5 % of its width there.
    double real =
        truth(poor()).widthAtLoad(THREE_THOUSAND_POUNDS)
            / truth(well()).widthAtLoad(THREE_THOUSAND_POUNDS);
    assertThat(real).isCloseTo(10, within(1e-6));
    assertThat(ratio).isCloseTo(10, within(10 * relative));
    assertThat(relative).isLessThan(0.15);
  }

  @ParameterizedTest
  @CsvSource({"STICKS, stuck", "FALLS_OFF, fell-off", "JUMPS, jumped", "FALLS_SILENT, silent"})
  void send_gaugeFailsInMidTest_saidAndLeftOutAndTestGoesOn(BeamDevice.Kind kind, String word) {
    List<BeamDevice> devices =
        List.of(devices().get(0), devices().get(1).failing(kind, 45), devices().get(2));
    BeamBench bench =
        new BeamBench(BeamBench.SPLIT, BeamBench.beam(), devices).send(truth(poor()), 4);
    assertThat(bench.happenings)
        .anyMatch(text -> text.startsWith("gauge lost gauge-a reason=" + word));
    assertThat(bench.run.view().crack().orElseThrow().restsOn()).isEqualTo("gauge-b");
    MethodResult result = bench.run.finish();
    assertThat(result.figure("load-at-0.40-mm")).isPresent();
    assertThat(String.join(" ", result.departures())).contains("gauge-a was left out", "gauge-b");
  }

  @Test
  void send_operatorUnloads_isNotTakenForALoadThatIsLost() {
    BeamProgram program = new BeamProgram(4).to(12_000, 400).to(0, 800).hold(10);
    BeamBench bench = bench().send(new BeamTruth(poor(), program), 5);
    assertThat(bench.run.ending()).isEmpty();
    assertThat(bench.happenings).noneMatch(text -> text.startsWith("load "));
  }

  @Test
  void accept_loadFallsWhileCrackRuns_fellThenLostThenTailOver() {
    LoadLost lost = new LoadLost(new LoadLost.Rule(0.5, 0.05, 0.05, 1_000_000, 2_000, 3_000_000));
    assertThat(lost.accept(0, 10_000, 0.2)).isEqualTo(LoadLost.News.NONE);
    assertThat(lost.accept(100_000, 9_000, 0.3)).isEqualTo(LoadLost.News.FELL);
    assertThat(lost.accept(200_000, 4_000, 0.6)).isEqualTo(LoadLost.News.NONE);
    assertThat(lost.accept(1_200_000, 4_000, 0.6)).isEqualTo(LoadLost.News.LOST);
    assertThat(lost.isTailOver(4_199_999)).isFalse();
    assertThat(lost.isTailOver(4_200_000)).isTrue();
  }

  /** Wedge of 20 degrees without friction: F / (2 tan 10 deg) = 2.8356 F, by hand. */
  @Test
  void splittingForce_knownAngles_asByHand() {
    SplittingForce force =
        new SplittingForce(Math.toRadians(20), new CrackRules.Wedge(0, Math.toRadians(1)));
    assertThat(force.of(1000)).isCloseTo(2835.64, within(0.01));
    double expected = 2.83564 * Math.toRadians(1) / Math.sqrt(3) / (Math.sin(0.174533) * 0.984808);
    assertThat(force.budget(1000, 0).combined()).isCloseTo(expected, within(1e-4));
  }

  @Test
  void finish_wedgeAngleGiven_splittingForceWithItsFormula() {
    Specimen beam = BeamBench.beam(Map.of(Dimension.WEDGE_ANGLE, 20.0));
    BeamBench bench = new BeamBench(BeamBench.SPLIT, beam, devices()).send(truth(well()), 6);
    MethodResult result = bench.run.finish();
    Figure force = result.figure("splitting-force").orElseThrow();
    assertThat(force.title()).contains("F / (2 tan(alpha/2 + phi))", "alpha 20 deg", "phi 3 deg");
    assertThat(force.exact() / result.figure("peak-load").orElseThrow().exact())
        .isCloseTo(1 / (2 * Math.tan(Math.toRadians(13))), within(1e-9));
  }

  @Test
  void view_besideAnEarlierCurve_tellsTheDifferenceOnFirstLoadingOnly() {
    VirginTable curve = bench().send(truth(well()), 7).run.finish().curve().orElseThrow();
    GhostCurve ghost = new GhostCurve("NA-PB-1", curve.points());
    BeamProgram program = new BeamProgram(4).to(13_000, 400);
    BeamBench rising = bench().send(new BeamTruth(poor(), program), 8);
    double wider =
        rising
            .run
            .view()
            .beside(ghost)
            .crack()
            .orElseThrow()
            .ghost()
            .orElseThrow()
            .widerMillimetres();
    assertThat(wider).isBetween(0.15, 0.30);
    BeamBench fallen = bench().send(new BeamTruth(poor(), program.to(6_000, 800)), 8);
    assertThat(fallen.run.view().beside(ghost).crack().orElseThrow().ghost())
        .isEqualTo(Optional.empty());
  }

  @Test
  void examine_wrongShapeOrNoGauge_refusedWithRemedy() {
    TestSetting bare =
        new TestSetting(
            Bench.START,
            Bench.ZONE,
            List.of(BeamBench.facts(devices().get(0), 0)),
            Optional.empty());
    assertThat(BeamBench.SPLIT.examine(Bench.cylinder(100, 200), bare))
        .hasSize(2)
        .allMatch(objection -> objection.weight() == Method.Weight.REFUSED);
    assertThatThrownBy(() -> BeamBench.SPLIT.start(BeamBench.beam(), bare))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("0 channels of length");
  }
}
