package io.github.platenwire.live;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * EN 14651 (definitions from memory): F_L is the greatest load for an opening of 0 to 0.05 mm;
 * loads at 0.5, 1.5, 2.5 and 3.5 mm. The curve is prescribed, opening driven.
 */
class NotchedBeamTest {
  private final CrackTracker tracker =
      new CrackTracker(
          CrackSettings.notchedBeam(
              List.of(new GaugeLimits(0, -1, 5, 0.0001, 1, 0.01)),
              new CrackSettings.FitWindow(1_000, 6_000)),
          new GaugeHealth(List.of(new GaugeLimits(0, -1, 5, 0.0001, 1, 0.01))),
          new CrackListener() {});

  private void zero() {
    ZeroLevel zero = new ZeroLevel(0, 0.0001, 20, 1, 20);
    tracker.zero(0, zero, List.of(zero));
  }

  private void row(long seq, double opening, double load) {
    AlignedRow row = new AlignedRow(1);
    row.start(seq, seq * 20_000, load);
    row.values[0] = opening;
    row.lowSeqs[0] = seq;
    row.highSeqs[0] = seq;
    tracker.accept(row);
  }

  private static double peakThenSoftening(double opening) {
    return opening <= 0.03
        ? 15_000 * opening / 0.03
        : 15_000 - 6_000 * Math.min(1, (opening - 0.03) / 0.47) - 800 * Math.max(0, opening - 0.5);
  }

  private static double hardening(double opening) {
    return opening <= 0.03 ? 12_000 * opening / 0.03 : 12_000 + 2_000 * (opening - 0.03);
  }

  @Test
  void softening_peakBeforeSmallWidth_limitIsThePeak() {
    zero();
    for (int i = 1; i <= 4_200; i++) {
      row(i, i * 0.001, peakThenSoftening(i * 0.001));
    }
    CrackResult result = tracker.result(List.of());
    FirstCrack.Figure limit = result.firstCrack().bySmallWidth().orElseThrow();
    assertThat(limit.newtons()).isCloseTo(15_000, within(1e-6));
    assertThat(limit.lastSeq()).isEqualTo(30);
    assertThat(result.crossings())
        .extracting(each -> each.threshold().millimetres())
        .containsExactly(0.5, 1.5, 2.5, 3.5);
    for (Thresholds.Crossing each : result.crossings()) {
      double truth = peakThenSoftening(each.threshold().millimetres());
      assertThat(each.newtons()).isCloseTo(truth, within(1e-6));
    }
    assertThat(tracker.isStopWidthReached()).isTrue();
  }

  @Test
  void hardening_loadStillRises_limitIsInterpolatedAtSmallWidth() {
    zero();
    for (int i = 1; i <= 600; i++) {
      row(i, i * 0.0011, hardening(i * 0.0011));
    }
    CrackResult result = tracker.result(List.of());
    FirstCrack.Figure limit = result.firstCrack().bySmallWidth().orElseThrow();
    assertThat(limit.newtons()).isCloseTo(12_040, within(1e-6));
    assertThat(limit.firstSeq()).isEqualTo(45);
    assertThat(limit.lastSeq()).isEqualTo(46);
    assertThat(result.crossings()).hasSize(1);
    assertThat(result.crossings().get(0).newtons()).isCloseTo(hardening(0.5), within(1e-6));
  }

  @Test
  void opening_touchesThresholdBriefly_notCrossed() {
    zero();
    for (int i = 1; i <= 100; i++) {
      row(i, i % 50 == 0 ? 0.51 : 0.4, 9_000);
    }
    assertThat(tracker.result(List.of()).crossings()).isEmpty();
  }

  @Test
  void opening_firstRowAlreadyBeyond_saidNotInterpolated() {
    zero();
    for (int i = 1; i <= 30; i++) {
      row(i, 0.6, 9_000);
    }
    Thresholds.Crossing only = tracker.result(List.of()).crossings().get(0);
    assertThat(only.interpolated()).isFalse();
    assertThat(only.newtons()).isEqualTo(9_000);
  }
}
