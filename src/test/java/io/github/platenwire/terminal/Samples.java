package io.github.platenwire.terminal;

import io.github.platenwire.method.LiveView;
import io.github.platenwire.method.LiveView.Phase;
import io.github.platenwire.method.LiveView.RateBand;
import io.github.platenwire.quantity.UnitSystem;
import java.util.Optional;

/** Moments of an invented test of a 100 mm cylinder. */
final class Samples {
  static final Look PLAIN = new Look(Palette.PLAIN, Glyphs.UNICODE, UnitSystem.SI);
  static final Look ASCII_INCH_POUND = new Look(Palette.PLAIN, Glyphs.ASCII, UnitSystem.INCH_POUND);
  static final TestFacts FACTS =
      new TestFacts("RA-07-2", "RA-T", "frame-north", "20261125T071502Z_RA-07-2.raw.csv");

  /** ASTM C39 rate of loading 0.25 ± 0.05 MPa/s, from memory. */
  static final Optional<RateBand> BAND = Optional.of(new RateBand(0.20, 0.30));

  private static final double AREA = Math.PI * 50 * 50;

  private Samples() {}

  static LiveFrame at(Phase phase) {
    return switch (phase) {
      case ZEROING -> frame(phase, 0, 0, Double.NaN, Double.NaN, Double.NaN, false, "start");
      case READY -> frame(phase, 31, 3_104_000, 0, 0, Double.NaN, false, "zero load=12.4");
      case LOADING ->
          frame(phase, 1240, 62_350_000, 123_450, 123_480, 0.262, true, "zero load=12.4");
      case TAIL -> frame(phase, 2391, 119_870_000, 96_310, 236_870, Double.NaN, false, "break");
      case ENDED ->
          frame(phase, 2431, 121_870_000, 1_230, 236_870, Double.NaN, false, "stop break");
    };
  }

  static LiveFrame loadingAt(double rate, boolean bandApplies) {
    return frame(Phase.LOADING, 1240, 62_350_000, 54_910, 54_910, rate, bandApplies, "start");
  }

  private static LiveFrame frame(
      Phase phase,
      long seq,
      long micros,
      double load,
      double peak,
      double rate,
      boolean bandApplies,
      String event) {
    LiveView view =
        new LiveView(
            phase, seq, micros, load, peak, load / AREA, peak / AREA, rate, BAND, bandApplies);
    return new LiveFrame(view, Optional.of(new LiveEvent(1, event)), seq, seq / 1000);
  }
}
