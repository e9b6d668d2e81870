package io.github.platenwire.live;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.platenwire.live.BreakDetector.Event;
import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;

class BreakDetectorTest {
  private static final BreakDetector.Settings SETTINGS =
      new BreakDetector.Settings(0.95, 200_000, 3, 20_000, 3_000_000, 0.5, 0.01);

  private final BreakDetector detector = new BreakDetector(SETTINGS);
  private final List<Event> events = new ArrayList<>();
  private long seq;
  private long micros;

  /** Readings 100 ms apart. */
  private void feed(double... loads) {
    for (double load : loads) {
      micros += 100_000;
      Event event = detector.accept(++seq, micros, load);
      if (event != Event.NONE) {
        events.add(event);
      }
    }
  }

  @Test
  void accept_lastingLoss_isABreakAtTheThirdLowReading() {
    feed(100_000, 250_000, 90_000, 85_000);
    assertThat(events).isEmpty();
    assertThat(detector.isLow()).isTrue();
    feed(84_000);
    assertThat(events).containsExactly(Event.BREAK);
    assertThat(detector.lostSeq()).isEqualTo(3);
    assertThat(detector.lostMicros()).isEqualTo(300_000);
    assertThat(detector.tailEndMicros()).isEqualTo(500_000 + 3_000_000);
  }

  @Test
  void accept_exactlyAtTheFraction_isNotLow() {
    feed(100_000, 95_000, 95_000, 95_000, 95_000);
    assertThat(events).isEmpty();
    assertThat(detector.isLow()).isFalse();
  }

  @Test
  void accept_oneLowReading_isNoBreak() {
    feed(250_000, 90_000, 249_000, 251_000);
    assertThat(events).isEmpty();
    assertThat(detector.isLow()).isFalse();
  }

  @Test
  void accept_seatingDropAtLowLoad_isNoBreak() {
    feed(15_000, 13_000, 13_000, 13_000, 13_000, 14_000, 16_000, 30_000);
    assertThat(events).isEmpty();
  }

  @Test
  void accept_dropThatIsRegained_isWithdrawn() {
    feed(100_000, 88_000, 89_000, 90_000, 95_000, 99_000, 100_000);
    assertThat(events).containsExactly(Event.BREAK);
    feed(100_001);
    assertThat(events).containsExactly(Event.BREAK, Event.WITHDRAWN);
    assertThat(detector.isLost()).isFalse();
    assertThat(detector.tailEndMicros()).isEqualTo(BreakDetector.NEVER);
  }

  @Test
  void accept_dropSlowlyRegained_lengthensTheTailUntilWithdrawn() {
    feed(100_000);
    double load = 88_000;
    while (load <= 100_000) {
      feed(load);
      load += 50; // half a kN/s: 24 s in all, eight tails
      assertThat(micros).isLessThan(detector.tailEndMicros());
    }
    feed(load);
    assertThat(events).containsExactly(Event.BREAK, Event.WITHDRAWN);
  }

  @Test
  void accept_rubbleGainingFarBelowThePeak_doesNotLengthenTheTail() {
    feed(100_000, 20_000, 20_000, 20_000);
    long end = detector.tailEndMicros();
    feed(25_000, 30_000, 35_000, 40_000);
    assertThat(detector.tailEndMicros()).isEqualTo(end);
  }

  @Test
  void accept_slowSoftening_isABreakOnceBelowTheFraction() {
    feed(100_000);
    for (double load = 99_900; load > 94_500; load -= 100) {
      feed(load);
    }
    assertThat(events).containsExactly(Event.BREAK);
    assertThat(detector.lostMicros()).isGreaterThan(5_000_000);
  }

  @Test
  void accept_secondBreakAfterWithdrawal_isTold() {
    feed(100_000, 50_000, 50_000, 50_000, 110_000, 50_000, 50_000, 50_000);
    assertThat(events).containsExactly(Event.BREAK, Event.WITHDRAWN, Event.BREAK);
  }

  @Property(seed = "20261127")
  void tailEndMicrosWith_anyReadings_isWhatAcceptBringsAbout(@ForAll("loads") List<Double> loads) {
    BreakDetector one = new BreakDetector(SETTINGS);
    one.accept(1, 0, 100_000);
    for (int i = 0; i < loads.size(); i++) {
      long t = (i + 1) * 100_000L;
      long foretold = one.tailEndMicrosWith(t, loads.get(i));
      one.accept(i + 2, t, loads.get(i));
      assertThat(one.tailEndMicros()).isEqualTo(foretold);
    }
  }

  /** Against a search over the whole array, with no state of its own. */
  @Property(seed = "20261128")
  void accept_anyReadings_breaksWhereAWholeArraySearchDoes(@ForAll("loads") List<Double> loads) {
    BreakDetector one = new BreakDetector(SETTINGS);
    int first = -1;
    for (int i = 0; i < loads.size() && first < 0; i++) {
      first = one.accept(i + 1, i * 100_000L, loads.get(i)) == Event.BREAK ? i : -1;
    }
    assertThat(first).isEqualTo(firstBreak(loads));
  }

  private static int firstBreak(List<Double> loads) {
    for (int i = 2; i < loads.size(); i++) {
      double peak = loads.subList(0, i + 1).stream().mapToDouble(d -> d).max().orElseThrow();
      boolean low = peak >= 20_000;
      for (int j = i - 2; j <= i; j++) {
        double peakThen = loads.subList(0, j + 1).stream().mapToDouble(d -> d).max().orElseThrow();
        low &= loads.get(j) < 0.95 * peakThen && peakThen >= 20_000;
      }
      if (low) {
        return i;
      }
    }
    return -1;
  }

  @Provide
  Arbitrary<List<Double>> loads() {
    return Arbitraries.of(10_000.0, 19_000.0, 50_000.0, 94_000.0, 95_000.0, 99_000.0, 101_000.0)
        .list()
        .ofMinSize(1)
        .ofMaxSize(60);
  }
}
