package io.github.platenwire.method;

import static io.github.platenwire.method.Bench.check;
import static io.github.platenwire.method.Bench.figure;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.platenwire.quantity.Quantity;
import io.github.platenwire.quantity.UncertaintyBudget;
import io.github.platenwire.quantity.Unit;
import io.github.platenwire.reading.Quality;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

/** One cylinder in cycles, reading by reading, with curves that can be computed by hand. */
class ModulusRunTest {
  private static final double AREA = Math.PI * 150 * 150 / 4;
  private static final long INTERVAL_MICROS = 50_000;

  private static final GaugeMount PLAIN = GaugeMount.PLAIN;
  private static final GaugeMount ACROSS = new GaugeMount(true, true, OptionalDouble.empty(), 1);

  private final List<String> happenings = new ArrayList<>();
  private MethodRun run = start(specimen(30), load(), strain(PLAIN));
  private DoubleUnaryOperator curve = ModulusRunTest::example;
  private DoubleUnaryOperator reading = microstrain -> microstrain;
  private double poisson = Double.NaN;
  private double stress;
  private long micros;
  private long seq;
  private LiveView between = run.view();

  /**
   * ASTM C469 example (computed outside this program): strength 30 MPa, S2 12.0 MPa, S1 2.0 MPa at
   * 50 microstrain, 450 microstrain at S2 give 25 000 MPa. This is the straight line through both
   * points; below 0.75 MPa it has no strain.
   */
  private static double example(double stress) {
    return Math.max(0, stress - 0.75) / 0.025;
  }

  private static Specimen specimen(double strength) {
    return new Bench.SpecimenBuilder()
        .diameters(150.0, 150.0)
        .length(300)
        .sizes(Map.of(Dimension.COMPANION_STRENGTH, strength))
        .build();
  }

  private static ChannelFacts load() {
    return Bench.channel(Unit.KILONEWTON, 2000, 5);
  }

  private static ChannelFacts strain(GaugeMount mount) {
    return gauge("strain", Quantity.STRAIN, Unit.MICROSTRAIN, 5000, mount);
  }

  private static ChannelFacts dial(String name, GaugeMount mount) {
    return gauge(name, Quantity.LENGTH, Unit.MILLIMETRE, 5, mount);
  }

  private static ChannelFacts gauge(
      String name, Quantity quantity, Unit unit, double range, GaugeMount mount) {
    return new ChannelFacts(
            name,
            quantity,
            unit,
            -range,
            range,
            OptionalDouble.empty(),
            range,
            OptionalDouble.empty(),
            OptionalDouble.of(0.6))
        .mounted(Optional.of(mount));
  }

  private static MethodRun start(Specimen specimen, ChannelFacts... channels) {
    return ModulusBench.METHOD.start(specimen, Bench.setting(channels));
  }

  private void send() {
    give(0, stress * AREA / 1000);
    give(1, reading.applyAsDouble(curve.applyAsDouble(stress)));
    if (!Double.isNaN(poisson)) {
      give(2, poisson * curve.applyAsDouble(stress) * 1e-6 * 150);
    }
    micros += INTERVAL_MICROS;
  }

  private void give(int channel, double value) {
    run.reading(++seq, micros, channel, value, Quality.OK);
    run.takeHappenings().forEach(happening -> happenings.add(happening.text()));
  }

  private ModulusRunTest hold(double seconds) {
    for (long until = micros + Math.round(seconds * 1e6); micros < until; ) {
      send();
    }
    return this;
  }

  private ModulusRunTest to(double target, double rate) {
    double step = Math.signum(target - stress) * rate * INTERVAL_MICROS * 1e-6;
    while (Math.abs(target - stress) > Math.abs(step)) {
      stress += step;
      send();
      if (stress > 6 && stress < 6.1) {
        between = run.view();
      }
    }
    stress = target;
    send();
    return this;
  }

  private ModulusRunTest cycles(int count, double top) {
    hold(3);
    for (int i = 0; i < count; i++) {
      to(top, 0.25).hold(0.5).to(0, 1).hold(2);
    }
    return this;
  }

