package io.github.platenwire.method;

import io.github.platenwire.live.CrackFeed;
import io.github.platenwire.live.CrackSettings;
import io.github.platenwire.live.GaugeLimits;
import io.github.platenwire.live.LoneRule;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The numbers by which a crack is followed, as a method file of the kind {@code split-beam} or
 * {@code notched-beam} has them. Immutable.
 */
record CrackRules(
    String name,
    String title,
    String standard,
    List<String> shapes,
    Timing timing,
    Zero zero,
    Gauge gauge,
    Load load,
    double machineAccuracyPercent,
    CrackSettings.FitWindow fit,
    double smallWidth,
    double departureFactor,
    CrackSettings.Lasting lasting,
    List<Threshold> thresholds,
    List<Asked> asked,
    double curveStepNewtons,
    double crackedFrom,
    double crackedTo,
    double stopWidth,
    CrackSettings.CycleRule cycle,
    CrackSettings.HoldRule hold,
    LoadLost.Rule lost,
    Rounding rounding,
    Optional<Wedge> wedge,
    Optional<Notch> notch) {

  record Timing(long gapMicros, long burstMicros, double uncertaintyMicros, long smoothMicros) {}

  record Zero(long micros, double quietPercent, double risePercent, double quietMillimetres) {}

  record Gauge(double slope, double resolution, double accuracyPercent) {}

  record Load(double slopePercent, long jitterMicros, double noiseFactor) {}

  /** A width with its meaning and where that comes from. */
  record Threshold(double millimetres, String meaning, String source) {
    String words() {
      return BothUnits.fixed(millimetres, 2) + " mm";
    }
  }

  /** A load at which the width is asked for, with the words it was asked in. */
  record Asked(double newtons, String words) {}

  record Rounding(Steps load, Steps width, Steps stiffness, Steps work, Steps stress) {}

  /** Friction of the wedges, radians. */
  record Wedge(double friction, double frictionHalfWidth) {}

  /** Nominal sizes of a notched beam, millimetres, and the rates at which its notch is opened. */
  record Notch(
      double width,
      double depth,
      double notch,
      double span,
      double tolerancePercent,
      double measuring,
      List<OpeningRates.Band> rates,
      double rateTolerancePercent) {}

  /** How the tracker follows these gauges. */
  CrackSettings settings(List<GaugeChannel> gauges) {
    List<GaugeLimits> limits = new ArrayList<>();
    for (GaugeChannel each : gauges) {
      limits.add(each.limits(limits.size() % 2, gauge, zero.quietMillimetres()));
    }
    return new CrackSettings(
        limits,
        fit,
        smallWidth,
        thresholds.stream()
            .map(each -> new CrackSettings.Threshold(each.millimetres(), each.words()))
            .toList(),
        stopWidth,
        timing.smoothMicros(),
        lasting,
        /* takeOffStretch= */ notch.isEmpty(),
        departureFactor,
        curveStepNewtons,
        cycle,
        hold,
        timing.uncertaintyMicros(),
        crackedFrom,
        crackedTo);
  }

  CrackFeed.ZeroRule zeroRule(LoadChannel load) {
    return new CrackFeed.ZeroRule(
        zero.micros(),
        load.percentOfRange(zero.quietPercent()),
        load.percentOfRange(zero.risePercent()));
  }

  LoneRule loneRule(LoadChannel channel) {
    return new LoneRule(
        channel.greatestSlopeNewtons().orElse(channel.percentOfRange(load.slopePercent())),
        load.jitterMicros(),
        channel.resolutionNewtons().orElse(0),
        load.noiseFactor());
  }

  CrackFeed.Line line(ChannelFacts channel) {
    return new CrackFeed.Line(
        channel.microsPerByte(), channel.delayMicros(), timing.burstMicros(), timing.gapMicros());
  }
}
