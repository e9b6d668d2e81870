package io.github.platenwire.audit;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.Test;

/**
 * Indicators so coarse that they show no noise, in frames that hold their rate perfectly or nearly
 * so: what two honest tests and a copy come to. The limits were chosen on the first set. The
 * second, with other steps, rates, jitter and evenness, showed that rounding which repeats each
 * three readings was taken for noise; that limit follows from arithmetic now. The third, different
 * again, played no part in anything. All counts are printed.
 */
class MuteTwinsTest {
  /** 8 of each kind in the usual run, 60 in the long one. */
  private static final int SPECIMENS = Integer.getInteger("platenwire.mute.specimens", 8);

  private static final int COPIED = 2;

  /** A frame without noise, and how evenly it loads. */
  private record Kind(String step, double hertz, double jitter, double wander, boolean pounds) {
    LoadTrace trace(long seed) {
      return EmulatedTraces.evenCylinder(stepKilonewtons(), hertz, jitter, wander, seed);
    }

    private double stepKilonewtons() {
      return Double.parseDouble(step) * (pounds ? 0.004448222 : 1);
    }

    /**
     * Whether the rate wanders enough to show: by two hundredths or more, in steps of no more than
     * 1 kN, a fortieth of the load that the comparison begins at.
     */
    boolean hasCourse() {
      return wander >= 0.02 && stepKilonewtons() <= 1;
    }
  }

  private static List<Kind> kinds(
      String[] steps, double[] hertz, double[] jitters, double[] wanders, boolean pounds) {
    List<Kind> kinds = new ArrayList<>();
    for (int i = 0; i < steps.length; i++) {
      for (double jitter : jitters) {
        for (double wander : wanders) {
          kinds.add(new Kind(steps[i], hertz[i], jitter, wander, pounds));
        }
      }
    }
    return kinds;
  }

  private static List<Kind> chosenOn() {
    return kinds(
        new String[] {"1.00", "0.50", "5.00", "2.00", "0.10"},
        new double[] {10, 10, 10, 100, 10},
        new double[] {0},
        new double[] {0, 0.005, 0.01, 0.04},
        false);
  }

  private static List<Kind> heldAgainst() {
    List<Kind> kinds =
        kinds(
            new String[] {"0.75", "2.50", "0.20", "4.00"},
            new double[] {8, 15, 25, 40},
            new double[] {0, 0.2},
            new double[] {0, 0.003, 0.02},
            false);
    kinds.addAll(
        kinds(
            new String[] {"200", "1000"},
            new double[] {12, 30},
            new double[] {0, 0.1},
            new double[] {0, 0.03},
            true));
    return kinds;
  }

  private static List<Kind> untouched() {
    List<Kind> kinds =
        kinds(
            new String[] {"0.30", "1.50", "0.40"},
            new double[] {6, 60, 33},
            new double[] {0, 0.1},
            new double[] {0, 0.001, 0.015},
            false);
    kinds.addAll(
        kinds(
            new String[] {"100", "500"},
            new double[] {9, 20},
            new double[] {0, 0.3},
            new double[] {0, 0.025},
            true));
    return kinds;
  }

  private static int called(List<LoadTrace> traces) {
    int called = 0;
    for (int i = 0; i < traces.size(); i++) {
      for (int j = i + 1; j < traces.size(); j++) {
        called += TwinTest.compare(traces.get(i), traces.get(j)).isPresent() ? 1 : 0;
      }
    }
    return called;
  }

  /** Pairs whose changes agree: enough to be called, if they had no need of a proof besides. */
  private static int alike(List<LoadTrace> traces) {
    int alike = 0;
    for (int i = 0; i < traces.size(); i++) {
      for (int j = i + 1; j < traces.size(); j++) {
        LoadTrace a = traces.get(i);
        LoadTrace b = traces.get(j);
        double same =
            ChangeMatch.of(a, Landmarks.of(a).orElseThrow(), b, Landmarks.of(b).orElseThrow());
        alike += same > TwinTest.SAME_CHANGES ? 1 : 0;
      }
    }
    return alike;
  }

  private static void honest(String set, List<Kind> kinds) {
    int pairs = 0;
    int alike = 0;
    int called = 0;
    for (Kind kind : kinds) {
      List<LoadTrace> traces = new ArrayList<>();
      for (int seed = 0; seed < SPECIMENS; seed++) {
        traces.add(kind.trace(seed));
      }
      pairs += SPECIMENS * (SPECIMENS - 1) / 2;
      alike += alike(traces);
      int wrongly = called(traces);
      called += wrongly;
      assertThat(wrongly).as(kind.toString()).isZero();
    }
    System.out.printf(
        Locale.ROOT,
        "mute, honest, %s: %d pairs of %d kinds, %d with the same changes, %d called re-used%n",
        set,
        pairs,
        kinds.size(),
        alike,
        called);
  }

  @Test
  void compare_honestEvenLoadings_areNoTwins() {
    honest("chosen on", chosenOn());
    honest("held against", heldAgainst());
    honest("untouched", untouched());
  }

  @Test
  void compare_honestBeamsLoadedPerfectlyEvenly_areNoTwins() {
    double[][] devices = {
      {50, 100, 0}, {10, 100, 0}, {100, 500, 0}, {100, 500, 0.3}, {25, 250, 0}, {25, 250, 0.2}
    };
    int alike = 0;
    for (double[] device : devices) {
      List<LoadTrace> traces = new ArrayList<>();
      for (int seed = 0; seed < 8; seed++) {
        traces.add(EmulatedTraces.evenBeam(device[0], device[1], device[2], seed));
      }
      alike += alike(traces);
      assertThat(called(traces)).as(Arrays.toString(device)).isZero();
    }
    System.out.println("mute, honest beams: 168 pairs, " + alike + " with the same changes");
    assertThat(alike).as("pairs that would fail if no proof besides were needed").isPositive();
  }

  private static void forged(List<Kind> kinds) {
    for (Kind kind : kinds) {
      int told = 0;
      int all = 0;
      for (int seed = 0; seed < COPIED; seed++) {
        LoadTrace victim = kind.trace(seed);
        for (Map.Entry<String, LoadTrace> forgery : forgeries(victim).entrySet()) {
          all++;
          boolean found = TwinTest.compare(victim, forgery.getValue()).isPresent();
          told += found ? 1 : 0;
        }
      }
      System.out.printf(Locale.ROOT, "mute, forged, %s: %d of %d found%n", kind, told, all);
      if (kind.hasCourse()) {
        assertThat(told).as(kind.toString()).isEqualTo(all);
      }
    }
  }

  private static Map<String, LoadTrace> forgeries(LoadTrace trace) {
    Map<String, LoadTrace> forgeries = new LinkedHashMap<>();
    forgeries.put("copy", Forgeries.scaled(trace, 1, 1, trace.step()));
    forgeries.put("slower", Forgeries.scaled(trace, 1, 1.07, trace.step()));
    forgeries.put("cropped", Forgeries.cropped(trace));
    forgeries.put("replayed", Forgeries.replayed(trace, 3));
    return forgeries;
  }

  @Test
  void compare_copiesOfLoadingsThatWander_areFound() {
    forged(chosenOn());
    forged(heldAgainst());
    forged(untouched());
  }
}
