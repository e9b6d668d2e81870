package io.github.platenwire.explain;

import io.github.platenwire.emulate.BeamDevice;
import io.github.platenwire.emulate.BeamReadings;
import io.github.platenwire.emulate.GaugedTruth;
import io.github.platenwire.method.ChannelFacts;
import io.github.platenwire.method.Dimension;
import io.github.platenwire.method.Dimensions;
import io.github.platenwire.method.GaugeMount;
import io.github.platenwire.method.Method;
import io.github.platenwire.method.Methods;
import io.github.platenwire.method.Specimen;
import io.github.platenwire.quantity.Unit;
import io.github.platenwire.reading.Quality;
import io.github.platenwire.record.CloseReason;
import io.github.platenwire.record.DiskFolder;
import io.github.platenwire.record.Observations;
import io.github.platenwire.record.RawFileWriter;
import io.github.platenwire.record.RawHeader;
import io.github.platenwire.record.RawHeader.HeaderChannel;
import io.github.platenwire.record.RawHeader.KeptFile;
import io.github.platenwire.record.SummaryFile;
import io.github.platenwire.recorder.Reduction;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** Writes raw files of every kind, with the bytes as devices send them, and closes them. */
final class RecordMaker {
  static final Instant START = Instant.parse("2026-11-25T07:15:02Z");

  private final Method method;
  private final List<HeaderChannel> channels = new ArrayList<>();
  private final List<Row> rows = new ArrayList<>();
  private String shape = "cylinder";
  private List<Double> diameters = List.of();
  private OptionalDouble length = OptionalDouble.empty();
  private OptionalDouble mass = OptionalDouble.empty();
  private Map<Dimension, Double> sizes = Map.of();

  private record Row(long micros, int channel, String received, double value) {}

  RecordMaker(String methodName) {
    method = Methods.shipped(methodName).orElseThrow();
  }

  RecordMaker cylinder(double diameter1, double diameter2, double lengthMillimetres) {
    diameters = List.of(diameter1, diameter2);
    length = OptionalDouble.of(lengthMillimetres);
    return this;
  }

  RecordMaker shape(String newShape, Map<Dimension, Double> newSizes) {
    shape = newShape;
    sizes = newSizes;
    return this;
  }

  RecordMaker height(double millimetres) {
    length = OptionalDouble.of(millimetres);
    return this;
  }

  RecordMaker mass(double kilograms) {
    mass = OptionalDouble.of(kilograms);
    return this;
  }

  RecordMaker load(Unit unit) {
    boolean pounds = unit == Unit.POUND_FORCE;
    return channel(
        "load", unit, pounds ? "signed-line-lbf" : "signed-line-kn", pounds ? 400_000 : 2000);
  }

  RecordMaker channel(String name, Unit unit, String device, double range) {
    return channel(name, unit, device, range, Optional.empty());
  }

  RecordMaker channel(
      String name, Unit unit, String device, double range, Optional<GaugeMount> mount) {
    ChannelFacts facts =
        new ChannelFacts(
                name,
                unit.quantity(),
                unit,
                -range,
                range,
                OptionalDouble.of(resolution(unit)),
                range / 10,
                OptionalDouble.empty(),
                OptionalDouble.of(0.5))
            .mounted(mount);
    String port = device.startsWith("typed") ? "typed" : "memory:" + name;
    channels.add(new HeaderChannel(facts, port, 0, kept(device), 0, 1000, Optional.empty(), 1));
    return this;
  }

  private static double resolution(Unit unit) {
    return switch (unit.quantity()) {
      case FORCE -> unit == Unit.POUND_FORCE ? 1 : 0.01;
      case LENGTH -> 0.0001;
      default -> 0.1;
    };
  }

