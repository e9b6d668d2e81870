package io.github.platenwire.method;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.platenwire.quantity.Quantity;
import io.github.platenwire.quantity.Unit;
import io.github.platenwire.reading.Quality;
import java.util.OptionalDouble;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

/** The same readings give the same doubles, whoever asks for the time in between; at no cost. */
class CompressionReplayTest {
  private static Bench noisy(int seed, boolean withTime) {
    Random random = new Random(seed);
    Random clock = new Random(seed + 1);
    Bench bench = new Bench(Bench.cylinder(100, 200), Bench.kilonewtons(), 50);
    double load = 0;
    double peak = 60 + 100 * random.nextDouble();
    int broken = 0;
    for (int i = 0; broken < 300; i++) {
      load += i < 80 ? 0 : load < peak && broken == 0 ? 0.5 : -Math.min(load, 3);
      broken += load >= peak || broken > 0 ? 1 : 0;
      double value = load + 0.02 * random.nextGaussian();
      int odd = random.nextInt(60);
      bench.raw(
          odd == 0 ? value + 500 : odd == 1 ? value - 60 : odd == 2 ? Double.NaN : value,
          odd == 3 ? Quality.GARBLED : Quality.OK);
      if (random.nextInt(40) == 0) {
        bench.micros += random.nextInt(20) == 0 ? 4_000_000 : random.nextInt(500_000);
      }
      if (withTime && clock.nextInt(3) == 0) {
        bench.run.time(bench.micros - bench.intervalMicros + clock.nextInt(20_000));
        bench.run.view();
      }
    }
    bench.collect();
    return bench;
  }

  @Property(seed = "20261129", tries = 60)
  void finish_sameReadings_givesTheSameDoublesWithOrWithoutTime(
      @ForAll @IntRange(min = 0, max = 1_000_000) int seed) {
    Bench live = noisy(seed, true);
    Bench again = noisy(seed, false);
    MethodResult one = live.run.finish();
    MethodResult other = again.run.finish();
    assertThat(other).isEqualTo(one);
    assertThat(other.figures()).isNotEmpty();
    assertThat(again.happenings).isEqualTo(live.happenings);
    assertThat(again.run.ending()).isEqualTo(live.run.ending());
  }

  @Test
  void reading_onceWarm_allocatesNothing() {
    MethodRun run =
        Bench.METHOD.start(Bench.cylinder(100, 200), Bench.setting(Bench.kilonewtons()));
    feed(run, 0, 60_000);
    run.takeHappenings();
    long allocated = Allocated.by(() -> feed(run, 60_000, 160_000));
    // a hundred thousand readings; a single small object each would be over a megabyte
    assertThat(allocated).isLessThan(1000);
    assertThat(run.view().peakNewtons()).isGreaterThan(300_000);
  }

  private static void feed(MethodRun run, int from, int to) {
    for (int i = from; i < to; i++) {
      double load = i < 2000 ? 0 : (i - 2000) * 0.002;
      run.reading(i + 1, i * 1000L, 0, load, Quality.OK);
      run.time(i * 1000L);
      run.takeHappenings();
    }
  }

  @Test
  void reading_otherChannels_areIgnored() {
    ChannelFacts gauge =
        new ChannelFacts(
            "gauge",
            Quantity.LENGTH,
            Unit.MILLIMETRE,
            -5,
            5,
            OptionalDouble.empty(),
            0.1,
            OptionalDouble.empty(),
            OptionalDouble.empty());
    MethodRun run =
        Bench.METHOD.start(
            Bench.cylinder(100, 200), Bench.setting(gauge, Bench.kilonewtons(), gauge));
    long seq = 0;
    for (int i = 0; i < 20_000; i++) {
      long micros = i * 10_000L;
      run.reading(++seq, micros, 0, 1e6, Quality.OK);
      run.reading(++seq, micros, 1, i < 200 ? 0 : (i - 200) * 0.0196, Quality.OK);
      run.reading(++seq, micros, 2, -1e6, Quality.OVER);
    }
    MethodResult result = run.finish();
    assertThat(Bench.figure(result, "peak-load").exact()).isEqualTo(19_799 * 0.0196);
    assertThat(Bench.check(result, "range").met()).isTrue();
  }
}
