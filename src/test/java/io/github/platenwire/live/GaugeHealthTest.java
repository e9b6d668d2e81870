package io.github.platenwire.live;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Random;
import java.util.function.IntToDoubleFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class GaugeHealthTest {
  private static final int FAIL_TENTH_MILLIS = 30_000;
  private final Random random = new Random(5);
  private final GaugeHealth health =
      new GaugeHealth(
          List.of(
              new GaugeLimits(0, -0.5, 2, 0.001, 0.5, 0.02),
              new GaugeLimits(1, -0.5, 2, 0.001, 0.5, 0.02)));

  private static final double NOTHING = Double.NaN;

  /** Both gauges open by 0.02 mm/s; the second does as told from 3 s on. */
  private void run(double hertz, double seconds, IntToDoubleFunction second) {
    health.zero(0, 0, 0, 0.0005);
    health.zero(1, 0, 0, 0.0005);
    int period = (int) Math.round(10_000 / hertz);
    for (int t = period; t < seconds * 10_000; t += period) {
      long micros = t * 100L;
      health.clock(micros);
      health.accept(0, 2L * t, micros, noisy(0.02e-4 * t), false);
      double value = t < FAIL_TENTH_MILLIS ? noisy(0.02e-4 * t) : second.applyAsDouble(t);
      health.accept(1, 2L * t + 1, micros, value, false);
    }
  }

  private double noisy(double value) {
    return Math.rint((value + 0.0005 * random.nextGaussian()) * 1000) / 1000;
  }

  private void assertLost(GaugeFault fault) {
    assertThat(health.losses()).hasSize(1);
    GaugeLoss loss = health.losses().get(0);
    assertThat(loss.gauge()).isEqualTo(1);
    assertThat(loss.fault()).isEqualTo(fault);
    assertThat(loss.seenMicros()).isBetween(3_000_000L, 4_000_000L);
    assertThat(health.mask()).isEqualTo(1);
    assertThat(health.maskAt(loss.lastGoodMicros())).isEqualTo(3);
    assertThat(health.maskAt(loss.seenMicros() + 1)).isEqualTo(1);
  }

  @ParameterizedTest
  @CsvSource({"10", "60", "100", "1000"})
  void gauge_sticks_leftOutWithinASecond(double hertz) {
    run(hertz, 8, t -> 0.06);
    assertLost(GaugeFault.STUCK);
  }

  @ParameterizedTest
  @CsvSource({"2", "10", "60", "1000"})
  void gauge_silent_leftOutWithinASecond(double hertz) {
    run(hertz, 8, t -> NOTHING);
    assertLost(GaugeFault.SILENT);
  }

  @ParameterizedTest
  @CsvSource({"2", "10", "60", "1000"})
  void gauge_atRangeEnd_leftOutWithinASecond(double hertz) {
    run(hertz, 8, t -> 2.0);
    assertLost(GaugeFault.SATURATED);
  }

  @ParameterizedTest
  @CsvSource({"10", "60", "1000"})
  void gauge_jumpsAloneAndStays_leftOutWithinASecond(double hertz) {
    run(hertz, 8, t -> noisy(0.02e-4 * t + 0.3));
    assertLost(GaugeFault.JUMPED);
  }

  @ParameterizedTest
  @CsvSource({"10", "60", "1000"})
  void gauge_dropsBelowItsZero_fellOff(double hertz) {
    run(hertz, 8, t -> noisy(-0.3));
    assertLost(GaugeFault.FELL_OFF);
  }

  @Test
  void gauge_goodAgainAfterLoss_staysOut() {
    run(60, 12, t -> t < 60_000 ? noisy(0.02e-4 * t + 0.3) : noisy(0.02e-4 * t));
    assertLost(GaugeFault.JUMPED);
  }

  @Test
  void gauge_spikesOnce_isWithheldThenCleared() {
    run(10, 3.35, t -> t == 33_000 ? 0.5 : noisy(0.02e-4 * t));
    assertThat(health.isWithheldAt(3_250_000)).isTrue();
    assertThat(health.isWithheldAt(3_200_000)).isFalse();
    health.accept(1, 99_999, 3_400_000, 0.068, false);
    assertThat(health.isWithheldAt(3_400_000)).isFalse();
    assertThat(health.losses()).isEmpty();
  }

  @Test
  void bothGauges_jumpTogether_areKept() {
    health.zero(0, 0, 0, 0.0005);
    health.zero(1, 0, 0, 0.0005);
    for (int i = 1; i < 200; i++) {
      double crack = i < 100 ? 0 : 0.2;
      health.accept(0, 2L * i, i * 50_000L, noisy(crack), false);
      health.accept(1, 2L * i + 1, i * 50_000L + 20_000, noisy(0.5 * crack), false);
    }
    assertThat(health.losses()).isEmpty();
    assertThat(health.isWithheldAt(10_000_000)).isFalse();
  }

  @Test
  void still_bothQuietForMinutes_areKept() {
    health.zero(0, 0, 0, 0);
    health.zero(1, 0, 0, 0);
    for (int i = 1; i < 6_000; i++) {
      health.clock(i * 50_000L);
      health.accept(0, 2L * i, i * 50_000L, 0.1, false);
      health.accept(1, 2L * i + 1, i * 50_000L, 0.2, false);
    }
    assertThat(health.losses()).isEmpty();
  }

  @Test
  void machine_haltsForTwoSeconds_noGaugeBlamed() {
    run(60, 2, t -> 0);
    health.clock(4_000_000);
    health.accept(0, 900_000, 4_000_000, 0.08, false);
    health.accept(1, 900_001, 4_000_100, 0.08, false);
    assertThat(health.losses()).isEmpty();
  }

  @Test
  void device_saysOver_saturated() {
    run(10, 2, t -> 0);
    for (int i = 21; i < 30; i++) {
      health.accept(1, 900_000 + i, i * 100_000L, NOTHING, true);
    }
    assertThat(health.losses()).extracting(GaugeLoss::fault).containsExactly(GaugeFault.SATURATED);
  }

  @Test
  void zero_unknown_leftOutFromTheStart() {
    health.zero(0, 100, NOTHING, NOTHING);
    health.zero(1, 100, 0, 0.0005);
    assertThat(health.losses()).extracting(GaugeLoss::fault).containsExactly(GaugeFault.NO_ZERO);
    assertThat(health.maskAt(100)).isEqualTo(2);
  }

  /** A crack that opens at once on the only gauge was taken for a fault of the gauge. */
  @ParameterizedTest
  @CsvSource({"0.15, 0", "0.6, 1"})
  void onlyGauge_jumps_lostOnlyIfFartherThanACrackOpensAtOnce(double jump, int lost) {
    GaugeHealth alone = new GaugeHealth(List.of(new GaugeLimits(0, -0.5, 2, 0.001, 0.5, 0.02)));
    alone.zero(0, 0, 0, 0.0005);
    for (int t = 1; t < 300; t++) {
      alone.clock(t * 20_000L);
      alone.accept(0, t, t * 20_000L, noisy(0.0004 * t + (t < 150 ? 0 : jump)), false);
    }
    assertThat(alone.losses()).hasSize(lost);
  }
}
