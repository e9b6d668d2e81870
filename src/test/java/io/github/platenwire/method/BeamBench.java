package io.github.platenwire.method;

import io.github.platenwire.emulate.BeamDevice;
import io.github.platenwire.emulate.BeamReadings;
import io.github.platenwire.emulate.BeamTruth;
import io.github.platenwire.quantity.Quantity;
import io.github.platenwire.quantity.Unit;
import io.github.platenwire.reading.Quality;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** Runs emulated beams through a method, reading by reading in the order in which they are sent. */
final class BeamBench {
  static final Method SPLIT = Methods.shipped("split-beam").orElseThrow();
  static final Method NOTCHED = Methods.shipped("notched-beam-en14651").orElseThrow();

  /** Standard uncertainty of the time between load and gauges that the split beam's file states. */
  static final double TIMING_MICROS = 5_000;

  final List<String> happenings = new ArrayList<>();
  final MethodRun run;
  final List<BeamDevice> devices;
  LiveView lastView;

  /** Readings that come out as another value, by row. */
  final Map<Long, Double> wild = new HashMap<>();

  private final List<Long> stamps = new ArrayList<>();
  private final List<Integer> channels = new ArrayList<>();
  private long seq;

  BeamBench(Method method, Specimen specimen, List<BeamDevice> devices) {
    this(method, specimen, devices, 0);
  }

  /** The method is told delays of the gauges that are off by so many microseconds. */
  BeamBench(Method method, Specimen specimen, List<BeamDevice> devices, long delaysOffMicros) {
    this.devices = devices;
    List<ChannelFacts> all = new ArrayList<>();
    for (BeamDevice device : devices) {
      long off = device.isLoad() ? 0 : delaysOffMicros;
      ChannelFacts facts = facts(device, all.size());
      all.add(facts.timed(device.delayNanos() / 1000 + off, 0));
    }
    run = method.start(specimen, new TestSetting(Bench.START, Bench.ZONE, all, Optional.empty()));
    lastView = run.view();
  }

  static Specimen beam() {
    return beam(Map.of());
  }

  static Specimen beam(Map<Dimension, Double> dimensions) {
    return new Specimen(
        "NA-PB-2",
        "NA-PB",
        "beam",
        List.of(),
        OptionalDouble.empty(),
        Dimensions.of(dimensions),
        OptionalDouble.empty(),
        Optional.empty(),
        OptionalDouble.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Map.of());
  }

  static ChannelFacts facts(BeamDevice device, int number) {
    boolean load = device.isLoad();
    return new ChannelFacts(
            load ? "load" : "gauge-" + (char) ('a' + number - 1),
            load ? Quantity.FORCE : Quantity.LENGTH,
            load ? Unit.KILONEWTON : Unit.MILLIMETRE,
            -5,
            load ? 200 : 10,
            OptionalDouble.of(load ? Math.max(device.step(), 0.001) / 1000 : device.step()),
            load ? 5 : 4,
            OptionalDouble.empty(),
            OptionalDouble.of(load ? 0.5 : 0.8))
        .timed(device.delayNanos() / 1000, 0);
  }

  /** Sends everything that the devices read of a beam. */
  BeamBench send(BeamTruth truth, long seed) {
    List<BeamReadings> streams =
        devices.stream().map(d -> new BeamReadings(truth, d, seed)).toList();
    BeamReadings.Reading[] heads = new BeamReadings.Reading[streams.size()];
    while (run.ending().isEmpty()) {
      int next = -1;
      for (int i = 0; i < heads.length; i++) {
        if (heads[i] == null && streams.get(i).hasNext()) {
          heads[i] = streams.get(i).next();
        }
        if (heads[i] != null && (next < 0 || heads[i].sentNanos() < heads[next].sentNanos())) {
          next = i;
        }
      }
      if (next < 0) {
        break;
      }
      double value = heads[next].value() / (devices.get(next).isLoad() ? 1000 : 1);
      give(next, heads[next].sentNanos() / 1000, value);
      heads[next] = null;
    }
    return this;
  }

  void give(int channel, long micros, double value) {
    stamps.add(micros);
    channels.add(channel);
    seq++;
    run.reading(seq, micros, channel, 10, wild.getOrDefault(seq, value), Quality.OK);
    run.takeHappenings().forEach(happening -> happenings.add(happening.text()));
  }

  /** When a row was sent. */
  double seconds(long row) {
    return stamps.get((int) row - 1) * 1e-6;
  }

  /** The first row of a channel after a moment. */
  long rowAfter(double seconds, int channel) {
    int row = 1;
    while (seconds(row) < seconds || channels.get(row - 1) != channel) {
      row++;
    }
    return row;
  }
}
