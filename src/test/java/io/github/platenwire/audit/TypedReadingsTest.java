package io.github.platenwire.audit;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.TreeSet;
import java.util.function.IntToDoubleFunction;
import org.junit.jupiter.api.Test;

/** Honest emulated traces have no mark, made-up ones have the mark that gives them away. */
class TypedReadingsTest {
  private static final int SEEDS = 25;

  @Test
  void of_honestCylinders_haveNoMark() {
    for (EmulatedTraces.Kind kind : EmulatedTraces.kinds()) {
      double leastNoise = 1;
      double mostLiked = 0;
      int mostStraight = 0;
      int evenRun = 0;
      double resolution = kind.indicator().resolution().doubleValue();
      for (int seed = 0; seed < SEEDS; seed++) {
        LoadTrace trace = EmulatedTraces.cylinder(kind.indicator(), 1000 + seed);
        assertThat(TypedReadings.of(trace, OptionalDouble.of(resolution)))
            .as(kind.name() + " seed " + (1000 + seed))
            .isEmpty();
        Landmarks rise = Landmarks.of(trace).orElseThrow();
        leastNoise = Math.min(leastNoise, TypedReadings.noiseShare(trace, rise));
        LastDigits digits = LastDigits.of(trace);
        mostLiked = Math.max(mostLiked, digits.number() >= 100 ? digits.share() : 0);
        mostStraight = Math.max(mostStraight, StraightRuns.parts(trace, rise, 400));
        evenRun = Math.max(evenRun, EvenIntervals.longestRun(trace.micros()));
      }
      System.out.printf(
          Locale.ROOT,
          "honest %-40s least noise %5.1f millionths, liked digits at most %.2f, straight parts %d,"
              + " even intervals %d%n",
          kind.name(),
          leastNoise * 1e6,
          mostLiked,
          mostStraight,
          evenRun);
    }
  }

  @Test
  void of_honestBeams_haveNoMark() {
    for (int seed = 0; seed < SEEDS; seed++) {
      assertThat(TypedReadings.of(EmulatedTraces.beamLoad(5, 1, seed), OptionalDouble.of(0.001)))
          .as("seed " + seed)
          .isEmpty();
    }
  }

  /** The search by a carried hash finds what a search of each against each finds. */
  @Test
  void repeatedNoise_anyTrace_isFoundAsBySimpleSearch() {
    int found = 0;
    for (int seed = 0; seed < 60; seed++) {
      Random random = new Random(seed);
      long[] counts = new long[200 + random.nextInt(200)];
      int spread = 2 + random.nextInt(12);
      for (int i = 0; i < counts.length; i++) {
        counts[i] = i / 2L + random.nextInt(spread);
      }
      if (seed % 2 == 0) {
        int length = 20 + random.nextInt(40);
        int to = 100 + random.nextInt(40);
        for (int i = 0; i < length; i++) {
          counts[to + i] = counts[10 + i] + 77;
        }
      }
      Optional<RepeatedNoise.Found> simple = simpleSearch(counts);
      assertThat(RepeatedNoise.find(counts)).as("seed " + seed).isEqualTo(simple);
      found += simple.isPresent() ? 1 : 0;
    }
    assertThat(found).isBetween(10, 50);
  }

  private static Optional<RepeatedNoise.Found> simpleSearch(long[] counts) {
    for (int later = RepeatedNoise.LENGTH; later + RepeatedNoise.LENGTH < counts.length; later++) {
      for (int first = 0; first + RepeatedNoise.LENGTH <= later; first++) {
        if (isSame(counts, first, later) && isNoise(counts, first)) {
          return Optional.of(new RepeatedNoise.Found(first, later));
        }
      }
    }
    return Optional.empty();
  }

  private static boolean isSame(long[] counts, int first, int later) {
    boolean same = true;
    for (int i = 1; i <= RepeatedNoise.LENGTH; i++) {
      same &= counts[first + i] - counts[first] == counts[later + i] - counts[later];
    }
    return same;
  }

  private static boolean isNoise(long[] counts, int from) {
    TreeSet<Long> different = new TreeSet<>();
    for (int i = 0; i < RepeatedNoise.LENGTH; i++) {
      different.add(counts[from + i + 1] - counts[from + i]);
    }
    return different.size() >= 6 && different.first() < 0 && different.last() > 0;
  }

