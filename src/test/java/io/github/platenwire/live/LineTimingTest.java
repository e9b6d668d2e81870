package io.github.platenwire.live;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class LineTimingTest {
  private final List<String> out = new ArrayList<>();

  private LineTiming timing(double microsPerByte, long delayMicros, int capacity) {
    return new LineTiming(
        microsPerByte,
        delayMicros,
        capacity,
        (seq, micros, value, over) -> out.add(seq + "@" + micros));
  }

  /** 9600 baud, 10 bits a byte: 1041.67 microseconds a byte (arithmetic). */
  @Test
  void burst_sharedStamp_spreadBackByBytesAfter() {
    LineTiming timing = timing(1e7 / 9600, 0, 16);
    timing.accept(1, 100_000, 12, 1, false);
    timing.accept(2, 100_000, 10, 2, false);
    timing.accept(3, 100_000, 8, 3, false);
    timing.clock(100_000);
    assertThat(out).isEmpty();
    timing.clock(100_001);
    assertThat(out).containsExactly("1@81250", "2@91667", "3@100000");
  }

  @Test
  void burst_spreadReachesBeforePrevious_heldAtPrevious() {
    LineTiming timing = timing(1000, 0, 16);
    timing.accept(1, 10_000, 10, 1, false);
    timing.accept(2, 12_000, 10, 2, false);
    timing.accept(3, 12_000, 10, 3, false);
    timing.flush();
    assertThat(out).containsExactly("1@10000", "2@10000", "3@12000");
  }

  @Test
  void delay_known_takenOff() {
    LineTiming timing = timing(0, 35_000, 4);
    timing.accept(7, 100_000, 10, 1, false);
    timing.flush();
    timing.flush();
    assertThat(out).containsExactly("7@65000");
  }

  @Test
  void burst_longerThanRoom_keepsAllAndCounts() {
    LineTiming timing = timing(100, 0, 2);
    for (int i = 1; i <= 5; i++) {
      timing.accept(i, 50_000, 10, i, false);
    }
    timing.flush();
    assertThat(out).containsExactly("1@49000", "2@50000", "3@50000", "4@50000", "5@50000");
    assertThat(timing.overflows()).isEqualTo(2);
  }

  @Test
  void create_negativeDelay_refuses() {
    assertThatThrownBy(() -> timing(0, -1, 1))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("delayMicros=-1");
  }
}
