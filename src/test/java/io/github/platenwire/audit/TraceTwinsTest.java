package io.github.platenwire.audit;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.platenwire.audit.TraceTwins.Twin;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/**
 * Traces of emulated specimens, honest and copied. The figures they come to are printed, so that
 * the distance between the two can be seen.
 */
class TraceTwinsTest {
  private static final int SPECIMENS = 24;

  /** Names of the forgeries that only noise can give away: they need an indicator that shows it. */
  private static final List<String> NEED_NOISE =
      List.of("scaled", "scaled much", "noisy", "thinned", "other rate", "denser");

  @Test
  void find_honestCompanions_areNoTwins() throws Exception {
    for (EmulatedTraces.Kind kind : EmulatedTraces.kinds()) {
      TraceTwins twins = new TraceTwins();
      Map<String, LoadTrace> traces = new LinkedHashMap<>();
      for (int seed = 0; seed < SPECIMENS; seed++) {
        traces.put("honest-" + seed, EmulatedTraces.cylinder(kind.indicator(), seed));
      }
      traces.forEach(twins::add);
      List<Twin> found = twins.find(traces::get);
      print(kind.name(), new ArrayList<>(traces.values()));
      assertThat(found).as(kind.name()).isEmpty();
    }
  }

  /** Every pair is compared here, whether or not their outlines are alike. */
  private static void print(String kind, List<LoadTrace> traces) {
    double noise = -1;
    double same = 0;
    int pairs = 0;
    int mute = 0;
    for (int i = 0; i < traces.size(); i++) {
      for (int j = i + 1; j < Math.min(traces.size(), i + 4); j++) {
        LoadTrace a = traces.get(i);
        LoadTrace b = traces.get(j);
        Landmarks first = Landmarks.of(a).orElseThrow();
        Landmarks second = Landmarks.of(b).orElseThrow();
        Optional<NoiseMatch.Found> match = NoiseMatch.of(a, first, b, second);
        noise = Math.max(noise, match.map(NoiseMatch.Found::correlation).orElse(-1.0));
        mute += match.isEmpty() ? 1 : 0;
        same = Math.max(same, ChangeMatch.of(a, first, b, second));
        pairs++;
        assertThat(TwinTest.compare(a, b)).as(kind).isEmpty();
      }
    }
    System.out.printf(
        Locale.ROOT,
        "honest %-40s %d pairs: greatest correlation of noise %.2f (%d mute), equal changes"
            + " %.3f%n",
        kind,
        pairs,
        noise,
        mute,
        same);
  }

  @Test
  void find_copiesAmongHonest_findsEachAndOnlyThem() throws Exception {
    for (EmulatedTraces.Kind kind : EmulatedTraces.kinds()) {
      Map<String, LoadTrace> traces = new LinkedHashMap<>();
      for (int seed = 100; seed < 112; seed++) {
        traces.put("honest-" + seed, EmulatedTraces.cylinder(kind.indicator(), seed));
      }
      LoadTrace victim = EmulatedTraces.cylinder(kind.indicator(), 5);
      traces.put("victim", victim);
      for (Map.Entry<String, LoadTrace> forgery : forgeries(kind, victim).entrySet()) {
        TraceTwins twins = new TraceTwins();
        Map<String, LoadTrace> archive = new LinkedHashMap<>(traces);
        archive.put("forged", forgery.getValue());
        archive.forEach(twins::add);
        List<Twin> found = twins.find(archive::get);
        assertThat(found)
            .as(kind.name() + ": " + forgery.getKey())
            .singleElement()
            .satisfies(
                twin -> {
                  assertThat(twin.earlier()).isEqualTo("victim");
                  assertThat(twin.later()).isEqualTo("forged");
                  System.out.printf(
                      Locale.ROOT,
                      "forged %-40s %-12s %s %.3f%n",
                      kind.name(),
                      forgery.getKey(),
                      twin.evidence().byNoise() ? "noise" : "equal changes",
                      twin.evidence().figure());
                });
      }
    }
  }