  /** A trace typed or computed: 50 a second, each value printed with a pattern. */
  private static LoadTrace made(String pattern, int readings, IntToDoubleFunction kilonewtons) {
    TraceBuilder builder = new TraceBuilder("load");
    for (int i = 0; i < readings; i++) {
      String text = String.format(Locale.ROOT, pattern, kilonewtons.applyAsDouble(i));
      builder.add(
          20_000L * i + 137L * (i % 7),
          text.getBytes(StandardCharsets.US_ASCII),
          Double.parseDouble(text.replaceAll("[^0-9.+-]", "")));
    }
    return builder.trace();
  }

  private static List<String> seen(LoadTrace trace) {
    List<String> seen =
        TypedReadings.of(trace, OptionalDouble.of(0.01)).stream()
            .map(TypedReadings.Mark::seen)
            .toList();
    System.out.println("made up: " + seen);
    return seen;
  }

  @Test
  void of_straightLine_isMarked() {
    assertThat(seen(made("%+08.2f kN", 2000, i -> i < 1900 ? i * 0.1137 : 20)))
        .anyMatch(words -> words.contains("straight line"));
  }

  @Test
  void of_smoothCurveInFineSteps_isMarked() {
    assertThat(
            seen(made("%+09.4f kN", 2000, i -> i < 1900 ? 200 * Math.sin(i * Math.PI / 3800) : 20)))
        .anyMatch(words -> words.contains("scatter by"));
  }

  @Test
  void of_evenIntervalsAndSmoothCurve_isMarkedWhereNoiseWouldNotBeEnough() {
    LoadTrace uneven =
        made("%+09.3f kN", 2000, i -> i < 1900 ? 40 * Math.sin(i * Math.PI / 3800) : 4);
    assertThat(TypedReadings.of(uneven, OptionalDouble.empty())).isEmpty();
    long[] micros = new long[uneven.length()];
    for (int i = 0; i < micros.length; i++) {
      micros[i] = 20_000L * i;
    }
    LoadTrace even = new LoadTrace(micros, uneven.values(), uneven.counts(), 3, 3);
    assertThat(seen(even)).anyMatch(words -> words.contains("equal to the microsecond"));
  }

  @Test
  void of_digitsThatPeopleLike_areMarked() {
    Random random = new Random(4);
    // three of five readings rounded to the next five, as people do
    assertThat(
            seen(
                made(
                    "%+08.2f kN",
                    1000,
                    i -> {
                      double value = (i < 900 ? i * 0.2 : 15) + 0.05 * random.nextGaussian();
                      return i % 5 < 3 ? Math.rint(value * 20) / 20 : value;
                    })))
        .anyMatch(words -> words.contains("end in 0 or 5"));
  }

  @Test
  void of_noisePastedTwice_isMarked() {
    double[] noise = new Random(5).doubles(400, -0.1, 0.1).toArray();
    assertThat(seen(made("%+08.2f kN", 2000, i -> (i < 1900 ? i * 0.1 : 15) + noise[i % 400])))
        .anyMatch(words -> words.contains("come again"));
  }

  @Test
  void of_moreDigitsThanTheDeviceHas_areMarked() {
    Random random = new Random(6);
    assertThat(
            seen(
                made(
                    "%+09.3f kN",
                    2000, i -> (i < 1900 ? i * 0.1 : 15) + 0.02 * random.nextGaussian())))
        .anyMatch(words -> words.contains("lie between two steps"));
  }

  @Test
  void of_decimalsThatVary_areMarked() {
    Random random = new Random(7);
    TraceBuilder builder = new TraceBuilder("load");
    for (int i = 0; i < 1000; i++) {
      double value = (i < 900 ? i * 0.2 : 15) + 0.02 * random.nextGaussian();
      String text = String.format(Locale.ROOT, i % 9 == 0 ? "%.1f kN" : "%.2f kN", value);
      builder.add(
          20_000L * i + 91L * (i % 5),
          text.getBytes(StandardCharsets.US_ASCII),
          Double.parseDouble(text.substring(0, text.length() - 3)));
    }
    assertThat(seen(builder.trace())).contains("between 1 and 2 decimals");
  }
}