  @Test
  void finish_publishedExample_givesThePublishedModulus() {
    MethodResult result = cycles(3, 12.3).run.finish();
    MethodResult.Figure modulus = figure(result, "modulus");
    assertThat(modulus.exact()).isCloseTo(25_000, within(0.01));
    assertThat(modulus.rounded()).isEqualTo("25000");
    // 25 000 MPa are 3.626 million psi; to 50 000 psi (C469)
    assertThat(modulus.inchPoundRounded()).isEqualTo("3650000");
    assertThat(figure(result, "stress-low-cycle-2").exact()).isCloseTo(2, within(1e-6));
    assertThat(figure(result, "stress-high-cycle-2").exact()).isCloseTo(12, within(1e-9));
    assertThat(figure(result, "strain-high-cycle-3").exact()).isCloseTo(450, within(1e-3));
    assertThat(result.checks()).allMatch(MethodResult.Check::met);
    assertThat(result.departures()).isEmpty();
    assertThat(check(result, "rate-cycle-2").words())
        .contains("within 0.20 to 0.30 MPa/s for 100 %");
    assertThat(modulus.rows()).isNotEmpty().allMatch(row -> row > 0 && row <= seq);
  }

  /** By hand, to 200 MPa (C469): 25 100 is a tie, and 125 steps are odd, 126 even. */
  @Test
  void finish_modulusAtATie_isRoundedToTheEvenStep() {
    assertThat(BothUnits.rounded(25_100, "200")).isEqualTo("25200");
    assertThat(BothUnits.rounded(25_300, "200")).isEqualTo("25200");
    assertThat(BothUnits.rounded(25_300.1, "200")).isEqualTo("25400");
  }

  @Test
  void reading_threeCycles_tellTheirStoryAndEnd() {
    cycles(3, 12.3);
    assertThat(run.ending()).contains(MethodRun.Ending.COMPLETE);
    assertThat(happenings)
        .hasSize(11)
        .startsWith("zero load=0 unit=kN n=21", "loading")
        .contains(
            "mark first cycle=1 strain=50.0 unit=um/m load=35.3429 unit=kN",
            "mark second cycle=3 strain=450.0 unit=um/m load=212.058 unit=kN modulus=25000 unit=MPa",
            "cycle end=1",
            "cycle end=2",
            "cycle end=3");
  }

  @Test
  void view_betweenTheMarks_showsWhatComesNext() {
    hold(3).to(12.3, 0.25).hold(0.5).to(0, 1).hold(2).to(9, 0.25);
    assertThat(between.phase()).isEqualTo(LiveView.Phase.LOADING);
    assertThat(between.bandApplies()).isTrue();
    assertThat(between.rateMegapascalsPerSecond()).isCloseTo(0.25, within(1e-6));
    ChordPart chord = between.chord().orElseThrow();
    assertThat(chord.cycle()).isEqualTo(2);
    assertThat(chord.planned()).isEqualTo(3);
    assertThat(chord.next()).isEqualTo(ChordPart.Next.SECOND_MARK);
    assertThat(chord.secondNewtons()).isCloseTo(12 * AREA, within(1e-6));
    assertThat(chord.lastMegapascals()).isCloseTo(25_000, within(0.01));
    assertThat(chord.lastCycle()).isEqualTo(1);
    assertThat(chord.strain()).isBetween(200e-6, 215e-6);
    assertThat(chord.across()).isEmpty();
  }

  /** A gauge on a lever of 2 over 200 mm, falling under load, shows 0.4 mm less for 0.001. */
  @Test
  void finish_displacementGaugeOnALever_givesTheSameModulus() {
    GaugeMount mount = new GaugeMount(false, false, OptionalDouble.of(200), 2);
    run = start(specimen(30), load(), dial("dial", mount));
    reading = microstrain -> 1.5 - microstrain * 1e-6 * 400;
    MethodResult result = cycles(3, 12.3).run.finish();
    assertThat(figure(result, "modulus").exact()).isCloseTo(25_000, within(0.01));
    assertThat(figure(result, "modulus").uncertainty().orElseThrow().lines())
        .extracting(UncertaintyBudget.Line::source)
        .contains(
            "load: calibration certificate",
            "gauges along: calibration certificate",
            "gauges along: gauge length",
            "gauges along: ratio of the lever",
            "diameter: step of the measuring",
            "rounding of the result");
  }

  /**
   * C469 (from memory): nu = (et2 - et1)/(e2 - 0.000050), to 0.01; the gauge length is the
   * diameter.
   */
  @Test
  void finish_gaugeAcross_givesPoissonsRatio() {
    run = start(specimen(30), load(), strain(PLAIN), dial("across", ACROSS));
    poisson = 0.204;
    MethodResult result = cycles(3, 12.3).run.finish();
    assertThat(figure(result, "poisson").exact()).isCloseTo(0.204, within(1e-6));
    assertThat(figure(result, "poisson").rounded()).isEqualTo("0.20");
    assertThat(figure(result, "poisson").unit()).isEqualTo(Unit.ONE);
  }

