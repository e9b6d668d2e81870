package io.github.platenwire.study;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.platenwire.method.Absorption;
import io.github.platenwire.method.FrontAdvance;
import io.github.platenwire.quantity.UnitSystem;
import io.github.platenwire.statistics.ConfidenceSet;
import io.github.platenwire.statistics.Interval;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class MeasurementSentencesTest {
  /** As config/methods/absorption-c1585.toml has it (from memory of ASTM C1585). */
  private static final Absorption C1585 = new Absorption(0.98, 0.001);

  private static final Absorption.Stretch INITIAL =
      new Absorption.Stretch("initial", 60, 6 * 3600.0);
  private static final Absorption.Stretch SECONDARY =
      new Absorption.Stretch("secondary", 86_400, 7 * 86_400.0);

  private static final CrackRatio.Outcome FOUND =
      new CrackRatio.Found(7.49, new Interval(5.31, 10.57), 3.9, 3, 4);

  @Test
  void widthRatio_found_withIntervalAndNumbers() {
    assertThat(MeasurementSentences.widthRatio(20_000, "PB", "CB", FOUND, UnitSystem.SI))
        .isEqualTo(
            "At 20.0 kN (4.50 kip) the crack of PB is 7.5 times as wide as that of CB"
                + " (95 % interval 5.3 to 10.6; n = 3 and 4).");
  }

  @Test
  void loadRatio_intervalHoldsOne_saysNoDifference() {
    CrackRatio.Outcome alike = new CrackRatio.Found(0.96, new Interval(0.85, 1.08), 4, 3, 3);
    assertThat(MeasurementSentences.loadRatio(0.2, "PB", "CB", alike, UnitSystem.SI))
        .isEqualTo(
            "To open the crack to 0.200 mm (0.00787 in.) PB takes 0.96 times the load of CB"
                + " (95 % interval 0.85 to 1.08; n = 3 and 3)."
                + " The interval holds 1: no difference is shown.");
  }

  @Test
  void loadRatio_nearNoise_saysSo() {
    assertThat(
            MeasurementSentences.loadRatio(
                0.2, "PB", "CB", new CrackRatio.NearNoise(0.001, 0.01, 3, 3), UnitSystem.SI))
        .isEqualTo("At 0.200 mm (0.00787 in.) no ratio of loads is given: near the noise.");
  }

  @Test
  void timeTo_anyLength_inAUnitThatReadsWell() {
    assertThat(sentence(100)).contains(" after 100 s (95 % interval 90 to 110 s).");
    assertThat(sentence(6000)).contains(" after 100 min (95 % interval 90 to 110 min).");
    assertThat(sentence(36_000)).contains(" after 10.0 h (95 % interval 9.0 to 11.0 h).");
    assertThat(sentence(864_000)).contains(" after 10.0 days (95 % interval 9.0 to 11.0 days).");
  }

  private static String sentence(double seconds) {
    ConfidenceSet set = new ConfidenceSet.Bounded(new Interval(0.9 * seconds, 1.1 * seconds));
    return MeasurementSentences.timeTo(
        50, Optional.of(new FrontAdvance.TimeToDepth(seconds, set, false)), UnitSystem.SI);
  }

  @Test
  void shape_squareRoot_namesItWithBothResiduals() {
    FrontAdvance front =
        FrontAdvance.of(
            new double[] {60, 300, 900, 1800, 3600, 7200},
            new double[] {1.8, 3.2, 6.1, 8.6, 11.9, 17.1});
    assertThat(MeasurementSentences.shape(front, UnitSystem.SI))
        .startsWith("The front advances in proportion to the square root of time (residual")
        .endsWith(" about the line in its square root; n = 6).");
  }

  @Test
  void absorption_rateOrTooFew_saysWhich() {
    double[] seconds = {60, 300, 600, 1200, 1800, 3600, 7200};
    double[] grams = {1.5, 2.4, 3.1, 4.1, 4.8, 6.5, 8.8};
    assertThat(MeasurementSentences.absorption(C1585.rate(seconds, grams, 7854, INITIAL)))
        .matches("Rate of absorption 0\\.012\\d+ mm/√s \\(95 % interval 0.01.*; n = 7\\)\\.");
    assertThat(MeasurementSentences.absorption(C1585.rate(seconds, grams, 7854, SECONDARY)))
        .isEqualTo("No rate of absorption: only 0 readings in this stretch, three are needed.");
  }
}
