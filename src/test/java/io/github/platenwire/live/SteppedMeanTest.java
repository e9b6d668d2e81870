package io.github.platenwire.live;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;

class SteppedMeanTest {
  private static final double STEP = 0.001;

  /** Mean square error of means of so many readings in steps, values and noise drawn by chance. */
  private static double drawn(double noise, int count) {
    Random random = new Random(20261125);
    double sum = 0;
    int draws = 20_000;
    for (int i = 0; i < draws; i++) {
      double value = random.nextDouble() * STEP;
      double shown = 0;
      for (int k = 0; k < count; k++) {
        shown += Math.rint((value + noise * random.nextGaussian()) / STEP) * STEP;
      }
      double off = shown / count - value;
      sum += off * off;
    }
    return sum / draws;
  }

  private static double stated(double noise, int count) {
    return SteppedMean.variance(Math.sqrt(noise * noise + STEP * STEP / 12), STEP, count);
  }

  @Test
  void variance_allReadingsAlike_isThatOfOneStepHoweverMany() {
    // JCGM 100:2008, 4.3.7 and F.2.2.1: an indication in steps q has the variance q^2 / 12
    assertThat(SteppedMean.variance(0, STEP, 1000)).isCloseTo(STEP * STEP / 12, within(3e-9));
  }

  @Test
  void variance_noiseOverSeveralSteps_averagesOut() {
    assertThat(stated(2 * STEP, 50)).isCloseTo(drawn(2 * STEP, 50), within(3e-9));
  }

  @Test
  void variance_noiseOfAFewTenthsOfAStep_isAsDrawn() {
    for (double share : new double[] {0.2, 0.3, 0.4}) {
      double drawn = drawn(share * STEP, 50);
      assertThat(stated(share * STEP, 50)).isBetween(0.8 * drawn, 1.6 * drawn);
    }
  }

  @Test
  void variance_noSteps_isPlainlyAveraged() {
    assertThat(SteppedMean.variance(0.002, 0, 16)).isEqualTo(0.002 * 0.002 / 16);
  }
}
