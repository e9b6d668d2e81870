package io.github.platenwire.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import io.github.platenwire.quantity.UnitSystem;
import java.util.List;
import org.junit.jupiter.api.Test;

class CrackRatioTest {
  private static final double UNCERTAINTY = 0.002;

  /** All widths doubled or halved about a median: by hand, the ratio of medians. */
  @Test
  void ofWidths_symmetricLogs_ratioOfMedians() {
    CrackRatio.Found found =
        (CrackRatio.Found)
            CrackRatio.ofWidths(
                new double[] {0.4, 0.8, 1.6}, new double[] {0.05, 0.1, 0.2}, UNCERTAINTY);
    assertThat(found.ratio()).isCloseTo(8, within(1e-12));
    // Standard error of the logarithm ln2·√(2/3), 4 degrees of freedom, t 2.7764 (any t table).
    double reach = Math.exp(2.7764 * Math.log(2) * Math.sqrt(2.0 / 3));
    assertThat(found.degreesOfFreedom()).isCloseTo(4, within(1e-12));
    assertThat(found.interval().high()).isCloseTo(8 * reach, within(1e-3));
    assertThat(found.interval().low()).isCloseTo(8 / reach, within(1e-4));
  }

  @Test
  void ofWidths_swapped_invertsRatioAndInterval() {
    double[] a = {0.31, 0.42, 0.39, 0.5};
    double[] b = {0.11, 0.14, 0.12};
    CrackRatio.Found there = (CrackRatio.Found) CrackRatio.ofWidths(a, b, UNCERTAINTY);
    CrackRatio.Found back = (CrackRatio.Found) CrackRatio.ofWidths(b, a, UNCERTAINTY);
    assertThat(there.ratio() * back.ratio()).isCloseTo(1, within(1e-12));
    assertThat(there.interval().low() * back.interval().high()).isCloseTo(1, within(1e-12));
  }

  @Test
  void ofWidths_oneWidthNearNoise_noRatioIsGiven() {
    CrackRatio.Outcome outcome =
        CrackRatio.ofWidths(
            new double[] {0.4, 0.5, 0.6}, new double[] {0.012, 0.009, 0.011}, UNCERTAINTY);
    CrackRatio.NearNoise noise = (CrackRatio.NearNoise) outcome;
    assertThat(noise.smallestWidthMillimetres()).isEqualTo(0.009);
    assertThat(noise.leastUsableMillimetres()).isCloseTo(0.01, within(1e-15));
    assertThat(MeasurementSentences.widthRatio(20_000, "PB", "CB", outcome, UnitSystem.SI))
        .isEqualTo(
            "At 20.0 kN (4.50 kip) no ratio of crack widths is given for PB and CB: near the noise"
                + " (the smallest width is 0.00900 mm (0.000354 in.), a ratio needs 0.0100 mm"
                + " (0.000394 in.); n = 3 and 3).");
    assertThat(
            CrackRatio.ofWidths(
                new double[] {0.4, 0.5, 0.6}, new double[] {0.012, 0.009, 0.011}, UNCERTAINTY, 4))
        .isInstanceOf(CrackRatio.Found.class);
    assertThat(CrackRatio.ofWidths(new double[] {0.4}, new double[] {-0.001}, 0))
        .isInstanceOf(CrackRatio.NearNoise.class);
  }

  @Test
  void ofWidths_twoSpecimens_figureOnly() {
    CrackRatio.Outcome outcome =
        CrackRatio.ofWidths(new double[] {0.4, 0.9}, new double[] {0.2, 0.2, 0.2}, UNCERTAINTY);
    assertThat(((CrackRatio.FigureOnly) outcome).ratio()).isCloseTo(3, within(1e-12));
    assertThat(MeasurementSentences.widthRatio(10_000, "PB", "CB", outcome, UnitSystem.SI))
        .contains("3.00 times as wide")
        .endsWith("so no interval and no verdict).");
  }

  @Test
  void curve_betweenPoints_straightLineAndFirstCrossing() {
    CrackCurve curve = new CrackCurve(new double[] {0, 10_000, 20_000}, new double[] {0, 0.1, 0.4});
    assertThat(curve.widthMillimetresAt(15_000).orElseThrow()).isCloseTo(0.25, within(1e-12));
    assertThat(curve.widthMillimetresAt(20_000)).hasValue(0.4);
    assertThat(curve.widthMillimetresAt(20_001)).isEmpty();
    assertThat(curve.loadNewtonsAt(0.25).orElseThrow()).isCloseTo(15_000, within(1e-8));
    assertThat(curve.loadNewtonsAt(0)).hasValue(0);
    assertThat(curve.loadNewtonsAt(0.41)).isEmpty();
    assertThat(curve.loadNewtonsAt(-0.01)).isEmpty();
    assertThatThrownBy(() -> new CrackCurve(new double[] {1, 1}, new double[] {0, 1}))
        .hasMessage("loads must rise, number 2 does not: 1.0");
  }

  /** Curves w = c·P with known c: the ratio is that of the c at every load and at every width. */
  @Test
  void overRange_proportionalCurves_ratioOfStiffnessesOverSharedRange() {
    List<CrackCurve> plain = List.of(curve(6, 30), curve(5, 40), curve(7.2, 50));
    List<CrackCurve> coated = List.of(curve(1, 60), curve(1.2, 35), curve(0.9, 45));
    double ratio = Math.cbrt(6 * 5 * 7.2) / Math.cbrt(1 * 1.2 * 0.9);
    List<CrackRatio.At> loads = CrackRatio.overLoads(plain, coated, UNCERTAINTY, 7);
    assertThat(loads).hasSize(7);
    assertThat(loads.get(0).place()).isZero();
    assertThat(loads.get(0).outcome()).isInstanceOf(CrackRatio.NearNoise.class);
    assertThat(loads.get(6).place()).isEqualTo(30_000);
    for (CrackRatio.At at : loads.subList(3, 7)) {
      assertThat(((CrackRatio.Found) at.outcome()).ratio()).isCloseTo(ratio, within(1e-9));
    }
    List<CrackRatio.At> widths = CrackRatio.overWidths(plain, coated, UNCERTAINTY, 5);
    assertThat(widths).hasSize(4);
    assertThat(widths.get(3).place()).isCloseTo(0.0405, within(1e-12));
    for (CrackRatio.At at : widths) {
      assertThat(((CrackRatio.Found) at.outcome()).ratio()).isCloseTo(1 / ratio, within(1e-9));
    }
  }

  @Test
  void overRange_nothingShared_empty() {
    CrackCurve early = new CrackCurve(new double[] {0, 10}, new double[] {0.1, 0.2});
    CrackCurve late = new CrackCurve(new double[] {20, 30}, new double[] {0.3, 0.4});
    assertThat(CrackRatio.overLoads(List.of(early), List.of(late), 0, 5)).isEmpty();
    assertThat(CrackRatio.overWidths(List.of(early), List.of(late), 0, 5)).isEmpty();
  }

  private static CrackCurve curve(double micrometresPerKilonewton, double greatestKilonewtons) {
    double last = greatestKilonewtons * 1000;
    double width = micrometresPerKilonewton * greatestKilonewtons / 1000;
    return new CrackCurve(new double[] {0, last / 2, last}, new double[] {0, width / 2, width});
  }
}
