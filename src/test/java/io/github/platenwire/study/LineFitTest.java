package io.github.platenwire.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.platenwire.statistics.ConfidenceSet;
import io.github.platenwire.statistics.Interval;
import io.github.platenwire.statistics.LineFit;
import java.util.Arrays;
import org.junit.jupiter.api.Test;

class LineFitTest {
  private static final double[] THERMOMETER = {
    21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.010, 26.511
  };
  private static final double[] CORRECTION = {
    -0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.160
  };

  /** JCGM 100:2008 (GUM) H.3, data and figures as in GTC's example of it. */
  @Test
  void line_gumH3_agrees() {
    double[] x = Arrays.stream(THERMOMETER).map(t -> t - 20).toArray();
    LineFit line = LineFit.of(x, CORRECTION);
    assertThat(line.intercept()).isCloseTo(-0.17120379, within(5e-9));
    assertThat(line.standardErrorAt(0)).isCloseTo(0.0028776, within(5e-8));
    assertThat(line.slope()).isCloseTo(0.0021826977, within(5e-11));
    assertThat(line.slopeStandardError()).isCloseTo(0.00066794, within(5e-9));
    assertThat(line.at(10)).isCloseTo(-0.14937681, within(5e-9));
    assertThat(line.standardErrorAt(10)).isCloseTo(0.00413860, within(5e-9));
    assertThat(line.residualDeviation()).isCloseTo(0.00349756, within(5e-9));
    assertThat(line.residualSquares()).isCloseTo(0.000110096583109, within(1e-15));
    // r(intercept, slope), out of the three standard errors.
    double u0 = line.standardErrorAt(0);
    double u1 = line.slopeStandardError();
    double u10 = line.standardErrorAt(10);
    assertThat((u10 * u10 - u0 * u0 - 100 * u1 * u1) / (20 * u0 * u1))
        .isCloseTo(-0.930430, within(5e-7));
  }

  /** By definition the line's own interval at an end of the set just reaches the height. */
  @Test
  void whereReached_ends_areWhereTheBandMeetsTheHeight() {
    double[] x = {1, 2, 3, 4, 5, 6};
    double[] y = {2.1, 3.8, 6.2, 7.9, 10.3, 11.8};
    LineFit line = LineFit.of(x, y);
    Interval places = ((ConfidenceSet.Bounded) line.whereReached(9, 0.95)).interval();
    assertThat(line.intervalAt(places.low(), 0.95).high()).isCloseTo(9, within(1e-10));
    assertThat(line.intervalAt(places.high(), 0.95).low()).isCloseTo(9, within(1e-10));
  }

  @Test
  void line_onePlaceOrTwoPoints_refused() {
    assertThatThrownBy(() -> LineFit.of(new double[] {1, 1, 1}, new double[] {1, 2, 3}))
        .hasMessage("a line needs two different x, all are 1.0");
    assertThatThrownBy(() -> LineFit.of(new double[] {1, 2}, new double[] {1, 2}))
        .hasMessage("a line needs at least three points, n=2");
    assertThatThrownBy(() -> LineFit.of(new double[] {1, 2, 3}, new double[] {1, 2}))
        .hasMessage("as many x as y: 3 against 2");
  }
}
