package io.github.platenwire.method;

import static io.github.platenwire.method.Bench.check;
import static io.github.platenwire.method.Bench.cylinder;
import static io.github.platenwire.method.Bench.figure;
import static io.github.platenwire.method.Bench.kilonewtons;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.platenwire.method.LiveView.Phase;
import io.github.platenwire.quantity.Unit;
import io.github.platenwire.reading.Quality;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class CompressionRunTest {
  /** 0.25 MPa/s (ASTM C39, from memory) on 100 mm: 1.963 kN/s, computed. */
  private static final double RATE = 1.963;

  private final Bench bench = new Bench(cylinder(100, 200), kilonewtons(), 100);

  /** f = 4 P/(pi D^2), computed with 60 digits outside this program; rounding by ASTM C39. */
  @ParameterizedTest
  @CsvSource({
    "100, 250, 31.83098861837907, 31.8, 4620",
    "150, 500, 28.29421210522584, 28.3, 4100",
    "150, 750, 42.44131815783876, 42.4, 6160",
  })
  void finish_kilonewtons_givesThePublishedStrength(
      double diameter, double peak, double exact, String rounded, String psi) {
    Bench metric = new Bench(cylinder(diameter, 2 * diameter), kilonewtons(), 100);
    MethodResult result =
        metric.crush(peak, 0.25e-3 * Math.PI * diameter * diameter / 4).run.finish();
    MethodResult.Figure strength = figure(result, "strength");
    assertThat(strength.exact()).isCloseTo(exact, within(exact * 1e-14));
    assertThat(strength.rounded()).isEqualTo(rounded);
    assertThat(strength.inchPoundRounded()).isEqualTo(psi);
    assertThat(result.departures()).isEmpty();
    assertThat(result.checks()).allMatch(MethodResult.Check::met);
  }

  /** f = 4 P/(pi D^2), computed with 60 digits outside this program; rounding by ASTM C39. */
  @ParameterizedTest
  @CsvSource({
    "4, 50000, 439.8, 3978.8735772973837, 3980",
    "6, 100000, 989.6, 3536.77651315323, 3540",
  })
  void finish_poundForce_givesThePublishedStrength(
      double inches, double peak, double rate, double exactPsi, String psi) {
    ChannelFacts pounds = Bench.channel(Unit.POUND_FORCE, 400_000, 1000);
    Bench inchPound = new Bench(cylinder(25.4 * inches, 50.8 * inches), pounds, 100);
    MethodResult result = inchPound.crush(peak, rate).run.finish();
    MethodResult.Figure strength = figure(result, "strength");
    assertThat(Unit.PSI.fromBase(strength.exact())).isCloseTo(exactPsi, within(1e-11));
    assertThat(strength.inchPoundRounded()).isEqualTo(psi);
    assertThat(figure(result, "peak-load").inchPoundRounded())
        .isEqualTo(String.valueOf((int) peak));
    assertThat(result.departures()).isEmpty();
  }

  @Test
  void finish_poundsOrKilonewtons_giveTheSameStrength() {
    double perKilonewton = 1000 / 4.4482216152605;
    Bench pounds =
        new Bench(
            cylinder(100, 200),
            Bench.channel(Unit.POUND_FORCE, 2000 * perKilonewton, 5 * perKilonewton),
            100);
    pounds.crush(250 * perKilonewton, RATE * perKilonewton);
    bench.crush(250, RATE);
    MethodResult.Figure one = figure(bench.run.finish(), "strength");
    MethodResult.Figure other = figure(pounds.run.finish(), "strength");
    assertThat(other.exact()).isCloseTo(one.exact(), within(1e-12));
    assertThat(other.rounded()).isEqualTo(one.rounded());
    assertThat(other.inchPoundRounded()).isEqualTo(one.inchPoundRounded());
  }

  /** Lengths over diameter and factors of ASTM C39, from memory; linear in between, computed. */
  @ParameterizedTest
  @CsvSource({
    "162, 0.9696",
    "110, 0.894",
    "175, 0.98",
    "150, 0.96",
    "125, 0.93",
    "100, 0.87",
  })
  void finish_shortCylinder_isCorrected(double length, double factor) {
    Bench shortOne = new Bench(cylinder(100, length), kilonewtons(), 100);
    MethodResult result = shortOne.crush(250, RATE).run.finish();
    assertThat(figure(result, "correction").exact()).isCloseTo(factor, within(1e-12));
    assertThat(figure(result, "strength").exact())
        .isCloseTo(31.83098861837907 * factor, within(1e-11));
    assertThat(figure(result, "strength-uncorrected").rounded()).isEqualTo("31.8");
    assertThat(figure(result, "strength").uncertainty().orElseThrow().lines())
        .anyMatch(line -> line.source().startsWith("correction for length"));
  }

  @Test
  void finish_aboveTheTable_isNotCorrected() {
    Bench longer = new Bench(cylinder(100, 175.1), kilonewtons(), 100);
    MethodResult result = longer.crush(250, RATE).run.finish();
    assertThat(result.figure("correction")).isEmpty();
    assertThat(result.figure("strength-uncorrected")).isEmpty();
  }

  /** Computed by hand: 3.8 kg over pi/4 x 0.01 m2 x 0.2 m; 10 kg/m3 and 1 lb/ft3 by ASTM C39. */
  @Test
  void finish_withMass_givesDensity() {
    Specimen weighed = new Bench.SpecimenBuilder().mass(3.8).build();
    MethodResult result = new Bench(weighed, kilonewtons(), 100).crush(250, RATE).run.finish();
    MethodResult.Figure density = figure(result, "density");
    assertThat(density.exact()).isCloseTo(2419.155134996810, within(1e-8));
    assertThat(density.rounded()).isEqualTo("2420");
    assertThat(density.inchPoundRounded()).isEqualTo("151");
  }

  @Test
  void reading_wholeTest_tellsItsStory() {
    bench.zero = 1.5;
    bench.crush(250, RATE);
    assertThat(bench.happenings)
        .hasSize(3)
        .first()
        .asString()
        .isEqualTo("zero load=1.5 unit=kN n=101");
    assertThat(bench.happenings.get(1)).isEqualTo("loading");
    assertThat(bench.happenings.get(2)).matches("break peak=250 unit=kN seq=\\d+");
    assertThat(bench.run.ending()).contains(MethodRun.Ending.BREAK);
    MethodResult result = bench.run.finish();
    assertThat(figure(result, "strength").exact()).isCloseTo(31.83098861837907, within(1e-12));
    assertThat(figure(result, "zero").rounded()).isEqualTo("1.50");
    assertThat(figure(result, "zero").rows()).containsExactly(1L, 101L);
    long peakRow = figure(result, "strength").rows().get(0);
    assertThat(figure(result, "strength").rows())
        .containsExactly(peakRow, peakRow - 1, peakRow + 1, 1L, 101L);
    assertThat(bench.happenings.get(2)).endsWith("seq=" + peakRow);
  }

  @Test
  void view_throughTheTest_showsPhaseLoadStressAndRate() {
    assertThat(bench.run.view().phase()).isEqualTo(Phase.ZEROING);
    assertThat(bench.run.view().loadNewtons()).isNaN();
    bench.hold(0, 2);
    assertThat(bench.run.view().phase()).isEqualTo(Phase.READY);
    bench.ramp(200, RATE);
    LiveView view = bench.run.view();
    assertThat(view.phase()).isEqualTo(Phase.LOADING);
    assertThat(view.loadNewtons()).isCloseTo(200_000, within(1e-6));
    assertThat(view.stressMegapascals()).isCloseTo(25.4648, within(1e-4));
    assertThat(view.rateMegapascalsPerSecond()).isCloseTo(0.25, within(1e-3));
    assertThat(view.bandApplies()).isTrue();
    assertThat(view.band()).contains(new LiveView.RateBand(0.20, 0.30));
    assertThat(view.seq()).isEqualTo(bench.seq);
    bench.hold(20, 1);
    assertThat(bench.run.view().phase()).isEqualTo(Phase.TAIL);
    assertThat(bench.run.view().bandApplies()).isFalse();
    assertThat(bench.run.view().peakNewtons()).isCloseTo(200_000, within(1e-6));
    bench.hold(20, 3);
    assertThat(bench.run.view().phase()).isEqualTo(Phase.ENDED);
  }

  @ParameterizedTest
  @ValueSource(doubles = {1, 10, 100, 1000})
  void finish_anyReadingRate_findsPeakBreakAndRate(double hertz) {
    Bench device = new Bench(cylinder(100, 200), kilonewtons(), hertz);
    MethodResult result = device.crush(250, RATE).run.finish();
    assertThat(device.run.ending()).contains(MethodRun.Ending.BREAK);
    assertThat(figure(result, "strength").rounded()).isEqualTo("31.8");
    assertThat(check(result, "rate").met()).as(check(result, "rate").words()).isTrue();
    assertThat(figure(result, "rate").exact()).isCloseTo(0.25, within(0.002));
    assertThat(figure(result, "rate").inchPoundRounded()).isEqualTo("36");
    // at most the rate of loading times the time between two readings, by hand; the last step of
    // the ramp is shorter than the others, which at 1 Hz lowers the slope at the peak
    assertThat(figure(result, "strength").samplingBound().orElseThrow())
        .isBetween(0.12 / hertz, 0.2502 / hertz);
    assertThat(result.suspects()).isEmpty();
  }

  @Test
  void finish_tooFastThroughout_isNotMetAndSaidInBothUnits() {
    bench.hold(0, 2).ramp(250, 2 * RATE).hold(20, 5);
    MethodResult result = bench.run.finish();
    assertThat(check(result, "rate").met()).isFalse();
    assertThat(check(result, "rate").words())
        .contains("0.20 to 0.30 MPa/s for 0 %")
        .contains("28 to 42 psi/s for 0 %")
        .contains("at most 0.50 MPa/s (73 psi/s)")
        .contains("above that the specimen yields");
    assertThat(result.departures()).hasSize(1).first().asString().startsWith("The rate was within");
  }

  @Test
  void finish_yieldingBeforeTheBreak_isNotHeldAgainstTheRate() {
    bench.hold(0, 2).ramp(225, RATE).ramp(250, 0.2 * RATE).hold(20, 5);
    assertThat(check(bench.run.finish(), "rate").met()).isTrue();
  }

  @Test
  void reading_spikesBothWays_areListedAndNeverThePeak() {
    bench.hold(0, 2).ramp(100, RATE);
    bench.send(900);
    long up = bench.seq;
    bench.ramp(200, RATE).send(0);
    long down = bench.seq;
    bench.ramp(250, RATE).hold(20, 5);
    MethodResult result = bench.run.finish();
    assertThat(result.suspects()).containsExactly(up, down);
    assertThat(figure(result, "strength").rounded()).isEqualTo("31.8");
    assertThat(bench.happenings).contains("suspect load seq=" + up, "suspect load seq=" + down);
    assertThat(result.departures()).hasSize(1).first().asString().startsWith("2 lone readings");
  }

  @Test
  void reading_badQualityOrNotANumber_isNeverUsed() {
    bench.hold(0, 2).ramp(200, RATE);
    for (Quality quality : Quality.values()) {
      if (quality != Quality.OK && quality != Quality.OVER) {
        bench.raw(1500, quality).raw(1500, quality).raw(1500, quality);
      }
    }
    bench.raw(Double.NaN, Quality.OK).raw(Double.POSITIVE_INFINITY, Quality.OK);
    bench.ramp(250, RATE).hold(20, 5);
    MethodResult result = bench.run.finish();
    assertThat(figure(result, "strength").rounded()).isEqualTo("31.8");
    assertThat(result.departures()).isEmpty();
  }

  @Test
  void reading_beyondTheRange_isSaid() {
    bench.hold(0, 2).ramp(250, RATE).raw(2100, Quality.OVER).hold(20, 5);
    MethodResult result = bench.run.finish();
    assertThat(check(result, "range").met()).isFalse();
    assertThat(result.departures()).hasSize(1).first().asString().contains("can be higher");
  }

  @Test
  void reading_seatingDropThenGain_goesOnToTheRealBreak() {
    bench.hold(0, 2).ramp(30, RATE).hold(27, 0.5).ramp(250, RATE).hold(20, 5);
    MethodResult result = bench.run.finish();
    assertThat(figure(result, "strength").rounded()).isEqualTo("31.8");
  }

  @Test
  void reading_dropAboveTheLeastLoadThenGain_withdrawsTheBreak() {
    bench.hold(0, 2).ramp(100, RATE).hold(90, 0.5).ramp(250, RATE).hold(20, 5);
    assertThat(bench.happenings.stream().map(text -> text.replaceFirst(" peak=.*", "")))
        .containsExactly(
            "zero load=0 unit=kN n=101", "loading", "break", "break withdrawn", "break");
    assertThat(figure(bench.run.finish(), "strength").rounded()).isEqualTo("31.8");
  }

  @Test
  void time_silentLineAfterTheBreak_endsTheTest() {
    bench.hold(0, 2).ramp(250, RATE).hold(20, 0.5);
    bench.run.time(bench.micros + 1_000_000);
    assertThat(bench.run.ending()).isEmpty();
    bench.run.time(bench.micros + 3_500_000);
    assertThat(bench.run.ending()).contains(MethodRun.Ending.BREAK);
    bench.micros += 4_000_000;
    bench.hold(300, 3);
    assertThat(figure(bench.run.finish(), "strength").rounded()).isEqualTo("31.8");
  }

  @Test
  void time_silentAfterOneLowReading_doesNotEnd() {
    bench.hold(0, 2).ramp(250, RATE).send(20);
    bench.run.time(bench.micros + 60_000_000);
    assertThat(bench.run.ending()).isEmpty();
    MethodResult result = bench.run.finish();
    assertThat(check(result, "break").met()).isFalse();
    assertThat(check(result, "break").words()).contains("only just fallen");
  }

  @Test
  void time_silentWithTheDecidingReadingHeldBack_stillEnds() {
    Bench slow = new Bench(cylinder(100, 200), kilonewtons(), 1);
    slow.hold(0, 10).ramp(250, RATE).send(20).send(19).send(18);
    assertThat(slow.happenings).noneMatch(text -> text.startsWith("break"));
    slow.run.time(slow.micros + 1_000_000);
    assertThat(slow.run.ending()).isEmpty();
    slow.run.time(slow.micros + 2_000_000);
    slow.collect();
    assertThat(slow.run.ending()).contains(MethodRun.Ending.BREAK);
    assertThat(slow.happenings).anyMatch(text -> text.startsWith("break peak=250"));
  }

  @Test
  void reading_slowUnload_endsAndLeavesTheFractureToTheOperator() {
    bench.hold(0, 2).ramp(200, RATE).ramp(0, RATE);
    assertThat(bench.run.ending()).contains(MethodRun.Ending.BREAK);
    assertThat(check(bench.run.finish(), "break").words()).contains("for the operator to say");
  }

  @Test
  void finish_noLoad_hasNoStrength() {
    bench.hold(0, 5);
    MethodResult result = bench.run.finish();
    assertThat(result.figure("strength")).isEmpty();
    assertThat(result.figure("area")).isPresent();
    assertThat(check(result, "break").met()).isFalse();
    assertThat(result.departures()).anyMatch(text -> text.contains("No specimen was loaded"));
  }

  @Test
  void finish_nothingRead_hasNoStrengthAndNoZero() {
    MethodResult result = bench.run.finish();
    assertThat(result.figure("strength")).isEmpty();
    assertThat(result.figure("zero")).isEmpty();
    assertThat(check(result, "zero").met()).isFalse();
  }

  @Test
  void finish_stoppedWhileLoading_saysThatTheBreakIsMissing() {
    bench.hold(0, 2).ramp(200, RATE);
    MethodResult result = bench.run.finish();
    assertThat(figure(result, "peak-load").rounded()).isEqualTo("200.0");
    assertThat(check(result, "break").met()).isFalse();
    assertThat(result.departures()).anyMatch(text -> text.contains("greatest load reached"));
  }

  @Test
  void reading_loadBeforeAQuietSecond_takesAShortZeroAndSaysSo() {
    bench.hold(0.4, 0.3);
    bench.ramp(250, 5 * RATE).hold(20, 5);
    MethodResult result = bench.run.finish();
    assertThat(bench.happenings.get(0)).startsWith("zero short load=0.");
    assertThat(check(result, "zero").met()).isFalse();
    assertThat(result.departures()).anyMatch(text -> text.contains("before the zero"));
  }

  @Test
  void reading_joinedUnderLoad_takesNoughtAndSaysSo() {
    bench.hold(100, 5);
    assertThat(bench.run.view().phase()).isEqualTo(Phase.ZEROING);
    bench.ramp(250, RATE).hold(20, 5);
    MethodResult result = bench.run.finish();
    assertThat(bench.happenings.get(0)).isEqualTo("zero missing load=0 unit=kN n=0");
    assertThat(figure(result, "strength").rounded()).isEqualTo("31.8");
    assertThat(result.departures()).anyMatch(text -> text.contains("No zero was found"));
    assertThat(figure(result, "strength").uncertainty().orElseThrow().lines())
        .anyMatch(line -> line.source().startsWith("zero: none found"));
  }

  @Test
  void finish_twice_isRefused() {
    bench.run.finish();
    assertThatThrownBy(bench.run::finish).isInstanceOf(IllegalStateException.class);
  }

  @Test
  void takeHappenings_nothingNew_isTheSameEmptyList() {
    bench.hold(0, 2);
    assertThat(bench.run.takeHappenings()).isEmpty();
    assertThat(bench.run.takeHappenings()).isSameAs(bench.run.takeHappenings());
  }
}
