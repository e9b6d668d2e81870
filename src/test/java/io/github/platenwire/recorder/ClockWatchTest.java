package io.github.platenwire.recorder;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicLong;
import java.util.concurrent.atomic.AtomicReference;
import org.junit.jupiter.api.Test;

class ClockWatchTest {
  private final AtomicLong nanos = new AtomicLong();
  private final AtomicReference<Instant> wall =
      new AtomicReference<>(Instant.parse("2026-11-25T07:15:02Z"));

  @Test
  void look_clocksGoTogether_saysNothing() {
    ClockWatch watch = new ClockWatch(wall::get, nanos::get);
    pass(2.0, 2.0);
    assertThat(watch.look()).isEmpty();
  }

  @Test
  void look_timeOfDaySetBack_saysByHowMuch() {
    ClockWatch watch = new ClockWatch(wall::get, nanos::get);
    pass(2.0, -58.0);
    assertThat(watch.look()).contains("clock step -60.0 s");
    pass(2.0, 2.0);
    assertThat(watch.look()).isEmpty();
  }

  @Test
  void look_steeredSlowly_saysNothing() {
    ClockWatch watch = new ClockWatch(wall::get, nanos::get);
    for (int i = 0; i < 100; i++) {
      pass(1.1, 1.1005);
      assertThat(watch.look()).isEmpty();
    }
  }

  @Test
  void look_tooSoon_waitsForASecond() {
    ClockWatch watch = new ClockWatch(wall::get, nanos::get);
    pass(0.5, 60);
    assertThat(watch.look()).isEmpty();
    pass(0.6, 0.6);
    assertThat(watch.look()).contains("clock step 59.5 s");
  }

  /** Before the mend the look after a hold-up told of a step of minus that time. */
  @Test
  void look_programHeldUpBetweenTheTwoClocks_isNoStepThenOrLater() {
    AtomicBoolean heldUp = new AtomicBoolean();
    ClockWatch watch =
        new ClockWatch(
            () -> {
              if (heldUp.getAndSet(false)) {
                pass(5, 5);
              }
              return wall.get();
            },
            nanos::get);
    pass(2, 2);
    heldUp.set(true);
    assertThat(watch.look()).isEmpty();
    for (int i = 0; i < 3; i++) {
      pass(2, 2);
      assertThat(watch.look()).isEmpty();
    }
    pass(2, 62);
    assertThat(watch.look()).contains("clock step 60.0 s");
  }

  private void pass(double monotonicSeconds, double wallSeconds) {
    nanos.addAndGet((long) (monotonicSeconds * 1e9));
    wall.updateAndGet(now -> now.plusNanos((long) (wallSeconds * 1e9)));
  }
}
