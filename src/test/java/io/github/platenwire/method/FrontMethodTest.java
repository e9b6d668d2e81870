package io.github.platenwire.method;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.platenwire.quantity.Quantity;
import io.github.platenwire.quantity.Unit;
import io.github.platenwire.reading.Quality;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class FrontMethodTest {
  private static final Instant START = Instant.parse("2026-11-25T10:00:00Z");

  private static ChannelFacts channel(Quantity quantity, Unit unit) {
    return new ChannelFacts(
        "depth",
        quantity,
        unit,
        0,
        1000,
        OptionalDouble.of(1),
        10,
        OptionalDouble.empty(),
        OptionalDouble.of(1));
  }

  private static Specimen specimen(double... diameters) {
    return new Specimen(
        "NA-F-1",
        "NA-F",
        "disc",
        java.util.Arrays.stream(diameters).boxed().toList(),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        Optional.empty(),
        OptionalDouble.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Map.of());
  }

  private static MethodRun run(String method, ChannelFacts channel, Specimen specimen) {
    TestSetting setting =
        new TestSetting(START, ZoneOffset.UTC, List.of(channel), Optional.empty());
    return Methods.shipped(method).orElseThrow().start(specimen, setting);
  }

  private static MethodRun front() {
    return run("front-advance", channel(Quantity.LENGTH, Unit.MILLIMETRE), specimen());
  }

  /** Types a line at a second after the start; its number is what the raw file would give it. */
  private static void type(MethodRun run, long seq, double atSecond, String line) {
    double value = Double.parseDouble(line.substring(1, line.indexOf(' ')));
    run.entry(seq, Math.round(atSecond * 1e6), 0, line, value, Quality.OK);
  }

  private static double figure(MethodResult result, String name) {
    return result.figure(name).orElseThrow(() -> new AssertionError(name)).exact();
  }

  /** Common practice, no source: a straight front at 8 in. after 95 min is at 4 in. after half. */
  @Test
  void finish_straightTo8InchesIn95Minutes_is4InchesAfterAboutHalf() {
    MethodRun run = front();
    for (int i = 0; i <= 19; i++) {
      double minutes = 5.0 * i;
      double ripple = i % 2 == 0 ? 0.4 : -0.4;
      type(run, i + 2, minutes * 60, ">" + Math.max(0, 8 * 25.4 * minutes / 95 + ripple) + " mm;");
    }
    MethodResult result = run.finish();
    assertThat(figure(result, "time-to-101.6-mm-in-time")).isCloseTo(47.5, within(0.5));
    assertThat(figure(result, "time-to-101.6-mm-in-time-from")).isLessThan(47.5);
    assertThat(figure(result, "time-to-101.6-mm-in-time-to")).isGreaterThan(47.5);
    assertThat(figure(result, "rate-in-time")).isCloseTo(8 * 25.4 / 95, within(0.02));
    assertThat(result.figure("time-to-101.6-mm-in-root-time")).isEmpty();
    assertThat(result.checks().get(0).words()).contains("line in time better than");
    assertThat(result.figure("rate-in-time").orElseThrow().rows()).hasSize(20).contains(2L, 21L);
  }

  @Test
  void entry_correctionInAChain_countsTheLastValueAtTheFirstTime() {
    MethodRun run = front();
    type(run, 2, 0, ">0 mm;");
    type(run, 3, 600, ">100 mm;");
    type(run, 4, 1200, ">20 mm;");
    type(run, 5, 1300, ">11 mm; for 3");
    type(run, 6, 1400, ">10 mm; for 5");
    assertThat(run.view().front().orElseThrow().seconds()).isEqualTo(600);
    assertThat(run.view().front().orElseThrow().counted()).isEqualTo(3);
    MethodResult result = run.finish();
    // through (0, 0), (10, 10), (20, 20): 1 mm a minute
    assertThat(figure(result, "rate-in-time")).isCloseTo(1, within(1e-12));
    assertThat(result.figure("rate-in-time").orElseThrow().rows()).containsExactly(2L, 6L, 4L);
    assertThat(result.departures()).noneMatch(words -> words.contains("left out"));
  }

  @Test
  void entry_withItsOwnTime_countsAtThatTime() {
    MethodRun run = front();
    type(run, 2, 60, ">0 mm; at 2026-11-25T10:00:00Z");
    type(run, 3, 900, ">5 mm; at 2026-11-25T10:05:00Z");
    type(run, 4, 900, ">10 mm; after 600 s");
    MethodResult result = run.finish();
    assertThat(figure(result, "rate-in-time")).isCloseTo(1, within(1e-12));
    assertThat(figure(result, "last-time")).isCloseTo(10, within(1e-12));
  }

  @Test
  void entry_thatPutsNothingRightOrLiesBeforeTheFirst_isLeftOutAndSaid() {
    MethodRun run = front();
    type(run, 2, 600, ">0 mm;");
    type(run, 3, 700, ">5 mm; for 99");
    assertThat(run.view().front().orElseThrow().leftOut()).isPresent();
    assertThat(run.takeHappenings())
        .extracting(MethodRun.Happening::text)
        .containsExactly("entry left out seq=3");
    type(run, 4, 800, ">5 mm; at 2026-11-25T10:00:01Z");
    type(run, 5, 800, ">5 mm; whatever");
    MethodResult result = run.finish();
    assertThat(figure(result, "readings")).isEqualTo(1);
    assertThat(result.departures())
        .anyMatch(words -> words.startsWith("Entry 3 was left out: it puts entry 99 right"))
        .anyMatch(words -> words.startsWith("Entry 4 was left out: its time lies before"))
        .anyMatch(words -> words.startsWith("Entry 5 was left out: what follows"))
        .anyMatch(words -> words.startsWith("Fewer than three readings"));
  }

  @Test
  void reading_gaugeAt10Hertz_isTakenEachTenSecondsAndMarkedOnesNever() {
    MethodRun run = front();
    for (int i = 0; i < 6000; i++) {
      Quality quality = i % 1000 == 500 ? Quality.SUSPECT : Quality.OK;
      double root = Math.sqrt(i / 10.0);
      run.reading(i + 1, i * 100_000L, 0, quality == Quality.OK ? root : 1e6, quality);
    }
    MethodResult result = run.finish();
    assertThat(figure(result, "readings")).isEqualTo(60);
    assertThat(figure(result, "rate-in-root-time")).isCloseTo(1, within(1e-9));
    assertThat(result.checks().get(0).words()).contains("root of time better");
  }

  @Test
  void finish_fewScatteredReadings_doesNotTellTheShapeApart() {
    MethodRun run = front();
    type(run, 2, 0, ">0 mm;");
    type(run, 3, 600, ">6 mm;");
    type(run, 4, 1200, ">9 mm;");
    type(run, 5, 1800, ">14 mm;");
    MethodResult result = run.finish();
    assertThat(result.checks().get(0).words()).contains("do not tell");
    assertThat(result.figure("time-to-25-mm-in-time")).isPresent();
    assertThat(result.figure("time-to-25-mm-in-root-time")).isPresent();
  }

  /**
   * ASTM C1585 (from memory): I = Δm/(a · 0.001 g/mm³). A made example: I = 0.012 mm·√s at the
   * standard's times gives back 0.012 mm/√s and a correlation of 1.
   */
  @Test
  void finish_massesOnALineInRootTime_giveTheRateOfC1585() {
    double area = Math.PI * 50 * 50;
    MethodRun run =
        run("absorption-c1585", channel(Quantity.MASS, Unit.GRAM), specimen(100.0, 100.0));
    type(run, 2, 0, ">1500.00 g;");
    int[] seconds = {60, 300, 600, 1200, 1800, 3600, 7200, 10800, 14400, 18000, 21600};
    for (int i = 0; i < seconds.length; i++) {
      double grams = 1500 + (0.10 + 0.012 * Math.sqrt(seconds[i])) * area * 0.001;
      type(run, i + 3, seconds[i] + 30, ">" + grams + " g; after " + seconds[i] + " s");
    }
    MethodResult result = run.finish();
    assertThat(figure(result, "initial-rate")).isCloseTo(0.012, within(1e-9));
    assertThat(figure(result, "initial-intercept")).isCloseTo(0.10, within(1e-9));
    assertThat(result.checks())
        .anyMatch(check -> check.name().equals("initial-rate") && check.met());
    assertThat(result.departures())
        .anyMatch(words -> words.startsWith("No rate of secondary absorption: 0 readings"));
    assertThat(figure(result, "absorption"))
        .isCloseTo(0.10 + 0.012 * Math.sqrt(21600), within(1e-9));
  }

  @Test
  void finish_massesOffALine_giveNoRateAndSayWhy() {
    MethodRun run = run("absorption-c1585", channel(Quantity.MASS, Unit.GRAM), specimen(100.0));
    SplittableRandom random = new SplittableRandom(7);
    for (int i = 0; i < 10; i++) {
      type(run, i + 2, i * 600, ">" + (1500 + random.nextDouble()) + " g;");
    }
    MethodResult result = run.finish();
    assertThat(result.figure("initial-rate")).isEmpty();
    assertThat(result.checks()).anyMatch(check -> !check.met());
  }

  @Test
  void examine_rigOrSpecimenThatLacksWhatIsNeeded_isRefused() {
    Method front = Methods.shipped("front-advance").orElseThrow();
    TestSetting masses =
        new TestSetting(
            START, ZoneOffset.UTC, List.of(channel(Quantity.MASS, Unit.GRAM)), Optional.empty());
    assertThat(front.examine(specimen(), masses))
        .singleElement()
        .satisfies(one -> assertThat(one.problem()).contains("no channel of length"));
    assertThat(Methods.shipped("absorption-c1585").orElseThrow().examine(specimen(), masses))
        .singleElement()
        .satisfies(one -> assertThat(one.problem()).contains("no area"));
  }
}
