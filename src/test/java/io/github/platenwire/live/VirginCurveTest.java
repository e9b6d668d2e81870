package io.github.platenwire.live;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class VirginCurveTest {
  private final VirginCurve curve = new VirginCurve(10, 16);
  private long seq;

  private void row(double load, double width) {
    CrackRow row = new CrackRow();
    seq++;
    row.seq = seq;
    row.firstSeq = seq;
    row.micros = seq * 1000;
    row.load = load;
    row.width = width;
    row.mask = 3;
    row.rows = 1;
    curve.accept(row);
  }

  @Test
  void load_firstUpCrossing_interpolatedWithItsRows() {
    row(0, 0);
    row(25, 0.25);
    assertThat(curve.widthAt(10)).isCloseTo(0.1, within(1e-12));
    assertThat(curve.widthAt(15)).isCloseTo(0.15, within(1e-12));
    assertThat(curve.firstSeq(1)).isEqualTo(1);
    assertThat(curve.lastSeq(1)).isEqualTo(2);
    assertThat(curve.widthAt(24)).isNaN();
    assertThat(curve.widthAt(-1)).isNaN();
  }

  @Test
  void load_reachedAgain_firstWidthStays() {
    row(0, 0);
    row(50, 0.5);
    row(0, 0.3);
    row(50, 0.7);
    row(80, 1.0);
    assertThat(curve.widthAt(50)).isCloseTo(0.5, within(1e-12));
    assertThat(curve.widthAt(60)).isCloseTo(0.8, within(1e-12));
  }

  @Test
  void load_beyondTheRoom_stepDoublesAndFormerPointsStay() {
    for (int i = 0; i <= 100; i++) {
      row(i * 10, i * 0.1);
    }
    assertThat(curve.step()).isEqualTo(80);
    for (double load = 0; load <= 960; load += 80) {
      assertThat(curve.widthAt(load)).isCloseTo(load / 100, within(1e-9));
    }
    assertThat(curve.points()).hasSize(13);
  }

  @Test
  void firstRow_alreadyLoaded_nothingBelowIt() {
    row(45, 0.1);
    row(65, 0.3);
    assertThat(curve.widthAt(40)).isNaN();
    assertThat(curve.widthAt(50)).isCloseTo(0.15, within(1e-12));
    assertThat(curve.points()).hasSize(2);
  }
}