  private static Map<String, LoadTrace> forgeries(EmulatedTraces.Kind kind, LoadTrace trace) {
    double step = trace.step();
    Map<String, LoadTrace> forgeries = new LinkedHashMap<>();
    forgeries.put("copy", Forgeries.scaled(trace, 1, 1, step));
    forgeries.put("slower", Forgeries.scaled(trace, 1, 1.07, step));
    forgeries.put("scaled", Forgeries.scaled(trace, 0.97, 1.03, step));
    forgeries.put("scaled much", Forgeries.scaled(trace, 1.31, 0.8, step));
    forgeries.put("noisy", Forgeries.noisy(trace, 0.8, step, 7));
    forgeries.put("cropped", Forgeries.cropped(trace));
    forgeries.put("thinned", Forgeries.thinned(trace, 2));
    forgeries.put("other rate", Forgeries.resampled(trace, 0.8, step));
    forgeries.put("denser", Forgeries.resampled(trace, 1.6, step));
    forgeries.put("replayed", Forgeries.replayed(trace, 3));
    if (!kind.showsNoise()) {
      NEED_NOISE.forEach(forgeries::remove);
    } else if (kind.indicator().rateHertz() < 20) {
      List.of("noisy", "thinned", "other rate", "denser").forEach(forgeries::remove);
    }
    return forgeries;
  }

  @Test
  void find_beamsLoadedInTheSameWay_areNoTwins() throws Exception {
    for (double[] device : new double[][] {{5, 1}, {20, 10}, {10, 50}, {2, 100}}) {
      TraceTwins twins = new TraceTwins();
      Map<String, LoadTrace> traces = new LinkedHashMap<>();
      for (int seed = 0; seed < 12; seed++) {
        traces.put("beam-" + seed, EmulatedTraces.beamLoad(device[0], device[1], seed));
      }
      traces.forEach(twins::add);
      assertThat(twins.find(traces::get))
          .as("noise " + device[0] + " N, step " + device[1] + " N")
          .isEmpty();
    }
  }

  @Test
  void find_beamCopied_isFound() throws Exception {
    TraceTwins twins = new TraceTwins();
    Map<String, LoadTrace> traces = new LinkedHashMap<>();
    for (int seed = 0; seed < 6; seed++) {
      traces.put("beam-" + seed, EmulatedTraces.beamLoad(5, 1, seed));
    }
    traces.put("forged", Forgeries.scaled(EmulatedTraces.beamLoad(5, 1, 3), 1.02, 0.99, 0.001));
    traces.forEach(twins::add);
    assertThat(twins.find(traces::get))
        .singleElement()
        .satisfies(twin -> assertThat(twin.earlier()).isEqualTo("beam-3"));
  }

  /** Fewer pairs than each with each, though no near pair is missed. */
  @Test
  void pairs_outlinesSpreadOut_areThoseOfEachWithEach() {
    List<TraceShape> shapes = new ArrayList<>();
    EmulatedTraces.Kind kind = EmulatedTraces.kinds().get(0);
    for (int seed = 0; seed < 60; seed++) {
      shapes.add(TraceShape.of(EmulatedTraces.cylinder(kind.indicator(), seed)).orElseThrow());
    }
    List<ShapeGrid.Pair> each = new ArrayList<>();
    for (int i = 0; i < shapes.size(); i++) {
      for (int j = i + 1; j < shapes.size(); j++) {
        if (TwinTest.areNear(shapes.get(i), shapes.get(j))) {
          each.add(new ShapeGrid.Pair(i, j));
        }
      }
    }
    ShapeGrid grid = new ShapeGrid(shapes);
    assertThat(grid.pairs()).containsExactlyInAnyOrderElementsOf(each);
    System.out.println(
        "outlines: " + each.size() + " near pairs of 1770; looked at " + grid.lookedAt());
    assertThat(grid.lookedAt()).isLessThan(1770);
  }
}
