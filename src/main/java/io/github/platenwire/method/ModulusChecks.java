package io.github.platenwire.method;

import io.github.platenwire.live.BandJudge;
import io.github.platenwire.live.ChordCycle;
import io.github.platenwire.live.StrainFeed;
import io.github.platenwire.quantity.Unit;
import java.util.ArrayList;
import java.util.List;

/** What the method asked of one test of a modulus, and where it was not met. Used once. */
final class ModulusChecks {
  private final ModulusRules rules;
  private final Section section;
  private final LoadChannel load;
  private final List<StrainGauge> gauges;
  private final double area;
  private final double strength;
  private final Findings findings = new Findings();

  ModulusChecks(
      ModulusRules rules,
      Section section,
      double strength,
      LoadChannel load,
      List<StrainGauge> gauges) {
    this.rules = rules;
    this.section = section;
    this.load = load;
    this.gauges = gauges;
    this.strength = strength;
    area = section.newtonsPerMegapascal();
  }

  Findings findings(
      StrainFeed feed,
      List<ChordCycle> counted,
      SpecimenAge age,
      List<Method.Objection> objections,
      TestSetting setting,
      long overReadings) {
    findings.departFrom(objections, setting);
    section.check().ifPresent(findings::check);
    findings.checkAge(age);
    findings.checkZero(feed.zero(), rules.rounding().zero());
    checkCycles(feed);
    checkAgreement(counted);
    counted.forEach(this::checkRate);
    checkGreatest(feed);
    findings.checkRange(overReadings, "load can be higher");
    findings.departFromCalibration(load, rules.machineAccuracyPercent());
    departFromGaugeCalibration();
    findings.departFromSuspects(feed.loadFilter());
    departFromGaugeSuspects(feed);
    return findings;
  }

  private void checkCycles(StrainFeed feed) {
    List<ChordCycle> cycles = feed.cycles();
    int planned = rules.cycles().planned();
    findings.checkAndDepart(
        "cycles",
        cycles.size() >= planned,
        cycles.size()
            + " of "
            + planned
            + " loading cycles were done; the first seats the gauges and is not counted");
    for (ChordCycle cycle : cycles) {
      if (!cycle.complete()) {
        findings.depart(
            "cycle "
                + cycle.number()
                + " went only to "
                + stress(cycle.second().newtons())
                + ", short of "
                + secondWords()
                + " of the companions' strength; its chord ends there");
      }
    }
    if (cycles.isEmpty()
        && feed.greatestNewtons() >= rules.chord().secondShare() * strength * area) {
      findings.depart(
          "the load reached "
              + secondWords()
              + " of the companions' strength, but no strain was seen with it: do the gauges grip,"
              + " and does 'under-load' in the rig file say which way they go?");
    }
    if (feed.turnedBack() > 0) {
      findings.depart(
          "the load came down again between the two marks "
              + (feed.turnedBack() == 1 ? "once" : feed.turnedBack() + " times")
              + "; such a loading is not counted");
    }
  }

  private String secondWords() {
    return BothUnits.plain(rules.chord().secondShare() * 100) + " %";
  }

  private void checkAgreement(List<ChordCycle> counted) {
    if (counted.size() < 2) {
      return;
    }
    double least = counted.stream().mapToDouble(ChordCycle::newtonsPerStrain).min().orElseThrow();
    double most = counted.stream().mapToDouble(ChordCycle::newtonsPerStrain).max().orElseThrow();
    double mean =
        counted.stream().mapToDouble(ChordCycle::newtonsPerStrain).average().orElseThrow();
    double percent = (most - least) / mean * 100;
    findings.checkAndDepart(
        "agreement",
        percent <= rules.cycles().agreePercent() + Objections.HAIR,
        "the cycles that count differ by "
            + BothUnits.rounded(percent, "0.01")
            + " % of their mean, allowed are "
            + BothUnits.plain(rules.cycles().agreePercent())
            + " %");
  }

  private void checkRate(ChordCycle cycle) {
    String name = "rate-cycle-" + cycle.number();
    if (cycle.rates().isEmpty()) {
      findings.checkAndDepart(
          name,
          false,
          "cycle " + cycle.number() + " was loaded too fast for its rate to be judged");
      return;
    }
    BandJudge.Verdict seen = cycle.rates().get();
    List<String> bands = new ArrayList<>();
    boolean met = false;
    for (StrengthRules.Band band : rules.rate().bands()) {
      double share = seen.shares().get(bands.size());
      met |= share >= rules.rate().requiredShare();
      bands.add(StrengthChecks.words(band) + " for " + BothUnits.wholePercent(share));
    }
    findings.checkAndDepart(
        name,
        met,
        "the rate between the marks of cycle "
            + cycle.number()
            + " was within "
            + String.join(" and within ", bands)
            + " of the "
            + BothUnits.rounded(seen.seconds(), "0.1")
            + " s judged, in the mean "
            + rate(seen.mean())
            + ", at least "
            + rate(seen.least())
            + ", at most "
            + rate(seen.greatest()));
  }

  private void checkGreatest(StrainFeed feed) {
    if (!(feed.greatestNewtons() > 0)) {
      return;
    }
    double share = feed.greatestNewtons() / area / strength;
    findings.checkAndDepart(
        "beyond",
        share <= rules.cycles().beyondShare(),
        "the greatest stress was "
            + stress(feed.greatestNewtons())
            + ", "
            + BothUnits.rounded(share * 100, "0.1")
            + " % of the companions' strength; more than "
            + BothUnits.plain(rules.cycles().beyondShare() * 100)
            + " % is not wanted");
  }

  private void departFromGaugeCalibration() {
    List<String> without =
        gauges.stream()
            .filter(gauge -> gauge.facts().calibrationPercent().isEmpty())
            .map(StrainGauge::name)
            .toList();
    if (!without.isEmpty()) {
      findings.depart(
          "No calibration is given of "
              + String.join(", ", without)
              + "; the uncertainty was taken from a limit of "
              + BothUnits.plain(rules.gauge().accuracyPercent())
              + " %.");
    }
  }

  private void departFromGaugeSuspects(StrainFeed feed) {
    for (int i = 0; i < gauges.size(); i++) {
      long count = feed.gaugeFilters().get(i).suspectCount();
      if (count > 0) {
        findings.depart(
            count
                + (count == 1 ? " lone reading" : " lone readings")
                + " of "
                + gauges.get(i).name()
                + (count == 1 ? " was" : " were")
                + " left out as impossible.");
      }
    }
  }

  private String stress(double newtons) {
    return BothUnits.stress(newtons / area, rules.rounding().stress());
  }

  private String rate(double newtonsPerSecond) {
    return BothUnits.both(
        newtonsPerSecond / area,
        Unit.MEGAPASCAL_PER_SECOND,
        Unit.PSI_PER_SECOND,
        rules.rounding().rate());
  }
}