  /** By hand: certificates of 0.5 and 0.6 % (k = 2), diameter 150 mm read twice to 0.25 mm. */
  @Test
  void finish_quietReadings_budgetIsAsByHand() {
    List<UncertaintyBudget.Line> lines =
        figure(cycles(3, 12.3).run.finish(), "modulus").uncertainty().orElseThrow().lines();
    assertLine(lines, "load: calibration certificate", 25_000 * 0.0025);
    assertLine(lines, "gauges along: calibration certificate", 25_000 * 0.003);
    assertLine(
        lines,
        "diameter: step of the measuring",
        2 * 25_000.0 / 150 * 0.25 / 2 / Math.sqrt(3) / Math.sqrt(2));
    assertLine(lines, "rounding of the result", 100 / Math.sqrt(3));
  }

  private static void assertLine(
      List<UncertaintyBudget.Line> lines, String source, double contribution) {
    assertThat(lines)
        .anySatisfy(
            line -> {
              assertThat(line.source()).isEqualTo(source);
              assertThat(line.contribution()).isCloseTo(contribution, within(0.01));
            });
  }

  @Test
  void finish_firstCycleSlack_isNotInTheMean() {
    hold(3);
    curve = stress -> example(stress) * 1.2;
    to(12.3, 0.25).hold(0.5).to(0, 1).hold(2);
    curve = ModulusRunTest::example;
    to(12.3, 0.25).hold(0.5).to(0, 1).hold(2).to(12.3, 0.25).hold(0.5).to(0, 1).hold(2);
    MethodResult result = run.finish();
    assertThat(figure(result, "modulus-cycle-1").exact()).isLessThan(21_500);
    assertThat(figure(result, "modulus").exact()).isCloseTo(25_000, within(0.01));
  }

  @Test
  void finish_loadedTooFar_isSaidAtOnceAndADeparture() {
    MethodResult result = cycles(3, 14.4).run.finish();
    assertThat(happenings).anyMatch(text -> text.startsWith("beyond cycle=1 load="));
    assertThat(check(result, "beyond").met()).isFalse();
    assertThat(result.departures())
        .anyMatch(words -> words.contains("48.0 % of the companions' strength"));
  }

  @Test
  void finish_turnedJustBeforeTheMark_countsWhatItReachedAndSaysSo() {
    MethodResult result = cycles(3, 11.8).run.finish();
    assertThat(figure(result, "modulus").exact()).isCloseTo(25_000, within(30.0));
    assertThat(result.departures()).anyMatch(words -> words.startsWith("Cycle 2 went only to 11."));
  }

  @Test
  void finish_turnedFarBeforeTheMark_isNoCycle() {
    hold(3).to(8, 0.25).to(0, 1).hold(2);
    MethodResult result = cycles(3, 12.3).run.finish();
    assertThat(happenings).anyMatch(text -> text.startsWith("turned back load="));
    assertThat(figure(result, "modulus").exact()).isCloseTo(25_000, within(0.01));
    assertThat(result.departures())
        .anyMatch(words -> words.startsWith("The load came down again between the two marks once"));
  }

  @Test
  void finish_endedByTheOperatorAfterTwoCycles_hasAModulusAndSaysWhatIsMissing() {
    MethodResult result = cycles(2, 12.3).run.finish();
    assertThat(run.ending()).isEmpty();
    assertThat(figure(result, "modulus").exact()).isCloseTo(25_000, within(0.01));
    assertThat(check(result, "cycles").met()).isFalse();
    assertThat(result.departures()).anyMatch(words -> words.startsWith("2 of 3 loading cycles"));
  }

  @Test
  void finish_gaugeReadingTheWrongWay_hasNoModulusAndSaysSo() {
    reading = microstrain -> -microstrain;
    MethodResult result = cycles(3, 12.3).run.finish();
    assertThat(result.figure("modulus")).isEmpty();
    assertThat(happenings).anyMatch(text -> text.startsWith("no strain cycle=1 strain=-4"));
    assertThat(result.departures())
        .anyMatch(words -> words.contains("'under-load' in the rig file"));
  }

  @Test
  void finish_tooFast_isNotMetInBothUnits() {
    hold(3);
    for (int i = 0; i < 3; i++) {
      to(12.3, 0.6).hold(0.5).to(0, 1).hold(2);
    }
    MethodResult result = run.finish();
    assertThat(check(result, "rate-cycle-3").met()).isFalse();
    assertThat(result.departures()).anyMatch(words -> words.contains("0.60 MPa/s (87 psi/s)"));
  }

