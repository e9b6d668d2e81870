package io.github.platenwire.live;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class LoneReadingFilterTest {
  /** 20 kN/s, stamps good to 20 ms, 50 N of noise: 650 N may lie between readings 10 ms apart. */
  private final LoneReadingFilter filter = new LoneReadingFilter(20_000, 20_000, 50);

  private List<Double> trusted(double... values) {
    List<Double> out = new ArrayList<>();
    for (int i = 0; i < values.length; i++) {
      if (filter.accept(i + 1, i * 10_000L, values[i])) {
        out.add(filter.value());
      }
    }
    if (filter.flush()) {
      out.add(filter.value());
    }
    return out;
  }

  @Test
  void accept_ordinaryRamp_trustsEveryReading() {
    assertThat(trusted(0, 20, 40, 60)).containsExactly(0.0, 20.0, 40.0, 60.0);
    assertThat(filter.suspectCount()).isZero();
  }

  @Test
  void accept_spikeUp_isSetAside() {
    assertThat(trusted(100_000, 100_020, 300_000, 100_060)).doesNotContain(300_000.0);
    assertThat(filter.suspects()).containsExactly(3L);
  }

  @Test
  void accept_spikeDown_isSetAside() {
    assertThat(trusted(100_000, 100_020, 0, 100_060)).doesNotContain(0.0);
    assertThat(filter.suspects()).containsExactly(3L);
  }

  @Test
  void accept_spikeUpJustBeforeTheBreak_isSetAside() {
    assertThat(trusted(100_000, 100_020, 300_000, 2_000)).doesNotContain(300_000.0);
    assertThat(filter.suspects()).containsExactly(3L);
  }

  @Test
  void accept_break_isTrusted() {
    assertThat(trusted(249_980, 250_000, 90_000, 80_000, 79_000)).hasSize(5);
    assertThat(filter.suspectCount()).isZero();
  }

  @Test
  void accept_frameRingingAfterTheBreak_isTrusted() {
    assertThat(trusted(249_980, 250_000, 90_000, 130_000, 85_000, 110_000, 90_000)).hasSize(7);
    assertThat(filter.suspectCount()).isZero();
  }

  @Test
  void accept_stepThatStays_isTrusted() {
    assertThat(trusted(100_000, 100_020, 150_000, 150_020)).hasSize(4);
  }

  @Test
  void accept_twoSpikesInTurn_areBothSetAside() {
    assertThat(trusted(0, 0, 300_000, 0, 300_000, 0, 0)).containsExactly(0.0, 0.0, 0.0, 0.0, 0.0);
    assertThat(filter.suspects()).containsExactly(3L, 5L);
  }

  @Test
  void accept_withinTheMargin_isTrusted() {
    assertThat(trusted(1000, 1600, 1000)).hasSize(3);
  }

  @Test
  void accept_firstReadingASpike_isSetAside() {
    assertThat(trusted(300_000, 5, 6)).containsExactly(5.0, 6.0);
    assertThat(filter.suspects()).containsExactly(1L);
  }

  @Test
  void accept_spikeAfterTheFirst_isTheOneSetAside() {
    assertThat(trusted(5, 300_000, 6)).containsExactly(5.0, 6.0);
    assertThat(filter.suspects()).containsExactly(2L);
  }

  @Test
  void flush_lastReadingImpossiblyHigh_isSetAside() {
    assertThat(trusted(100_000, 100_020, 300_000)).containsExactly(100_000.0, 100_020.0);
    assertThat(filter.suspects()).containsExactly(3L);
  }

  @Test
  void flush_lastReadingLow_isTrusted() {
    assertThat(trusted(100_000, 100_020, 500)).hasSize(3);
  }

  @Test
  void flush_onlyReading_isTrusted() {
    assertThat(trusted(7)).containsExactly(7.0);
    assertThat(filter.flush()).isFalse();
  }

  @Test
  void suspects_moreThanListed_areStillCounted() {
    double[] values = new double[201];
    for (int i = 1; i < values.length; i += 2) {
      values[i] = 300_000;
    }
    trusted(values);
    assertThat(filter.suspectCount()).isEqualTo(100);
    assertThat(filter.suspects()).hasSize(64).startsWith(2L, 4L);
  }
}
