package io.github.platenwire.terminal;

import io.github.platenwire.method.LiveView;
import io.github.platenwire.method.LiveView.RateBand;

/** Where the rate of loading lies against its band, in a word. */
enum RateJudgement {
  WITHIN("within", Style.GOOD),
  SLOW("slow", Style.WARNING),
  FAST("fast", Style.BAD),
  /** The method has a band, but does not ask for it at this moment, or no rate is known yet. */
  NOT_JUDGED("not judged", Style.PLAIN),
  NO_BAND("", Style.PLAIN);

  private final String word;
  private final Style style;

  RateJudgement(String word, Style style) {
    this.word = word;
    this.style = style;
  }

  /** Judges by the exact figures, not by the rounded ones that are shown; limits are within. */
  static RateJudgement of(LiveView view) {
    if (view.band().isEmpty()) {
      return NO_BAND;
    }
    double rate = view.rateMegapascalsPerSecond();
    if (!view.bandApplies() || !Double.isFinite(rate)) {
      return NOT_JUDGED;
    }
    RateBand band = view.band().get();
    if (rate < band.lowMegapascalsPerSecond()) {
      return SLOW;
    }
    return rate > band.highMegapascalsPerSecond() ? FAST : WITHIN;
  }

  String word() {
    return word;
  }

  Style style() {
    return style;
  }
}
