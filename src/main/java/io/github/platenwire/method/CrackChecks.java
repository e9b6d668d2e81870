package io.github.platenwire.method;

import io.github.platenwire.live.CrackResult;
import io.github.platenwire.live.GaugeLoss;
import io.github.platenwire.method.MethodResult.Check;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** What the method asked of one beam's test, and where it was not met. Used once. */
final class CrackChecks {
  private final CrackRules rules;
  private final TestSetting setting;
  private final List<Method.Objection> objections;
  private final LoadChannel load;
  private final List<GaugeChannel> gauges;
  private final List<Check> checks = new ArrayList<>();
  private final List<String> departures = new ArrayList<>();

  CrackChecks(
      CrackRules rules,
      TestSetting setting,
      List<Method.Objection> objections,
      LoadChannel load,
      List<GaugeChannel> gauges) {
    this.rules = rules;
    this.setting = setting;
    this.objections = objections;
    this.load = load;
    this.gauges = gauges;
  }

  List<Check> checks(CrackResult result, OpeningRates rates, CrackFaults faults) {
    for (Method.Objection objection : objections) {
      departures.add(
          sentence(objection.problem())
              + (objection.weight() == Method.Weight.NEEDS_REASON
                  ? setting.overrideReason().map(reason -> " Reason given: " + reason).orElse("")
                  : ""));
    }
    checkZeros(result);
    checkGauges(result);
    check(
        "first-crack",
        result.firstCrack().byDeparture().isPresent()
            || result.firstCrack().bySmallWidth().isPresent(),
        result.firstCrack().byDeparture().isPresent()
                || result.firstCrack().bySmallWidth().isPresent()
            ? "the first crack was found"
            : "no crack was found");
    checkShare(result);
    checkRates(rates);
    checkRange(faults.overReadings());
    tellFalls(faults.falls());
    departFromSuspects(faults);
    departFromCalibration();
    return List.copyOf(checks);
  }

  List<String> departures() {
    return List.copyOf(departures);
  }

  private void check(String name, boolean met, String words) {
    checks.add(new Check(name, met, words));
    if (!met) {
      departures.add(sentence(words));
    }
  }

  private static String sentence(String words) {
    String upper = words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
    return upper.endsWith(".") ? upper : upper + ".";
  }

  private void checkZeros(CrackResult result) {
    List<String> missing = new ArrayList<>();
    if (!result.loadZero().isKnown()) {
      missing.add(load.facts().name());
    }
    for (int i = 0; i < gauges.size(); i++) {
      if (!result.gaugeZeros().get(i).isKnown()) {
        missing.add(gauges.get(i).name());
      }
    }
    check(
        "zero",
        missing.isEmpty(),
        missing.isEmpty()
            ? "load and gauges were quiet and zeroed before loading"
            : "no quiet zero was found of " + String.join(", ", missing));
  }

  private void checkGauges(CrackResult result) {
    List<String> words = new ArrayList<>();
    for (GaugeLoss loss : result.losses()) {
      words.add(
          "from "
              + BothUnits.fixed(Math.max(0, loss.lastGoodMicros()) * 1e-6, 2)
              + " s on "
              + gauges.get(loss.gauge()).name()
              + " was left out ("
              + loss.fault().words()
              + "): "
              + loss.reason());
    }
    List<String> counting = new ArrayList<>();
    for (int i = 0; i < gauges.size(); i++) {
      if ((result.mask() & (1 << i)) != 0) {
        counting.add(gauges.get(i).name());
      }
    }
    String rests = counting.isEmpty() ? "no gauge" : String.join(", ", counting);
    check(
        "gauges",
        words.isEmpty(),
        words.isEmpty()
            ? "the width rests on " + rests + " throughout"
            : String.join("; ", words) + "; from then on the width rests on " + rests);
  }

  private void checkShare(CrackResult result) {
    if (result.rows() > 0 && result.rowsWithoutWidth() > 0) {
      double share = (double) result.rowsWithoutWidth() / result.rows();
      checks.add(
          new Check(
              "aligned",
              share < 0.05,
              "in "
                  + BothUnits.wholePercent(share)
                  + " of the load's readings there was no width, for want of a gauge's reading near"
                  + " by"));
    }
  }

  private void checkRates(OpeningRates rates) {
    if (rules.notch().isEmpty()) {
      return;
    }
    CrackRules.Notch notch = rules.notch().get();
    for (int i = 0; i < notch.rates().size(); i++) {
      OpeningRates.Band band = notch.rates().get(i);
      double seen = rates.perMinute(i);
      String where =
          " from " + band.fromMillimetres() + " to " + band.toMillimetres() + " mm of opening";
      if (Double.isFinite(seen)) {
        check(
            "opening-rate-" + (i + 1),
            Math.abs(seen / band.perMinute() - 1) * 100 <= notch.rateTolerancePercent(),
            "the mean rate was "
                + BothUnits.fixed(seen, 3)
                + " mm/min, asked for "
                + BothUnits.plain(band.perMinute())
                + " mm/min within "
                + BothUnits.plain(notch.rateTolerancePercent())
                + " %,"
                + where);
      } else {
        check("opening-rate-" + (i + 1), false, "the rate could not be judged" + where);
      }
    }
  }

  private void checkRange(long overReadings) {
    check(
        "range",
        overReadings == 0,
        overReadings == 0
            ? "every reading was within its channel's range"
            : overReadings + " readings were beyond their channel's range and were not used");
  }

  /** A fact of the beam, not a fault of the test. */
  private void tellFalls(List<LoadFall> falls) {
    List<String> words = new ArrayList<>();
    for (LoadFall fall : falls) {
      words.add(
          "at "
              + BothUnits.fixed(fall.micros() * 1e-6, 2)
              + " s from "
              + BothUnits.force(fall.fromNewtons(), rules.rounding().load())
              + " to "
              + BothUnits.force(fall.toNewtons(), rules.rounding().load())
              + " at a width of "
              + BothUnits.fixed(fall.widthMillimetres(), 3)
              + " mm");
    }
    checks.add(
        new Check(
            "load-falls",
            /* met= */ true,
            words.isEmpty()
                ? "the load did not fall while the crack ran on"
                : "the load fell while the crack ran on: " + String.join("; ", words)));
  }

  private void departFromSuspects(CrackFaults faults) {
    if (faults.suspectCount() > 0) {
      departures.add(
          faults.suspectCount()
              + (faults.suspectCount() == 1 ? " lone reading" : " lone readings")
              + " of the load that the machine cannot have brought about "
              + (faults.suspectCount() == 1 ? "was" : "were")
              + " left out; the first "
              + faults.suspects().size()
              + " are listed.");
    }
  }

  private void departFromCalibration() {
    List<String> without = new ArrayList<>();
    for (ChannelFacts channel : setting.channels()) {
      if (channel.calibrationPercent().isEmpty()) {
        without.add(channel.name());
      }
    }
    if (!without.isEmpty()) {
      departures.add(
          "No calibration is given of "
              + String.join(", ", without)
              + "; the uncertainty was taken from the limits in the method file.");
    }
  }
}
