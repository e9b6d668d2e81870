package io.github.platenwire.live;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

class RateWindowTest {
  private static final RateWindow.Settings SECOND =
      new RateWindow.Settings(1_000_000, 3, 5_000_000, 4096);

  /** NIST StRD, linear, NoInt2 with intercept: x 4 5 6, y 3 4 4 has slope 0.5 by hand. */
  @Test
  void slope_threePoints_isTheLeastSquaresLine() {
    RateWindow window = new RateWindow(new RateWindow.Settings(10_000_000, 3, 5_000_000, 10));
    window.accept(4_000_000, 3);
    window.accept(5_000_000, 4);
    assertThat(window.slope()).isNaN();
    window.accept(6_000_000, 4);
    assertThat(window.slope()).isCloseTo(0.5, within(1e-15));
    assertThat(window.meanIntervalMicros()).isEqualTo(1_000_000);
  }

  /** C39's 0.25 MPa/s on 100 mm is 1.963 kN/s (computed). */
  @Test
  void slope_straightRampAtOneKilohertz_isTheRamp() {
    RateWindow window = new RateWindow(SECOND);
    for (int i = 0; i < 100_000; i++) {
      window.accept(i * 1000L, 1963.495 * i * 1e-3);
    }
    assertThat(window.slope()).isCloseTo(1963.495, within(1e-6));
    assertThat(window.readings()).isEqualTo(1001);
  }

  @Test
  void slope_oneHertz_takesTheLatestThree() {
    RateWindow window = new RateWindow(SECOND);
    for (int i = 0; i < 10; i++) {
      window.accept(i * 1_000_000L, i < 5 ? 0 : 2000.0 * i);
    }
    assertThat(window.readings()).isEqualTo(3);
    assertThat(window.slope()).isCloseTo(2000, within(1e-9));
  }

  @Test
  void accept_afterALongGap_startsAnew() {
    RateWindow window = new RateWindow(SECOND);
    for (int i = 0; i < 10; i++) {
      window.accept(i * 100_000L, i);
    }
    window.accept(60_000_000, 500);
    assertThat(window.slope()).isNaN();
    assertThat(window.readings()).isEqualTo(1);
  }

  @Test
  void slope_allStampsEqual_isNotKnown() {
    RateWindow window = new RateWindow(SECOND);
    for (int i = 0; i < 5; i++) {
      window.accept(16_000, i);
    }
    assertThat(window.slope()).isNaN();
  }

  @Test
  void accept_moreThanItHolds_keepsTheLatest() {
    RateWindow window = new RateWindow(new RateWindow.Settings(1_000_000, 3, 5_000_000, 8));
    for (int i = 0; i < 100; i++) {
      window.accept(i * 1000L, i);
    }
    assertThat(window.readings()).isEqualTo(8);
    assertThat(window.slope()).isCloseTo(1000, within(1e-6));
  }

  @Test
  void settings_capacityNotAboveLeast_refuses() {
    assertThatThrownBy(() -> new RateWindow.Settings(1, 3, 1, 3))
        .isInstanceOf(IllegalArgumentException.class);
  }

  /**
   * Long streams of changing rate, with jitter, bursts of equal stamps and a break, against the
   * plain two-pass formula over the readings of the window.
   */
  @Property(seed = "20261125", tries = 20)
  void slope_longStream_agreesWithAPlainReference(
      @ForAll @IntRange(min = 0, max = 1_000_000) int seed,
      @ForAll @IntRange(min = 1, max = 200) int meanMilliseconds) {
    Random random = new Random(seed);
    RateWindow window = new RateWindow(SECOND);
    Deque<double[]> plain = new ArrayDeque<>();
    long micros = 0;
    double load = 0;
    for (int i = 0; i < 20_000; i++) {
      micros += random.nextInt(10) == 0 ? 0 : random.nextInt(meanMilliseconds * 2000);
      load += i == 15_000 ? -load : (random.nextDouble() - 0.3) * 1000;
      window.accept(micros, load);
      plain.addLast(new double[] {micros, load});
      while (plain.size() > 3 && micros - plain.getFirst()[0] > 1_000_000) {
        plain.removeFirst();
      }
      if (i % 7 == 0 && plain.size() >= 3 && micros > plain.getFirst()[0]) {
        double[] reference = reference(plain);
        assertThat(window.slope())
            .as("seed=%d reading=%d", seed, i)
            .isCloseTo(reference[0], within(1e-9 * reference[1]));
      }
    }
  }

  /** The slope, and the scale of slopes that the scatter of the window allows. */
  private static double[] reference(Deque<double[]> points) {
    double meanT = points.stream().mapToDouble(p -> p[0]).average().orElseThrow();
    double meanY = points.stream().mapToDouble(p -> p[1]).average().orElseThrow();
    double tt = 0;
    double ty = 0;
    double yy = 0;
    for (double[] p : points) {
      double t = (p[0] - meanT) * 1e-6;
      tt += t * t;
      ty += t * (p[1] - meanY);
      yy += (p[1] - meanY) * (p[1] - meanY);
    }
    return new double[] {ty / tt, Math.sqrt(yy / tt)};
  }
}
