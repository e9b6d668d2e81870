package io.github.platenwire.method;

import io.github.platenwire.live.LoneReadingFilter;
import io.github.platenwire.live.ZeroFinder;
import io.github.platenwire.method.MethodResult.Check;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Collects what a method asked for and where a test departs from it. Not thread-safe. */
final class Findings {
  private final List<Check> checks = new ArrayList<>();
  private final List<String> departures = new ArrayList<>();

  List<Check> checks() {
    return List.copyOf(checks);
  }

  List<String> departures() {
    return List.copyOf(departures);
  }

  void check(Check check) {
    checks.add(check);
  }

  void check(String name, boolean met, String words) {
    checks.add(new Check(name, met, words));
  }

  /** As {@link #check}; what is not met is a departure too. */
  void checkAndDepart(String name, boolean met, String words) {
    check(name, met, words);
    if (!met) {
      depart(words);
    }
  }

  /** Adds a departure, as a whole sentence. */
  void depart(String words) {
    departures.add(sentence(words));
  }

  /** What spoke against the test before it was done. */
  void departFrom(List<Method.Objection> objections, TestSetting setting) {
    for (Method.Objection objection : objections) {
      String problem = sentence(objection.problem());
      departures.add(
          objection.weight() != Method.Weight.NEEDS_REASON
              ? problem
              : problem
                  + setting
                      .overrideReason()
                      .map(reason -> " It was tested all the same; reason given: " + reason)
                      .orElse(" It was tested all the same; no reason was given."));
    }
  }

  /** The age, where there is a tolerance to hold it against. */
  void checkAge(SpecimenAge age) {
    switch (age.standing()) {
      case WITHIN -> check("age", true, age.words());
      case OUTSIDE -> check("age", false, age.words());
      case NO_TOLERANCE, NOT_PLANNED, NOT_KNOWN, BEFORE_CAST -> {}
    }
  }

  /** How the zero of the load was found. */
  void checkZero(ZeroFinder zero, Steps steps) {
    String seconds = BothUnits.rounded(zero.spanMicros() * 1e-6, "0.1") + " s";
    String figures =
        BothUnits.force(zero.zero(), steps)
            + ", from "
            + zero.readings()
            + " readings over "
            + seconds;
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

  /**
   * Whether every load could be shown.
   *
   * @param over how many readings were beyond the range of the load channel
   * @param consequence what the true load may be then
   */
  void checkRange(long over, String consequence) {
    if (over > 0) {
      checkAndDepart(
          "range",
          false,
          over
              + (over == 1 ? " reading was" : " readings were")
              + " beyond the range of the load channel; the true "
              + consequence);
    } else {
      check("range", true, "every reading was within the range of the load channel");
    }
  }

  /** A load without a calibration. */
  void departFromCalibration(LoadChannel load, double limitPercent) {
    if (load.facts().calibrationPercent().isEmpty()) {
      depart(
          "No calibration of the load is given; its uncertainty was taken from the limit of "
              + BothUnits.plain(limitPercent)
              + " % that the standard sets for the machine.");
    }
  }

  /** Loads that were set aside. */
  void departFromSuspects(LoneReadingFilter filter) {
    long count = filter.suspectCount();
    if (count > 0) {
      depart(
          count
              + (count == 1 ? " lone reading" : " lone readings")
              + " that the machine cannot have brought about "
              + (count == 1 ? "was" : "were")
              + " left out; the first "
              + filter.suspects().size()
              + " are listed.");
    }
  }

  static String sentence(String words) {
    String upper = words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
    return upper.endsWith(".") ? upper : upper + ".";
  }
}
