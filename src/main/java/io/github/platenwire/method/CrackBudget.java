package io.github.platenwire.method;

import io.github.platenwire.live.WidthAtLoad;
import io.github.platenwire.quantity.UncertaintyBudget;
import java.util.ArrayList;
import java.util.List;

/**
 * Where the uncertainty of a crack's figures comes from, by JCGM 100:2008. A calibration is one
 * scale for the whole test, so it counts in full however many readings there are; those of several
 * gauges are taken as one, since they usually come from one laboratory. An input known only to lie
 * within +/- a has the standard uncertainty a / sqrt 3 (JCGM 100, 4.3.7). Immutable.
 */
final class CrackBudget {
  private static final double ROOT_3 = Math.sqrt(3);
  private static final double COVERAGE = 2;

  private final Share load;
  private final Share gauge;

  /** A calibration as a relative standard uncertainty, with its words. */
  private record Share(double relative, String words) {}

  CrackBudget(CrackRules rules, LoadChannel channel, List<GaugeChannel> gauges) {
    load = share("load", List.of(channel.facts()), rules.machineAccuracyPercent());
    gauge =
        share(
            "gauges",
            gauges.stream().map(GaugeChannel::facts).toList(),
            rules.gauge().accuracyPercent());
  }

  private static Share share(String name, List<ChannelFacts> channels, double limitPercent) {
    double worst = 0;
    boolean known = true;
    for (ChannelFacts channel : channels) {
      known &= channel.calibrationPercent().isPresent();
      worst = Math.max(worst, channel.calibrationPercent().orElse(0));
    }
    return known
        ? new Share(worst / 100 / COVERAGE, name + ": calibration certificate")
        : new Share(
            limitPercent / 100 / ROOT_3,
            name + ": no certificate, limit of " + BothUnits.plain(limitPercent) + " %");
  }

  /**
   * Of a width at a load.
   *
   * @param slope of width on load there, mm/N
   */
  UncertaintyBudget ofWidth(WidthAtLoad width, double slope) {
    WidthAtLoad.Parts parts = width.parts();
    List<UncertaintyBudget.Line> lines = new ArrayList<>();
    add(lines, gauge.words, gauge.relative * Math.abs(width.millimetres()));
    add(lines, load.words, load.relative * width.newtons() * Math.abs(slope));
    add(lines, "gauges: noise and resolution", parts.noise());
    add(lines, "gauges: zero", parts.zero());
    add(lines, "elastic stretch taken off", parts.stretch());
    add(lines, "alignment: rate of loading times timing", parts.timing());
    add(lines, "load: noise", parts.load());
    add(lines, "jump of the crack near by", parts.jump());
    return new UncertaintyBudget(lines);
  }

  /**
   * Of a load that belongs to a width, in kilonewtons.
   *
   * @param expandedNewtons what the readings make of it (k = 2): noise, resolution, zero, alignment
   * @param newtonsPerMillimetre slope of load on width there
   * @param millimetres the width
   */
  UncertaintyBudget ofLoad(
      double newtons, double expandedNewtons, double newtonsPerMillimetre, double millimetres) {
    List<UncertaintyBudget.Line> lines = new ArrayList<>();
    add(lines, load.words, load.relative * newtons / 1000);
    add(lines, gauge.words, gauge.relative * millimetres * Math.abs(newtonsPerMillimetre) / 1000);
    add(lines, "noise, resolution, zero and alignment", expandedNewtons / COVERAGE / 1000);
    return new UncertaintyBudget(lines);
  }

  /** Of a width while the load stands still; the load's scale has no part in it. */
  UncertaintyBudget ofRest(double millimetres, WidthAtLoad.Parts parts) {
    List<UncertaintyBudget.Line> lines = new ArrayList<>();
    add(lines, gauge.words, gauge.relative * Math.abs(millimetres));
    add(lines, "gauges: noise and resolution", parts.noise());
    add(lines, "gauges: zero", parts.zero());
    add(lines, "elastic stretch taken off", parts.stretch());
    return new UncertaintyBudget(lines);
  }

  /**
   * Of a difference of two widths of one test at one load, in which zero and stretch go out.
   *
   * @param noiseMillimetres standard uncertainty by noise and resolution at both ends
   */
  UncertaintyBudget ofCreep(double millimetres, double noiseMillimetres) {
    List<UncertaintyBudget.Line> lines = new ArrayList<>();
    add(lines, gauge.words, gauge.relative * Math.abs(millimetres));
    add(lines, "gauges: noise and resolution at both ends", noiseMillimetres);
    return new UncertaintyBudget(lines);
  }

  /** Of a quotient or product of load and width, from its expanded uncertainty by noise. */
  UncertaintyBudget ofBoth(double value, double expandedByNoise) {
    List<UncertaintyBudget.Line> lines = new ArrayList<>();
    add(lines, load.words, load.relative * Math.abs(value));
    add(lines, gauge.words, gauge.relative * Math.abs(value));
    add(lines, "scatter of the readings", expandedByNoise / COVERAGE);
    return new UncertaintyBudget(lines);
  }

  static void add(List<UncertaintyBudget.Line> lines, String source, double contribution) {
    if (Double.isFinite(contribution) && contribution != 0) {
      lines.add(
          new UncertaintyBudget.Line(source, Math.abs(contribution), Double.POSITIVE_INFINITY));
    }
  }

  double loadShare() {
    return load.relative;
  }
}
