package io.github.platenwire.live;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.platenwire.live.ZeroFinder.State;
import java.util.Random;
import org.junit.jupiter.api.Test;

class ZeroFinderTest {
  private static final long MS = 1000;
  private static final ZeroFinder.Settings SETTINGS =
      new ZeroFinder.Settings(1_000_000, 5, 3, 100, 500, 1000);

  private final ZeroFinder finder = new ZeroFinder(SETTINGS);
  private long seq;
  private long micros;

  private State feed(long intervalMicros, double... values) {
    State state = finder.state();
    for (double value : values) {
      state = finder.accept(++seq, micros, value);
      micros += intervalMicros;
    }
    return state;
  }

  @Test
  void accept_quietSecond_givesMeanRowsAndNoise() {
    for (int i = 0; i < 50; i++) {
      assertThat(feed(20 * MS, i % 2 == 0 ? 10 : 14)).isEqualTo(State.SEEKING);
    }
    assertThat(feed(20 * MS, 10)).isEqualTo(State.QUIET);
    assertThat(finder.zero()).isCloseTo((26 * 10 + 25 * 14) / 51.0, within(1e-12));
    // 51 readings 2 from their middle: sum of squares about the mean, by hand
    double squares = 51 * 4 - 51 * Math.pow(12 - finder.zero(), 2);
    assertThat(finder.noise()).isCloseTo(Math.sqrt(squares / 50), within(1e-12));
    assertThat(finder.resolution()).isEqualTo(4);
    assertThat(finder.firstSeq()).isEqualTo(1);
    assertThat(finder.lastSeq()).isEqualTo(51);
    assertThat(finder.readings()).isEqualTo(51);
  }

  /** NIST StRD, univariate, Michelso is n = 100; NumAcc4's certified s is 0.1 exactly. */
  @Test
  void noise_nistNumAcc4_keepsItsDigits() {
    ZeroFinder wide =
        new ZeroFinder(new ZeroFinder.Settings(1000 * MS, 1001, 3, 1, 2e7, Double.MAX_VALUE));
    wide.accept(1, 0, 10_000_000.2);
    for (int i = 1; i <= 1000; i++) {
      wide.accept(i + 1, i * MS, i % 2 == 1 ? 10_000_000.1 : 10_000_000.3);
    }
    assertThat(wide.state()).isEqualTo(State.QUIET);
    assertThat(wide.zero()).isCloseTo(10_000_000.2, within(1e-7));
    assertThat(wide.noise()).isCloseTo(0.1, within(1e-8));
  }

  @Test
  void accept_oneHertz_waitsForEnoughReadings() {
    assertThat(feed(1000 * MS, 1, 2, 1, 2)).isEqualTo(State.SEEKING);
    assertThat(feed(1000 * MS, 1)).isEqualTo(State.QUIET);
  }

  @Test
  void accept_restlessFirst_restsOnTheQuietPartOnly() {
    feed(200 * MS, 300, -300, 200, 0);
    assertThat(feed(200 * MS, 2, 1, 2, 1, 2)).isEqualTo(State.QUIET);
    assertThat(finder.firstSeq()).isEqualTo(4);
    assertThat(finder.zero()).isCloseTo(8 / 6.0, within(1e-12));
  }

  @Test
  void accept_loadBeforeAQuietSecond_takesTheShortStretch() {
    feed(100 * MS, 5, 7, 6, 5);
    assertThat(feed(100 * MS, 900, 2000)).isEqualTo(State.SHORT);
    assertThat(finder.zero()).isEqualTo(5.75);
    assertThat(finder.readings()).isEqualTo(4);
    assertThat(finder.lastSeq()).isEqualTo(4);
  }

  @Test
  void accept_loadAtOnce_hasNoZero() {
    assertThat(feed(100 * MS, 5, 800, 2000)).isEqualTo(State.NONE);
    assertThat(finder.zero()).isZero();
    assertThat(finder.readings()).isZero();
    assertThat(finder.firstSeq()).isZero();
  }

  @Test
  void accept_indicatorSetToNoughtAfterTheStart_stillGetsItsZero() {
    for (int i = 0; i < 30; i++) {
      assertThat(feed(100 * MS, 20_000)).isEqualTo(State.SEEKING);
    }
    assertThat(feed(200 * MS, 3, 3, 3, 3, 3, 3)).isEqualTo(State.QUIET);
    assertThat(finder.zero()).isEqualTo(3);
  }

  @Test
  void accept_levelBeyondTolerance_isNoZero() {
    assertThat(feed(300 * MS, 600, 601, 600, 601, 600, 601, 600)).isEqualTo(State.SEEKING);
    assertThat(finder.settle()).isEqualTo(State.NONE);
  }

  @Test
  void accept_afterTheEnd_changesNothing() {
    feed(300 * MS, 1, 1, 1, 1, 1);
    assertThat(feed(300 * MS, 50_000)).isEqualTo(State.QUIET);
    assertThat(finder.zero()).isEqualTo(1);
  }

  @Test
  void accept_noisyZero_isWithinItsOwnNoise() {
    Random random = new Random(7);
    while (finder.state() == State.SEEKING) {
      feed(10 * MS, 12 + 5 * random.nextGaussian());
    }
    assertThat(finder.state()).isEqualTo(State.QUIET);
    assertThat(finder.zero()).isCloseTo(12, within(4 * 5 / Math.sqrt(finder.readings())));
    assertThat(finder.noise()).isBetween(3.5, 6.5);
  }
}