  @Test
  void finish_cyclesThatDiffer_isADeparture() {
    hold(3).to(12.3, 0.25).hold(0.5).to(0, 1).hold(2).to(12.3, 0.25).hold(0.5).to(0, 1).hold(2);
    curve = stress -> example(stress) * 1.1;
    to(12.3, 0.25).hold(0.5).to(0, 1).hold(2);
    assertThat(check(run.finish(), "agreement").met()).isFalse();
  }

  @Test
  void reading_wildLoneStrain_isLeftOutAndListed() {
    hold(3).to(10, 0.25);
    give(1, 4000);
    long wild = seq;
    micros += INTERVAL_MICROS;
    to(12.3, 0.25).hold(0.5).to(0, 1).hold(2);
    to(12.3, 0.25).hold(0.5).to(0, 1).hold(2).to(12.3, 0.25).hold(0.5).to(0, 1).hold(2);
    MethodResult result = run.finish();
    assertThat(result.suspects()).containsExactly(wild);
    assertThat(figure(result, "modulus-cycle-1").exact()).isCloseTo(25_000, within(5.0));
    assertThat(result.departures()).anyMatch(words -> words.startsWith("1 lone reading of strain"));
  }

  @Test
  void finish_sameReadings_giveTheSameDoubles() {
    MethodResult once = cycles(3, 12.3).run.finish();
    ModulusRunTest other = new ModulusRunTest();
    assertThat(other.cycles(3, 12.3).run.finish()).isEqualTo(once);
  }

  @Test
  void examine_withoutCompanionsOrGauges_isRefusedWithTheRemedy() {
    Specimen bare = new Bench.SpecimenBuilder().build();
    assertThat(ModulusBench.METHOD.examine(bare, Bench.setting(load())))
        .filteredOn(each -> each.weight() == Method.Weight.REFUSED)
        .extracting(Method.Objection::remedy)
        .anyMatch(words -> words.contains("companion_strength_mpa or companion_strength_psi"))
        .anyMatch(words -> words.contains("quantity 'strain' or 'length'"));
    assertThatThrownBy(() -> start(bare, load())).isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void examine_gaugeWithoutItsLength_isRefused() {
    assertThat(
            ModulusBench.METHOD.examine(specimen(30), Bench.setting(load(), dial("dial", PLAIN))))
        .anyMatch(each -> each.problem().contains("gauge length of channel 'dial'"));
  }

  @Test
  void examine_onlyAGaugeAcross_isRefused() {
    assertThat(
            ModulusBench.METHOD.examine(
                specimen(30), Bench.setting(load(), dial("across", ACROSS))))
        .anyMatch(each -> each.problem().startsWith("the rig has 0 gauges along the axis"));
  }

  @Test
  void examine_loadBeyondTheRig_isRefused() {
    ChannelFacts small = Bench.channel(Unit.KILONEWTON, 200, 5);
    assertThat(ModulusBench.METHOD.examine(specimen(30), Bench.setting(small, strain(PLAIN))))
        .anyMatch(each -> each.problem().contains("212.1 kN (47670 lbf)"));
  }

  /** C469 (from memory): cores longer than 1.50 diameters. */
  @Test
  void examine_shortCore_isRefused() {
    Specimen core =
        new Bench.SpecimenBuilder()
            .shape("core")
            .length(149)
            .sizes(Map.of(Dimension.COMPANION_STRENGTH, 30.0))
            .build();
    assertThat(ModulusBench.METHOD.examine(core, Bench.setting(load(), strain(PLAIN))))
        .anyMatch(each -> each.weight() == Method.Weight.REFUSED);
  }

  @Test
  void reading_betweenTheMarks_allocatesNothing() {
    ramp(0, 60_000);
    long allocated = Allocated.by(() -> ramp(60_000, 110_000));
    // fifty thousand readings of each channel; one small object each would be over a megabyte
    assertThat(allocated).isLessThan(20_000);
    assertThat(run.view().chord().orElseThrow().next()).isEqualTo(ChordPart.Next.SECOND_MARK);
  }

  /** 1 kHz: idle for 2 s, then 0.1 MPa/s. */
  private void ramp(int from, int to) {
    for (int i = from; i < to; i++) {
      double now = Math.max(0, i - 2000) * 1e-4;
      run.reading(2L * i + 1, i * 1000L, 0, now * AREA / 1000, Quality.OK);
      run.reading(2L * i + 2, i * 1000L, 1, example(now), Quality.OK);
      run.takeHappenings();
    }
  }
}
