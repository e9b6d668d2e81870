package io.github.platenwire.live;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;

class PeakTrackerTest {
  private final PeakTracker tracker = new PeakTracker();

  private void feed(double... loads) {
    for (int i = 0; i < loads.length; i++) {
      tracker.accept(10 + i, i * 100_000L, loads[i]);
    }
  }

  @Test
  void peak_plateau_isItsFirstReading() {
    feed(1, 5, 5, 5, 2);
    assertThat(tracker.peakSeq()).isEqualTo(11);
    assertThat(tracker.beforeSeq()).isEqualTo(10);
    assertThat(tracker.afterSeq()).isEqualTo(12);
  }

  @Test
  void peak_first_hasNoNeighbourBefore() {
    feed(9, 5, 4);
    assertThat(tracker.peakSeq()).isEqualTo(10);
    assertThat(tracker.beforeSeq()).isZero();
    assertThat(tracker.afterSeq()).isEqualTo(11);
  }

  @Test
  void peak_last_hasNoNeighbourAfter() {
    feed(1, 2, 3);
    assertThat(tracker.peakSeq()).isEqualTo(12);
    assertThat(tracker.afterSeq()).isZero();
  }

  @Test
  void peak_nothingSeen_isNotKnown() {
    assertThat(tracker.peak()).isNaN();
    assertThat(tracker.peakSeq()).isZero();
  }

  @Test
  void peak_allBelowNought_isTheGreatest() {
    feed(-5, -2, -9);
    assertThat(tracker.peak()).isEqualTo(-2);
  }

  @Test
  void samplingBound_unequalIntervals_takesTheLonger() {
    tracker.accept(1, 0, 1);
    tracker.accept(2, 100_000, 9);
    tracker.accept(3, 400_000, 2);
    assertThat(tracker.samplingBound(2000, 0)).isCloseTo(600, within(1e-9));
    assertThat(tracker.samplingBound(-2000, 500_000)).isCloseTo(1000, within(1e-9));
    assertThat(tracker.samplingBound(Double.NaN, 0)).isNaN();
  }

  @Property(seed = "20261126")
  void peak_anyLoads_isTheFirstGreatestOfTheWholeArray(
      @ForAll @Size(min = 1, max = 200) List<@DoubleRange(min = -3, max = 3) Double> loads) {
    PeakTracker any = new PeakTracker();
    int best = 0;
    for (int i = 0; i < loads.size(); i++) {
      any.accept(i + 1, i, loads.get(i));
      best = loads.get(i) > loads.get(best) ? i : best;
    }
    assertThat(any.peak()).isEqualTo(loads.get(best));
    assertThat(any.peakSeq()).isEqualTo(best + 1);
    assertThat(any.beforeSeq()).isEqualTo(best);
    assertThat(any.afterSeq()).isEqualTo(best + 1 < loads.size() ? best + 2 : 0);
  }
}
