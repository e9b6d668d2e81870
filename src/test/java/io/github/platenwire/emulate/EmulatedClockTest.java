package io.github.platenwire.emulate;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

class EmulatedClockTest {
  private static final Instant START = Instant.parse("2026-11-25T07:15:02Z");

  @Test
  void new_nothingTold_standsAtItsStart() {
    EmulatedClock clock = new EmulatedClock(START);

    assertThat(clock.nanos()).isZero();
    assertThat(clock.now()).isEqualTo(START);
  }

  @Test
  void advance_oneAndAHalfSeconds_movesBothTimes() {
    EmulatedClock clock = new EmulatedClock(START);
    clock.advanceTo(1_500_000_000);

    assertThat(clock.nanos()).isEqualTo(1_500_000_000);
    assertThat(clock.now()).isEqualTo(Instant.parse("2026-11-25T07:15:03.500Z"));
  }

  @Property(tries = 100)
  void advance_anyTimes_neverGoesBack(@ForAll List<Long> times) {
    EmulatedClock clock = new EmulatedClock(START);

    long before = 0;
    for (long time : times) {
      clock.advanceTo(time);
      assertThat(clock.nanos()).isEqualTo(Math.max(before, time));
      before = clock.nanos();
    }
  }

  @Test
  @Timeout(value = 60, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
  void advance_twoThreadsAtOnce_readerNeverSeesItFall() throws InterruptedException {
    EmulatedClock clock = new EmulatedClock(START);
    Thread even = new Thread(() -> run(clock, 0), "even");
    Thread odd = new Thread(() -> run(clock, 1), "odd");
    even.start();
    odd.start();
    long before = 0;
    while (before < 200_000) {
      long now = clock.nanos();
      assertThat(now).isGreaterThanOrEqualTo(before);
      before = now;
    }
    even.join(10_000);
    odd.join(10_000);
    assertThat(clock.nanos()).isEqualTo(200_001);
  }

  private static void run(EmulatedClock clock, int first) {
    for (int i = first; i <= 200_001; i += 2) {
      clock.advanceTo(i);
    }
  }
}
