package io.github.platenwire.method;

import io.github.platenwire.live.BandJudge;
import io.github.platenwire.live.ChordSettings;
import io.github.platenwire.live.CrackFeed;
import java.math.BigDecimal;
import java.util.List;

/**
 * The numbers by which a modulus of elasticity is measured, as a method file of the kind {@code
 * modulus-cylinder} has them. Strains are lengths over lengths. Immutable.
 */
record ModulusRules(
    String name,
    String title,
    String standard,
    StrengthRules.SpecimenRules specimen,
    CylinderShape shape,
    List<StrengthRules.AgeTolerance> ages,
    Chord chord,
    Cycles cycles,
    Rate rate,
    LoadRules load,
    CrackRules.Timing timing,
    Gauge gauge,
    double machineAccuracyPercent,
    Rounding rounding) {

  /** Where the chord begins and ends. */
  record Chord(double firstStrain, double secondShare) {}

  /** What a cycle is, and what is asked of it. */
  record Cycles(
      int planned,
      double unloadShare,
      double bandMegapascals,
      double hysteresisStrain,
      double shortPercent,
      double beyondShare,
      double agreePercent,
      long tailMicros) {}

  /** The rate asked for between the marks. */
  record Rate(List<StrengthRules.Band> bands, double requiredShare) {
    LiveView.RateBand shown() {
      return bands.get(0).limits();
    }
  }

  /** What is taken of a gauge where neither rig nor certificate says. */
  record Gauge(
      double slope,
      double jump,
      double accuracyPercent,
      double lengthPercent,
      double leverPercent) {}

  /** Steps in each unit in which a figure is printed. */
  record Rounding(
      Steps modulus,
      BigDecimal poisson,
      Steps stress,
      BigDecimal strain,
      Steps load,
      Steps zero,
      Steps rate,
      BigDecimal ageDays) {}

  /** Stress at which the chord of a specimen ends, megapascals. */
  double secondStress(Specimen specimen) {
    return chord.secondShare * specimen.dimension(Dimension.COMPANION_STRENGTH).orElseThrow();
  }

  /** How the cycles of one specimen are found. */
  ChordSettings settings(Specimen specimen, double area, List<StrainGauge> gauges) {
    double strength = specimen.dimension(Dimension.COMPANION_STRENGTH).orElseThrow();
    double second = secondStress(specimen) * area;
    return new ChordSettings(
        chord.firstStrain,
        second,
        cycles.beyondShare * strength * area,
        second * (1 - cycles.shortPercent / 100),
        cycles.bandMegapascals * area,
        cycles.unloadShare,
        cycles.hysteresisStrain,
        timing.smoothMicros(),
        cycles.planned,
        rate.bands.stream()
            .map(
                band ->
                    new BandJudge.Band(
                        band.limits().lowMegapascalsPerSecond() * area,
                        band.limits().highMegapascalsPerSecond() * area))
            .toList(),
        gauges.stream().map(each -> !each.across()).toList());
  }

  CrackFeed.Line line(ChannelFacts channel) {
    return new CrackFeed.Line(
        channel.microsPerByte(), channel.delayMicros(), timing.burstMicros(), timing.gapMicros());
  }
}
