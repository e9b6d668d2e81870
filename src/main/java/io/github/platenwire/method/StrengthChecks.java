package io.github.platenwire.method;

import io.github.platenwire.live.BandJudge;
import io.github.platenwire.live.BreakDetector;
import io.github.platenwire.live.ZeroFinder;
import io.github.platenwire.method.MethodResult.Check;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** What the method asked of one test, and where it was not met. Used once. */
final class StrengthChecks {
  private final StrengthRules rules;
  private final TestSetting setting;
  private final List<Method.Objection> objections;
  private final LoadFollower follower;
  private final Optional<BandJudge.Verdict> verdict;
  private final List<Check> checks = new ArrayList<>();
  private final List<String> departures = new ArrayList<>();

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
    objections.forEach(this::departFrom);
    section.check().ifPresent(checks::add);
    checkAge(age);
    checkZero();
    checkBreak();
    checkRate(section.newtonsPerMegapascal());
    checkRange();
    departFromCalibration();
    departFromSuspects();
    return List.copyOf(checks);
  }

  List<String> departures() {
    return List.copyOf(departures);
  }

  private void departFrom(Method.Objection objection) {
    String problem = sentence(objection.problem());
    if (objection.weight() != Method.Weight.NEEDS_REASON) {
      departures.add(problem);
      return;
    }
    departures.add(
        problem
            + setting
                .overrideReason()
                .map(reason -> " It was tested all the same; reason given: " + reason)
                .orElse(" It was tested all the same; no reason was given."));
  }

  private void check(String name, boolean met, String words) {
    checks.add(new Check(name, met, words));
  }

  private void checkAndDepart(String name, boolean met, String words) {
    check(name, met, words);
    if (!met) {
      departures.add(sentence(words));
    }
  }

  private static String sentence(String words) {
    String upper = words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
    return upper.endsWith(".") ? upper : upper + ".";
  }

  private void checkAge(SpecimenAge age) {
    switch (age.standing()) {
      case WITHIN -> check("age", true, age.words());
      case OUTSIDE -> check("age", false, age.words());
      case NO_TOLERANCE, NOT_PLANNED, NOT_KNOWN, BEFORE_CAST -> {}
    }
  }

  private void checkZero() {
    ZeroFinder zero = follower.zero();
    String seconds = BothUnits.rounded(zero.spanMicros() * 1e-6, "0.1") + " s";
    String figures = force(zero.zero()) + ", from " + zero.readings() + " readings over " + seconds;
    checkAndDepart(
        "zero",
        zero.state() == ZeroFinder.State.QUIET,
        switch (zero.state()) {
          case QUIET -> "zero taken at " + figures;
          case SHORT ->
              "the load came on before the zero had been quiet long enough; it was taken at "
                  + figures;
          case NONE, SEEKING -> "no zero was found; nought was taken";
        });
  }

  private void checkBreak() {
    BreakDetector breaks = follower.breaks();
    String limit = BothUnits.wholePercent(rules.load().lost().fraction()) + " of the peak";
    if (!follower.wasLoaded()) {
      checkAndDepart("break", false, "no specimen was loaded, so there is no strength");
    } else if (breaks.isLost()) {
      double seconds = (breaks.lostMicros() - follower.peak().peakMicros()) * 1e-6;
      check(
          "break",
          true,
          "the load fell below "
              + limit
              + " "
              + BothUnits.rounded(seconds, "0.01")
              + " s after it, and stayed below; whether the fracture was well defined is for the"
              + " operator to say");
    } else if (breaks.isLow()) {
      checkAndDepart(
          "break",
          false,
          "the load had only just fallen below "
              + limit
              + " when the record ends, so the break is not certain");
    } else {
      checkAndDepart(
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
      checkAndDepart("rate", false, "the loading was too short for its rate to be judged");
      return;
    }
    BandJudge.Verdict seen = verdict.get();
    checkAndDepart(
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
    checkAndDepart(
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

  private static String words(StrengthRules.Band band) {
    return BothUnits.rounded(
            band.unit().fromBase(band.limits().lowMegapascalsPerSecond()), band.step())
        + " to "
        + BothUnits.rounded(
            band.unit().fromBase(band.limits().highMegapascalsPerSecond()), band.step())
        + " "
        + band.unit().symbol();
  }

  private void checkRange() {
    long over = follower.overReadings();
    if (over > 0) {
      checkAndDepart(
          "range",
          false,
          over
              + (over == 1 ? " reading was" : " readings were")
              + " beyond the range of the load channel; the true greatest load can be higher");
    } else {
      check("range", true, "every reading was within the range of the load channel");
    }
  }

  private void departFromCalibration() {
    if (follower.channel().facts().calibrationPercent().isEmpty()) {
      departures.add(
          "No calibration of the load is given; its uncertainty was taken from the limit of "
              + BothUnits.plain(rules.machineAccuracyPercent())
              + " % that the standard sets for the machine.");
    }
  }

  private void departFromSuspects() {
    long count = follower.filter().suspectCount();
    if (count > 0) {
      departures.add(
          count
              + (count == 1 ? " lone reading" : " lone readings")
              + " that the machine cannot have brought about "
              + (count == 1 ? "was" : "were")
              + " left out; the first "
              + follower.filter().suspects().size()
              + " are listed.");
    }
  }

  private String force(double newtons) {
    return BothUnits.force(newtons, rules.rounding().zero());
  }
}
