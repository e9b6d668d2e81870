package io.github.platenwire.method;

import io.github.platenwire.live.BandJudge;
import io.github.platenwire.live.BreakDetector;
import io.github.platenwire.method.MethodResult.Check;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;

/** What the method asked of one test, and where it was not met. Used once. */
final class StrengthChecks {
  private final StrengthRules rules;
  private final TestSetting setting;
  private final List<Method.Objection> objections;
  private final LoadFollower follower;
  private final Optional<BandJudge.Verdict> verdict;
  private final Findings findings = new Findings();

  StrengthChecks(
      StrengthRules rules,
      TestSetting setting,
      List<Method.Objection> objections,
      LoadFollower follower,
      Optional<BandJudge.Verdict> verdict) {
    this.rules = rules;
    this.setting = setting;
    this.objections = objections;
    this.follower = follower;
    this.verdict = verdict;
  }

  /** Judges everything; then {@link #departures} are known too. */
  List<Check> checks(Section section, SpecimenAge age) {
    findings.departFrom(objections, setting);
    section.check().ifPresent(findings::check);
    findings.checkAge(age);
    findings.checkZero(follower.zero(), rules.rounding().zero());
    checkBreak();
    checkRate(section.newtonsPerMegapascal());
    findings.checkRange(follower.overReadings(), "greatest load can be higher");
    findings.departFromCalibration(follower.channel(), rules.machineAccuracyPercent());
    findings.departFromSuspects(follower.filter());
    return findings.checks();
  }

  List<String> departures() {
    return findings.departures();
  }

  private void checkBreak() {
    BreakDetector breaks = follower.breaks();
    String limit = BothUnits.wholePercent(rules.load().lost().fraction()) + " of the peak";
    if (!follower.wasLoaded()) {
      findings.checkAndDepart("break", false, "no specimen was loaded, so there is no strength");
    } else if (breaks.isLost()) {
      double seconds = (breaks.lostMicros() - follower.peak().peakMicros()) * 1e-6;
      findings.check(
          "break",
          true,
          "the load fell below "
              + limit
              + " "
              + BothUnits.rounded(seconds, "0.01")
              + " s after it, and stayed below; whether the fracture was well defined is for the"
              + " operator to say");
    } else if (breaks.isLow()) {
      findings.checkAndDepart(
          "break",
          false,
          "the load had only just fallen below "
              + limit
              + " when the record ends, so the break is not certain");
    } else {
      findings.checkAndDepart(
          "break",
          false,
          "the load did not fall below "
              + limit
              + " for good before the record ends; the strength given is that of the greatest load"
              + " reached");
    }
  }

  private void checkRate(double newtonsPerMegapascal) {
    if (!follower.wasLoaded()) {
      return;
    }
    if (verdict.isEmpty()) {
      findings.checkAndDepart("rate", false, "the loading was too short for its rate to be judged");
      return;
    }
    BandJudge.Verdict seen = verdict.get();
    findings.checkAndDepart(
        "rate",
        Collections.max(seen.shares()) >= rules.rate().requiredShare(),
        "the rate was within "
            + bands(seen)
            + " of the "
            + BothUnits.rounded(seen.seconds(), "0.1")
            + " s "
            + judgedPart()
            + ", at least "
            + rate(seen.least() / newtonsPerMegapascal)
            + ", at most "
            + rate(seen.greatest() / newtonsPerMegapascal)
            + (rules.rate().toShare() < 1
                ? "; above that the specimen yields, and the rate is left alone and not judged"
                : ""));
    rules.rate().constantWithinPercent().ifPresent(percent -> checkConstant(seen, percent));
  }

  private void checkConstant(BandJudge.Verdict seen, double percent) {
    double below = (1 - seen.least() / seen.mean()) * 100;
    double above = (seen.greatest() / seen.mean() - 1) * 100;
    findings.checkAndDepart(
        "rate-constant",
        Math.max(below, above) <= percent + Objections.HAIR,
        "the rate stayed between "
            + BothUnits.tenthPercent(below)
            + " below and "
            + BothUnits.tenthPercent(above)
            + " above its mean "
            + judgedPart()
            + ", allowed are "
            + BothUnits.plain(percent)
            + " %");
  }

  private String judgedPart() {
    return "between "
        + BothUnits.wholePercent(rules.rate().fromShare())
        + " and "
        + BothUnits.wholePercent(rules.rate().toShare())
        + " of the greatest load";
  }

  private String rate(double megapascalsPerSecond) {
    StrengthRules.RateRules rate = rules.rate();
    return BothUnits.both(
        megapascalsPerSecond, rate.unit(), rate.inchPoundUnit(), rules.rounding().rate());
  }

  private String bands(BandJudge.Verdict seen) {
    List<String> words = new ArrayList<>();
    for (StrengthRules.Band band : rules.rate().bands()) {
      words.add(words(band) + " for " + BothUnits.wholePercent(seen.shares().get(words.size())));
    }
    return String.join(" and within ", words);
  }

  static String words(StrengthRules.Band band) {
    return BothUnits.rounded(
            band.unit().fromBase(band.limits().lowMegapascalsPerSecond()), band.step())
        + " to "
        + BothUnits.rounded(
            band.unit().fromBase(band.limits().highMegapascalsPerSecond()), band.step())
        + " "
        + band.unit().symbol();
  }
}