  private static KeptFile kept(String device) {
    try {
      return new KeptFile(device, Files.readString(Path.of("devices", device + ".toml")));
    } catch (java.io.IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  void row(long micros, int channel, String received, double value) {
    // what a device calls -0 is 0
    rows.add(new Row(micros, channel, received, value + 0.0));
  }

  /** One reading of the load in its channel's unit, as the indicator sends it. */
  void load(double seconds, double value) {
    boolean pounds = channels.get(0).facts().unit() == Unit.POUND_FORCE;
    String text = String.format(Locale.ROOT, pounds ? "%+08.0f" : "%+09.2f", value);
    String line = pounds ? text + " lbf" : text + " kN";
    row(Math.round(seconds * 1e6), 0, line, Double.parseDouble(text));
  }

  /** A quiet zero, then up to a peak, then the break. The zero is in every reading. */
  RecordMaker crush(double zero, double peak, double seconds) {
    double at = 0;
    double step = 0.05;
    for (; at < 2; at += step) {
      load(at, zero);
    }
    double from = at;
    for (; at - from < seconds; at += step) {
      load(at, zero + peak * (at - from) / seconds * 0.999);
    }
    load(at, zero + peak);
    for (double to = at + 5; at < to; at += step) {
      load(at + step, zero + 0.1 * peak);
    }
    return this;
  }

  /** All that devices on a specimen send, in the order in which they send it. */
  RecordMaker send(GaugedTruth truth, List<BeamDevice> devices, long seed) {
    for (int i = 0; i < devices.size(); i++) {
      BeamReadings readings = new BeamReadings(truth, devices.get(i), seed);
      while (readings.hasNext()) {
        BeamReadings.Reading reading = readings.next();
        String line = new String(readings.line(reading), StandardCharsets.US_ASCII).strip();
        String number = line.substring(0, line.indexOf(' '));
        row(reading.sentNanos() / 1000, i, line, Double.parseDouble(number));
      }
    }
    return this;
  }

  /** Writes the raw file and its summary; the raw file's path. */
  Path close(Path folder, Observations seen) throws Exception {
    Path raw = folder.resolve("20261125T071502Z_RA-28-2.raw.csv");
    RawHeader header =
        new RawHeader(
            "20261125T071502Z_RA-28-2",
            START,
            0,
            ZoneId.of("Europe/Berlin"),
            "platenwire test",
            "Test lab",
            Optional.empty(),
            Optional.of("in a test"),
            specimen(),
            new KeptFile(method.name(), method.text()),
            new KeptFile("rig", "name = \"rig\"\n"),
            channels,
            List.of());
    rows.sort(Comparator.comparingLong(Row::micros));
    try (RawFileWriter writer = RawFileWriter.create(new DiskFolder(), raw, header)) {
      for (Row row : rows) {
        byte[] bytes = row.received().getBytes(StandardCharsets.UTF_8);
        writer.reading(
            row.micros(), row.channel(), bytes, 0, bytes.length, row.value(), Quality.OK);
      }
      writer.check();
      writer.finish(CloseReason.OPERATOR, START.plusSeconds(600), 0);
    }
    SummaryFile.write(summary(raw), Reduction.of(raw).summary(seen));
    return raw;
  }

  static Path summary(Path raw) {
    return raw.resolveSibling("20261125T071502Z_RA-28-2.summary.json");
  }

  private Specimen specimen() {
    Map<String, String> written = new LinkedHashMap<>();
    written.put("specimen", "RA-28-2");
    for (int i = 0; i < diameters.size(); i++) {
      written.put("diameter_" + (i + 1) + "_mm", String.valueOf(diameters.get(i)));
    }
    return new Specimen(
        "RA-28-2",
        "RA-T",
        shape,
        diameters,
        length,
        Dimensions.of(sizes),
        mass,
        Optional.of(LocalDateTime.parse("2026-10-28T08:15:02")),
        OptionalDouble.of(28),
        Optional.of("ground"),
        Optional.of("tank"),
        Optional.empty(),
        written);
  }
}
