package io.github.platenwire.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.github.platenwire.method.Absorption;
import io.github.platenwire.method.FrontAdvance;
import io.github.platenwire.quantity.UnitSystem;
import io.github.platenwire.statistics.ConfidenceSet;
import io.github.platenwire.statistics.LineFit;
import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class FrontTest {
  /** As config/methods/absorption-c1585.toml has it (from memory of ASTM C1585). */
  private static final Absorption C1585 = new Absorption(0.98, 0.001);

  private static final Absorption.Stretch INITIAL =
      new Absorption.Stretch("initial", 60, 6 * 3600.0);
  private static final Absorption.Stretch SECONDARY =
      new Absorption.Stretch("secondary", 86_400, 7 * 86_400.0);

  private static final double[] C1585_SECONDS = {
    60, 300, 600, 1200, 1800, 3600, 7200, 10800, 14400, 18000, 21600
  };
  private static final double AREA = Math.PI * 50 * 50;

  /**
   * Common practice, no source: a straight line to 8 in. in 95 min is at 4 in. after half of it.
   */
  @Test
  void timeTo_straightTo8InchesIn95Minutes_4InchesAfterHalf() {
    Normal normal = new Normal(new SplittableRandom(95));
    double[] seconds = new double[20];
    double[] depths = new double[20];
    for (int i = 0; i < seconds.length; i++) {
      seconds[i] = 95 * 60.0 * (i + 1) / 20;
      depths[i] = 8 * 25.4 * seconds[i] / (95 * 60) + 1.0 * normal.next();
    }
    FrontAdvance front = FrontAdvance.of(seconds, depths);
    assertThat(front.better()).contains(FrontAdvance.Shape.LINEAR);
    FrontAdvance.TimeToDepth time = front.timeTo(4 * 25.4, FrontAdvance.Shape.LINEAR).orElseThrow();
    assertThat(time.seconds() / 60).isCloseTo(47.5, within(1.0));
    assertThat(time.set().contains(47.5 * 60)).isTrue();
    assertThat(time.beyondReadings()).isFalse();
    assertThat(MeasurementSentences.timeTo(4 * 25.4, Optional.of(time), UnitSystem.SI))
        .matches(
            "The front reaches 102 mm \\(4\\.00 in\\.\\) after 4[78]\\.\\d+ min"
                + " \\(95 % interval 4[678]\\.\\d+ to 4[789]\\.\\d+ min\\)\\.");
    assertThat(MeasurementSentences.shape(front, UnitSystem.SI))
        .startsWith("The front advances in proportion to time (residual deviation ");
  }

  @Test
  void better_squareRootFront_named() {
    double[] seconds = {60, 300, 900, 1800, 3600, 7200};
    double[] depths = {1.8, 3.2, 6.1, 8.6, 11.9, 17.1};
    FrontAdvance front = FrontAdvance.of(seconds, depths);
    assertThat(front.better()).contains(FrontAdvance.Shape.SQUARE_ROOT);
    assertThat(front.residuals()).hasSize(6);
    FrontAdvance.Residual last = front.residuals().get(5);
    assertThat(last.linearMillimetres()).isCloseTo(17.1 - front.linear().at(7200), within(1e-12));
    assertThat(last.squareRootMillimetres())
        .isCloseTo(17.1 - front.squareRoot().at(Math.sqrt(7200)), within(1e-12));
    FrontAdvance.TimeToDepth far = front.timeTo(40, FrontAdvance.Shape.SQUARE_ROOT).orElseThrow();
    assertThat(far.beyondReadings()).isTrue();
    assertThat(far.seconds()).isBetween(36_000.0, 46_000.0);
  }

  /** A front as t^0.72 lies between the two; noise of a millimetre hides which. */
  @Test
  void better_dataDoNotTell_noneNamed() {
    double[] seconds = {3600, 4000, 4400, 4800, 5200, 5600};
    double[] depths = {60.3, 62.0, 68.4, 70.2, 75.9, 78.0};
    FrontAdvance front = FrontAdvance.of(seconds, depths);
    assertThat(front.better()).isEmpty();
    assertThat(MeasurementSentences.shape(front, UnitSystem.SI))
        .startsWith("The readings do not tell");
  }

  @Test
  void better_fourExactReadings_tooFewToTell() {
    FrontAdvance front =
        FrontAdvance.of(new double[] {0, 100, 200, 300}, new double[] {0, 10, 20, 30});
    assertThat(front.better()).isEmpty();
  }

  @Test
  void better_exactLine_linearInSpiteOfRounding() {
    double[] seconds = {0, 100, 200, 300, 400, 500};
    double[] depths = {0.1, 10.1, 20.1, 30.1, 40.1, 50.1};
    assertThat(FrontAdvance.of(seconds, depths).better()).contains(FrontAdvance.Shape.LINEAR);
    double[] still = {3, 3, 3, 3, 3, 3};
    assertThat(FrontAdvance.of(seconds, still).better()).isEmpty();
  }

  @Test
  void timeTo_frontStandsOrGoesBack_neverReached() {
    double[] seconds = {0, 100, 200, 300, 400};
    FrontAdvance back = FrontAdvance.of(seconds, new double[] {5, 4, 4, 3, 2});
    Optional<FrontAdvance.TimeToDepth> never = back.timeTo(10, FrontAdvance.Shape.LINEAR);
    assertThat(never).isEmpty();
    assertThat(MeasurementSentences.timeTo(10, never, UnitSystem.SI))
        .isEqualTo(
            "Along this line the front does not come to 10.0 mm (0.394 in.) after its start.");
  }

  @Test
  void timeTo_depthPassedBeforeTimeZero_notAfterItsStart() {
    double[] seconds = {0, 100, 200, 300, 400};
    FrontAdvance front = FrontAdvance.of(seconds, new double[] {5, 6, 7, 8.1, 9});
    assertThat(front.timeTo(3, FrontAdvance.Shape.LINEAR)).isEmpty();
  }

  @Test
  void timeTo_advanceNotShown_unbounded() {
    double[] seconds = {0, 100, 200, 300, 400};
    FrontAdvance front = FrontAdvance.of(seconds, new double[] {1, 3, 1.2, 2.9, 1.5});
    FrontAdvance.TimeToDepth time = front.timeTo(5, FrontAdvance.Shape.LINEAR).orElseThrow();
    assertThat(time.set()).isNotInstanceOf(ConfidenceSet.Bounded.class);
    assertThat(MeasurementSentences.timeTo(5, Optional.of(time), UnitSystem.SI))
        .contains("no bounded 95 % interval")
        .endsWith("This lies beyond the last reading, if it goes on so.");
  }

  /** Made example: I = 0.10 + 0.012·√s at the C1585 times, so the rate is 0.012 mm/√s. */
  @Test
  void absorption_madeExample_slopeOfItsConstruction() {
    double[] grams = new double[C1585_SECONDS.length];
    for (int i = 0; i < grams.length; i++) {
      grams[i] = (0.10 + 0.012 * Math.sqrt(C1585_SECONDS[i])) * AREA * 0.001;
    }
    Absorption.Outcome outcome = C1585.rate(C1585_SECONDS, grams, AREA, INITIAL);
    LineFit line = ((Absorption.Rate) outcome).line();
    assertThat(line.slope()).isCloseTo(0.012, within(1e-14));
    assertThat(line.intercept()).isCloseTo(0.10, within(1e-12));
    assertThat(line.correlation()).isCloseTo(1, within(1e-12));
    assertThat(C1585.rate(C1585_SECONDS, grams, AREA, SECONDARY))
        .isEqualTo(new Absorption.TooFew(0));
  }

  @Test
  void absorption_bent_noRate() {
    double[] grams = new double[C1585_SECONDS.length];
    for (int i = 0; i < grams.length; i++) {
      grams[i] = Math.min(1.0, 0.05 * Math.sqrt(C1585_SECONDS[i])) + 0.0001 * i;
    }
    Absorption.Outcome outcome = C1585.rate(C1585_SECONDS, grams, AREA, INITIAL);
    assertThat(((Absorption.NotALine) outcome).correlation()).isLessThan(0.98);
    assertThat(MeasurementSentences.absorption(outcome))
        .startsWith("No rate of absorption: the points do not follow a line (r = 0.");
  }
}
