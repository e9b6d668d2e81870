package io.github.platenwire.live;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;

/** Truth against measured over seeded random beams (issue 3: bounds of error and coverage). */
class RandomBeamsTest {
  private static final int BEAMS = 300;

  private static final class Tally {
    final String name;
    final double bound;
    final List<Double> errors = new ArrayList<>();
    final List<Double> claims = new ArrayList<>();
    final List<String> beyond = new ArrayList<>();
    int covered;

    Tally(String name, double bound) {
      this.name = name;
      this.bound = bound;
    }

    void add(long seed, double truth, double measured, double uncertainty, double scale) {
      double error = (measured - truth) / scale;
      errors.add(error);
      claims.add(uncertainty / scale);
      covered += Math.abs(measured - truth) <= uncertainty ? 1 : 0;
      if (!(Math.abs(error) <= Math.max(bound, uncertainty / scale))) {
        beyond.add(
            "seed "
                + seed
                + " truth "
                + truth
                + " error "
                + error
                + " claimed "
                + uncertainty / scale);
      }
    }

    double coverage() {
      return (double) covered / errors.size();
    }

    String line() {
      List<Double> sorted = new ArrayList<>(errors);
      Collections.sort(sorted);
      Collections.sort(claims);
      return String.format(
          Locale.ROOT,
          "%-32s n=%4d error min %+.4f p5 %+.4f median %+.4f p95 %+.4f max %+.4f"
              + " | claimed median %.4f | covered %.1f %% | beyond bound and claim %d",
          name,
          sorted.size(),
          sorted.get(0),
          sorted.get(sorted.size() / 20),
          sorted.get(sorted.size() / 2),
          sorted.get(sorted.size() * 19 / 20),
          sorted.get(sorted.size() - 1),
          claims.get(claims.size() / 2),
          100 * coverage(),
          beyond.size());
    }
  }

  private final Tally departure = new Tally("first crack by departure, share", 0.02);
  private final Tally smallWidth = new Tally("first crack by 0.05 mm, share", 0.02);
  private final Tally widths = new Tally("width at load, mm", 0.005);
  private final Tally loads = new Tally("load at threshold, share", 0.01);
  private int falseThresholds;
  private int missedThresholds;
  private int lost;

  @Test
  void randomBeams_measured_withinBoundsAndClaims() {
    for (long seed = 1; seed <= BEAMS; seed++) {
      compare(seed);
    }
    List<Tally> all = List.of(departure, smallWidth, widths, loads);
    all.forEach(tally -> System.out.println(tally.line()));
    for (Tally tally : all) {
      assertThat(tally.coverage()).as(tally.name).isGreaterThan(0.93);
    }
    assertThat(departure.beyond).isEmpty();
    assertThat(smallWidth.beyond).isEmpty();
    assertThat(widths.beyond).isEmpty();
    assertThat(loads.beyond).isEmpty();
    assertThat(falseThresholds).isZero();
    assertThat(missedThresholds).isZero();
    assertThat(lost).isZero();
  }

  private void compare(long seed) {
    SyntheticBeam beam = SyntheticBeam.random(seed);
    CrackFeed feed = beam.feed(beam.settings(), new CrackListener() {});
    SyntheticBeam.give(feed, beam.readings(seed));
    List<Double> asked = new ArrayList<>();
    for (double share = 0.15; share < 0.97; share += 0.2) {
      asked.add(share * beam.greatestLoad());
    }
    CrackResult result = feed.tracker().result(asked);
    lost += result.losses().size();
    FirstCrack.Figure left = result.firstCrack().byDeparture().orElseThrow();
    departure.add(
        seed, beam.crackNewtons, left.newtons(), left.uncertaintyNewtons(), beam.crackNewtons);
    double small =
        beam.loadWhere(t -> beam.meanCompliance() * beam.loadAt(t) + beam.widthAt(t), 0.05);
    FirstCrack.Figure by = result.firstCrack().bySmallWidth().orElseThrow();
    smallWidth.add(seed, small, by.newtons(), by.uncertaintyNewtons(), small);
    assertThat(result.widths()).hasSize(asked.size());
    for (WidthAtLoad width : result.widths()) {
      double truth = beam.widthAt(beam.firstTimeOf(width.newtons()));
      widths.add(seed, truth, width.millimetres(), width.parts().expanded(), 1);
    }
    compareThresholds(seed, beam, result);
  }

  private void compareThresholds(long seed, SyntheticBeam beam, CrackResult result) {
    for (Thresholds.Crossing crossing : result.crossings()) {
      double truth = beam.loadWhere(beam::widthAt, crossing.threshold().millimetres());
      if (Double.isNaN(truth)) {
        falseThresholds++;
      } else {
        loads.add(seed, truth, crossing.newtons(), crossing.uncertaintyNewtons(), truth);
      }
    }
    double surely = beam.widthAt(beam.seconds() - 1) - 0.002;
    missedThresholds +=
        (int)
            beam.settings().thresholds().stream()
                .filter(each -> each.millimetres() < surely)
                .filter(
                    each ->
                        result.crossings().stream().noneMatch(it -> it.threshold().equals(each)))
                .count();
  }
}
