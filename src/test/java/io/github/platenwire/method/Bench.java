package io.github.platenwire.method;

import io.github.platenwire.quantity.Quantity;
import io.github.platenwire.quantity.Unit;
import io.github.platenwire.reading.Quality;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** A load frame of a test: sends readings at a fixed interval and keeps what happened. */
final class Bench {
  static final ZoneId ZONE = ZoneId.of("Europe/Berlin");
  static final Instant START = Instant.parse("2026-11-25T07:15:02Z");
  static final Method METHOD = Methods.shipped("compression-cylinder-c39").orElseThrow();

  final List<String> happenings = new ArrayList<>();
  final MethodRun run;
  final Unit unit;
  final long intervalMicros;
  double zero;
  double load;
  long seq;
  long micros;

  Bench(Specimen specimen, ChannelFacts channel, double hertz) {
    this(METHOD.start(specimen, setting(channel)), channel.unit(), hertz);
  }

  Bench(MethodRun run, Unit unit, double hertz) {
    this.run = run;
    this.unit = unit;
    this.intervalMicros = Math.round(1e6 / hertz);
  }

  static Specimen cylinder(double diameter, double length) {
    return new SpecimenBuilder().diameters(diameter, diameter).length(length).build();
  }

  static ChannelFacts kilonewtons() {
    return channel(Unit.KILONEWTON, 2000, 5);
  }

  static ChannelFacts channel(Unit unit, double range, double zeroTolerance) {
    return new ChannelFacts(
        "load",
        Quantity.FORCE,
        unit,
        0,
        range,
        OptionalDouble.empty(),
        zeroTolerance,
        OptionalDouble.empty(),
        OptionalDouble.of(0.5));
  }

  static TestSetting setting(ChannelFacts... channels) {
    return new TestSetting(START, ZONE, List.of(channels), Optional.empty());
  }

  /** One reading of a load in the channel's unit, the zero added. */
  Bench send(double value) {
    return raw(value + zero, Quality.OK);
  }

  Bench raw(double value, Quality quality) {
    run.reading(++seq, micros, 0, value, quality);
    micros += intervalMicros;
    collect();
    return this;
  }

  void collect() {
    run.takeHappenings().forEach(happening -> happenings.add(happening.text()));
  }

  Bench hold(double value, double seconds) {
    load = value;
    for (long until = micros + Math.round(seconds * 1e6); micros < until; ) {
      send(value);
    }
    return this;
  }

  /** Loads at a rate, in the channel's unit a second, and reaches the load exactly. */
  Bench ramp(double to, double perSecond) {
    double from = load;
    double step = Math.abs(perSecond) * intervalMicros * 1e-6;
    long steps = (long) Math.floor(Math.abs(to - from) / step);
    for (long i = 1; i <= steps; i++) {
      double value = from + Math.signum(to - from) * i * step;
      if (value != to) {
        send(value);
      }
    }
    send(to);
    load = to;
    return this;
  }

  /** A quiet zero, fast to half the peak, then by the method's rate to the peak, and a break. */
  Bench crush(double peak, double perSecond) {
    return crush(peak, perSecond, 0.45);
  }

  Bench crush(double peak, double perSecond, double fastShare) {
    return hold(0, 10 * Math.max(1, intervalMicros * 1e-6))
        .ramp(fastShare * peak, 5 * perSecond)
        .ramp(peak, perSecond)
        .hold(0.3 * peak, 2)
        .hold(0.05 * peak, 3 + 5 * intervalMicros * 1e-6);
  }

  static MethodResult.Check check(MethodResult result, String name) {
    return result.checks().stream().filter(c -> c.name().equals(name)).findFirst().orElseThrow();
  }

  static MethodResult.Figure figure(MethodResult result, String name) {
    return result.figure(name).orElseThrow();
  }

  /** A cylinder of 28 days to the hour, 100 x 200 mm, unless told otherwise. */
  static final class SpecimenBuilder {
    private List<Double> diameters = List.of(100.0, 100.0);
    private OptionalDouble length = OptionalDouble.of(200);
    private OptionalDouble mass = OptionalDouble.empty();
    private Dimensions dimensions = Dimensions.NONE;
    private String shape = "cylinder";
    private Optional<LocalDateTime> cast = Optional.of(LocalDateTime.parse("2026-10-28T08:15:02"));
    private OptionalDouble planned = OptionalDouble.of(28);
    private Optional<String> ends = Optional.of("ground");

    SpecimenBuilder diameters(Double... values) {
      diameters = List.of(values);
      return this;
    }

    SpecimenBuilder length(double value) {
      length = value == 0 ? OptionalDouble.empty() : OptionalDouble.of(value);
      return this;
    }

    SpecimenBuilder sizes(Map<Dimension, Double> values) {
      dimensions = Dimensions.of(values);
      return this;
    }

    SpecimenBuilder mass(double value) {
      mass = OptionalDouble.of(value);
      return this;
    }

    SpecimenBuilder shape(String value) {
      shape = value;
      return this;
    }

    SpecimenBuilder cast(String value) {
      cast = value.isEmpty() ? Optional.empty() : Optional.of(LocalDateTime.parse(value));
      return this;
    }

    SpecimenBuilder planned(double days) {
      planned = days == 0 ? OptionalDouble.empty() : OptionalDouble.of(days);
      return this;
    }

    SpecimenBuilder ends(String value) {
      ends = Optional.ofNullable(value.isEmpty() ? null : value);
      return this;
    }

    Specimen build() {
      return new Specimen(
          "RA-28-2",
          "RA-T",
          shape,
          diameters,
          length,
          dimensions,
          mass,
          cast,
          planned,
          ends,
          Optional.of("tank"),
          Optional.of("moist"),
          Map.of());
    }
  }
}
