package io.github.platenwire.live;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.GenerationMode;
import net.jqwik.api.Property;
import net.jqwik.api.ShrinkingMode;

/** Streaming alignment against a plain reference that sees the whole arrays. */
class AlignmentTest {
  private record Arrival(long stamp, int channel, long micros, double value, long seq) {}

  private record Row(long seq, long micros, double load, List<Double> values, List<Long> seqs) {}

  private static final class Scene {
    final Random random;
    final int gauges;
    final long[] delays;
    final long[] gaps;
    final List<Arrival> arrivals = new ArrayList<>();
    final Map<Integer, List<Arrival>> owns = new HashMap<>();

    Scene(long seed) {
      random = new Random(seed);
      gauges = 1 + random.nextInt(8);
      delays = new long[gauges + 1];
      gaps = new long[gauges + 1];
      List<Arrival> list = new ArrayList<>();
      for (int channel = 0; channel <= gauges; channel++) {
        delays[channel] = random.nextInt(3) == 0 ? 0 : random.nextInt(150_000);
        gaps[channel] = 20_000L + random.nextInt(600_000);
        fill(list, channel);
      }
      list.sort(Comparator.comparingLong(Arrival::stamp));
      for (Arrival each : list) {
        arrivals.add(
            new Arrival(each.stamp, each.channel, each.micros, each.value, arrivals.size() + 1L));
      }
    }

    private void fill(List<Arrival> list, int channel) {
      double rate = Math.exp(Math.log(2) + random.nextDouble() * Math.log(500));
      double period = 1e6 / rate;
      double time = random.nextDouble() * period;
      double silentFrom = 4e6 * random.nextDouble();
      double silentFor = random.nextBoolean() ? 0 : 1.5e6 * random.nextDouble();
      boolean coarse = random.nextInt(3) == 0;
      while (time < 3e6) {
        boolean silent = time > silentFrom && time < silentFrom + silentFor;
        long micros = coarse ? Math.round(time / 50_000) * 50_000 : Math.round(time);
        double value = random.nextInt(50) == 0 ? Double.NaN : random.nextGaussian();
        if (!silent) {
          list.add(new Arrival(micros + delays[channel], channel, micros, value, 0));
        }
        time += period * (0.5 + random.nextDouble());
      }
    }

    List<Row> streamed(int pending) {
      List<Row> rows = new ArrayList<>();
      Alignment alignment = alignment(pending, rows);
      for (Arrival each : arrivals) {
        alignment.clock(each.stamp);
        if (each.channel == 0) {
          alignment.load(each.seq, each.micros, each.value);
        } else {
          alignment.gauge(each.channel - 1, each.seq, each.micros, each.value);
        }
      }
      alignment.flush();
      assertThat(alignment.squeezed()).isZero();
      return rows;
    }

    private Alignment alignment(int pending, List<Row> rows) {
      List<Alignment.GaugeLine> lines = new ArrayList<>();
      for (int i = 1; i <= gauges; i++) {
        lines.add(new Alignment.GaugeLine(gaps[i], delays[i], 1000));
      }
      return new Alignment(lines, delays[0], pending, row -> rows.add(copy(row)));
    }

    private static Row copy(AlignedRow row) {
      List<Double> values = new ArrayList<>();
      List<Long> seqs = new ArrayList<>();
      for (int i = 0; i < row.gauges(); i++) {
        values.add(row.millimetres(i));
        seqs.add(row.lowSeq(i));
        seqs.add(row.highSeq(i));
      }
      return new Row(row.seq(), row.micros(), row.loadNewtons(), values, seqs);
    }

    List<Row> reference() {
      List<Row> rows = new ArrayList<>();
      for (Arrival load : arrivals) {
        if (load.channel != 0 || Double.isNaN(load.value)) {
          continue;
        }
        List<Double> values = new ArrayList<>();
        List<Long> seqs = new ArrayList<>();
        for (int gauge = 1; gauge <= gauges; gauge++) {
          addReference(load.micros, gauge, values, seqs);
        }
        rows.add(new Row(load.seq, load.micros, load.value, values, seqs));
      }
      return rows;
    }

    private List<Arrival> own(int gauge) {
      return owns.computeIfAbsent(
          gauge,
          wanted ->
              arrivals.stream()
                  .filter(each -> each.channel == wanted && !Double.isNaN(each.value))
                  .toList());
    }

    private void addReference(long t, int gauge, List<Double> values, List<Long> seqs) {
      List<Arrival> own = own(gauge);
      int after = 0;
      while (after < own.size() && own.get(after).micros < t) {
        after++;
      }
      Arrival high = after < own.size() ? own.get(after) : null;
      Arrival low = after > 0 ? own.get(after - 1) : null;
      if (high != null && high.micros == t) {
        values.add(high.value);
        seqs.add(high.seq);
        seqs.add(high.seq);
      } else if (high != null && low != null && high.micros - low.micros <= gaps[gauge]) {
        double share = (double) (t - low.micros) / (high.micros - low.micros);
        values.add(low.value + (high.value - low.value) * share);
        seqs.add(low.seq);
        seqs.add(high.seq);
      } else {
        values.add(Double.NaN);
        seqs.add(0L);
        seqs.add(0L);
      }
    }
  }

  @Property(
      tries = 150,
      seed = "20261125",
      generation = GenerationMode.RANDOMIZED,
      shrinking = ShrinkingMode.OFF)
  void streaming_anyRatesDelaysAndGaps_equalsWholeArrays(@ForAll long seed) {
    Scene scene = new Scene(seed);
    assertThat(scene.streamed(4000)).isEqualTo(scene.reference());
  }

  @Property(
      tries = 40,
      seed = "20261126",
      generation = GenerationMode.RANDOMIZED,
      shrinking = ShrinkingMode.OFF)
  void streaming_tooManyWaiting_losesNoLoadAndInventsNothing(@ForAll long seed) {
    Scene scene = new Scene(seed);
    List<Row> rows = scene.streamed(4);
    List<Row> reference = scene.reference();
    assertThat(rows).hasSameSizeAs(reference);
    for (int i = 0; i < rows.size(); i++) {
      assertThat(rows.get(i).seq()).isEqualTo(reference.get(i).seq());
      for (int gauge = 0; gauge < scene.gauges; gauge++) {
        double value = rows.get(i).values().get(gauge);
        assertThat(Double.isNaN(value) || value == reference.get(i).values().get(gauge)).isTrue();
      }
    }
  }
}
