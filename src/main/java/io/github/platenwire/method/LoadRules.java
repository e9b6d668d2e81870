package io.github.platenwire.method;

import io.github.platenwire.live.BreakDetector;
import io.github.platenwire.live.LoneReadingFilter;
import io.github.platenwire.live.RateWindow;
import io.github.platenwire.live.ZeroFinder;
import io.github.platenwire.toml.TomlException;
import io.github.platenwire.toml.TomlSection;

/**
 * How a load is followed, as the tables {@code [window] [zero] [load] [break]} of a method file
 * say; parts of the range become newtons once the channel is known. Immutable.
 */
record LoadRules(Window window, Zero zero, Load load, Break lost) {
  /** Most readings held for a slope: a second at 4 kHz; a faster device gives a shorter window. */
  private static final int WINDOW_CAPACITY = 4096;

  private static final double MICROS = 1e6;

  record Window(double seconds, int readings, double longestGapSeconds) {}

  record Zero(double seconds, int readings, int shortReadings, double quietPercent) {}

  record Load(
      double onPercent, double slopePercent, double stampJitterSeconds, double noiseFactor) {}

  record Break(
      double fraction,
      double lastingSeconds,
      int readings,
      double leastPercent,
      double tailSeconds,
      double regainPercent,
      double gainPercent) {
    /** The load falls only because somebody takes it off; no detector is made of this. */
    static final Break NONE = new Break(0, 0, 1, 0, 0, 0, 0);
  }

  static LoadRules parse(TomlSection file) throws TomlException {
    return parse(file, parseBreak(new Numbers(file.section("break"))));
  }

  /** Of a test in which nothing breaks: the file has no table of the break. */
  static LoadRules parseWithoutBreak(TomlSection file) throws TomlException {
    return parse(file, Break.NONE);
  }

  private static LoadRules parse(TomlSection file, Break lost) throws TomlException {
    return new LoadRules(
        parseWindow(new Numbers(file.section("window"))),
        parseZero(new Numbers(file.section("zero"))),
        parseLoad(new Numbers(file.section("load"))),
        lost);
  }

  private static Window parseWindow(Numbers table) throws TomlException {
    table.allow("seconds", "readings", "longest-gap-seconds");
    return new Window(
        table.positive("seconds"),
        table.wholeWithin("readings", 2, 1000),
        table.positive("longest-gap-seconds"));
  }

  private static Zero parseZero(Numbers table) throws TomlException {
    table.allow("seconds", "readings", "short-readings", "quiet-percent-of-range");
    return new Zero(
        table.positive("seconds"),
        table.wholeWithin("readings", 2, 100_000),
        table.wholeWithin("short-readings", 2, 100_000),
        table.positive("quiet-percent-of-range"));
  }

  private static Load parseLoad(Numbers table) throws TomlException {
    table.allow(
        "on-percent-of-range",
        "greatest-slope-percent-of-range-per-second",
        "stamp-jitter-seconds",
        "noise-factor");
    return new Load(
        table.within("on-percent-of-range", 0, 100),
        table.positive("greatest-slope-percent-of-range-per-second"),
        table.positive("stamp-jitter-seconds"),
        table.positive("noise-factor"));
  }

  private static Break parseBreak(Numbers table) throws TomlException {
    table.allow(
        "fraction",
        "lasting-seconds",
        "readings",
        "least-percent-of-range",
        "tail-seconds",
        "regain-percent-of-peak",
        "gain-percent-of-peak");
    return new Break(
        table.within("fraction", 0, 1),
        table.positive("lasting-seconds"),
        table.wholeWithin("readings", 1, 1000),
        table.within("least-percent-of-range", 0, 100),
        table.positive("tail-seconds"),
        table.within("regain-percent-of-peak", 0, 100),
        table.within("gain-percent-of-peak", 0, 100));
  }

  ZeroFinder newZeroFinder(LoadChannel channel) {
    return new ZeroFinder(zeroSettings(channel, channel.percentOfRange(load.onPercent)));
  }

  /** Finds a zero after the load was lost; no load can come on any more. */
  ZeroFinder newZeroAfterFinder(LoadChannel channel) {
    return new ZeroFinder(zeroSettings(channel, Double.POSITIVE_INFINITY));
  }

  private ZeroFinder.Settings zeroSettings(LoadChannel channel, double loadRise) {
    return new ZeroFinder.Settings(
        micros(zero.seconds),
        zero.readings,
        zero.shortReadings,
        channel.percentOfRange(zero.quietPercent),
        channel.zeroToleranceNewtons(),
        loadRise);
  }

  LoneReadingFilter newFilter(LoadChannel channel) {
    double slope = channel.greatestSlopeNewtons().orElse(channel.percentOfRange(load.slopePercent));
    return newFilter(slope, marginNewtons(channel, Double.NaN));
  }

  /** One for another channel, in any unit. */
  LoneReadingFilter newFilter(double greatestSlope, double margin) {
    return new LoneReadingFilter(greatestSlope, micros(load.stampJitterSeconds), margin);
  }

  /** How far two readings may differ by noise and resolution alone. */
  double marginNewtons(LoadChannel channel, double noiseNewtons) {
    double noise = Double.isNaN(noiseNewtons) ? 0 : load.noiseFactor * noiseNewtons;
    return noise + 2 * channel.resolutionNewtons().orElse(0);
  }

  /** Load above which a specimen is being loaded. */
  double loadOnNewtons(LoadChannel channel, double noiseNewtons) {
    return Math.max(channel.percentOfRange(load.onPercent), marginNewtons(channel, noiseNewtons));
  }

  RateWindow newWindow() {
    return new RateWindow(windowSettings());
  }

  RateWindow.Settings windowSettings() {
    return new RateWindow.Settings(
        windowMicros(), window.readings, micros(window.longestGapSeconds), WINDOW_CAPACITY);
  }

  long windowMicros() {
    return micros(window.seconds);
  }

  BreakDetector newBreakDetector(LoadChannel channel) {
    return new BreakDetector(
        new BreakDetector.Settings(
            lost.fraction,
            micros(lost.lastingSeconds),
            lost.readings,
            channel.percentOfRange(lost.leastPercent),
            micros(lost.tailSeconds),
            lost.regainPercent / 100,
            lost.gainPercent / 100));
  }

  private static long micros(double seconds) {
    return Math.round(seconds * MICROS);
  }
}
