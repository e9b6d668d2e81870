package io.github.platenwire.study;

import io.github.platenwire.quantity.UnitSystem;
import io.github.platenwire.statistics.ConfidenceSet;
import io.github.platenwire.statistics.Interval;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Sentences made from the numbers about strengths, for people who will not read a table. Each
 * carries its interval and its numbers of specimens; where there are too few, or the data say
 * nothing, the sentence says so. Stateless; safe for use by several threads.
 */
public final class PlainSentences {
  /** What an interval of two series by themselves is called. */
  static final String INTERVAL = "95 % interval";

  private PlainSentences() {}

  /** What an interval is called that holds for several series at once. */
  static String intervalOfAll(int series) {
    return switch (series) {
      case 0, 1 -> INTERVAL;
      case 2 -> INTERVAL + " for both series at once";
      default -> INTERVAL + " for all " + series + " series at once";
    };
  }

  /**
   * Such as: At 7 days NA-T is 1.42 times RA-S (95 % interval 1.21 to 1.68; n = 3 and 4).
   *
   * @param ageDays age of both series
   * @param first name of the series above the line
   * @param second name of the series below the line
   */
  public static String ratio(double ageDays, String first, String second, FiellerRatio ratio) {
    return ratio(
        ageDays,
        first,
        second,
        ratio,
        Optional.empty(),
        INTERVAL,
        FigureText.strength(UnitSystem.SI));
  }

  /** As above, with the uncertainty of calibration in the interval and the reason behind it. */
  public static String ratio(
      double ageDays, String first, String second, FiellerRatio ratio, CalibratedRatio calibrated) {
    return ratio(
            ageDays,
            first,
            second,
            ratio,
            Optional.of(calibrated),
            INTERVAL,
            FigureText.strength(UnitSystem.SI))
        + " "
        + calibrated.reason();
  }

  /**
   * As above, without the reason.
   *
   * @param intervalName what kind of interval it is, such as {@link #INTERVAL}
   * @param text what is compared
   */
  static String ratio(
      double ageDays,
      String first,
      String second,
      FiellerRatio ratio,
      Optional<CalibratedRatio> calibrated,
      String intervalName,
      FigureText text) {
    String head = head(ageDays, text.of(first));
    String counts = Figures.counts(ratio.nFirst(), ratio.nSecond());
    if (ratio.set() instanceof ConfidenceSet.Bounded bounded) {
      Interval interval = calibrated.map(CalibratedRatio::interval).orElse(bounded.interval());
      int decimals = Figures.decimalsWithin(ratio.ratio(), interval);
      return head
          + Figures.fixed(ratio.ratio(), decimals)
          + (" times " + text.than(second) + " (" + intervalName + " ")
          + Figures.interval(interval, decimals)
          + (calibrated.isPresent() ? ", calibration included" : "")
          + ("; " + counts + ").")
          + (interval.contains(1) ? " The interval holds 1: no difference is shown." : "");
    }
    String times =
        Figures.plain(ratio.ratio()) + " times " + text.than(second) + " (" + counts + "; ";
    if (ratio.set() instanceof ConfidenceSet.NotGiven notGiven) {
      return head + times + notGiven.reason() + ", so no interval and no verdict).";
    }
    return head
        + times
        + ("no bounded " + intervalName + ", because the mean of " + second)
        + " cannot be told from zero; no verdict).";
  }

  private static String head(double ageDays, String whose) {
    String at = Figures.atAge(ageDays);
    String subject =
        at.isEmpty() ? whose.substring(0, 1).toUpperCase(Locale.ROOT) + whose.substring(1) : whose;
    return at + subject + " is ";
  }

  /**
   * Such as: At 7 days NA-T is 9.4 MPa (1360 psi) above RA-S (95 % interval 5.2 to 13.6 MPa; …).
   *
   * @param difference in MPa
   */
  public static String difference(
      double ageDays, String first, String second, WelchDifference difference) {
    return difference(
        ageDays,
        first,
        second,
        difference,
        difference.inference().map(WelchDifference.Inference::interval),
        INTERVAL,
        FigureText.strength(UnitSystem.SI));
  }

  /**
   * As above, of any figure.
   *
   * @param interval which interval stands for the difference
   * @param intervalName what kind of interval it is, such as {@link #INTERVAL}
   * @param text how the values are written
   */
  static String difference(
      double ageDays,
      String first,
      String second,
      WelchDifference difference,
      Optional<Interval> interval,
      String intervalName,
      FigureText text) {
    double found = difference.difference();
    String head =
        head(ageDays, text.of(first))
            + text.value(Math.abs(found))
            + (found < 0 ? " below " : " above ")
            + text.than(second);
    String counts = Figures.counts(difference.nFirst(), difference.nSecond());
    return interval
        .map(
            sure ->
                head
                    + (" (" + intervalName + " " + text.interval(along(found, sure)))
                    + ("; " + counts + ").")
                    + (sure.contains(0) ? " The interval holds 0: no difference is shown." : ""))
        .orElseGet(
            () ->
                head
                    + (" (" + counts)
                    + "; fewer than three specimens in a series, so no interval and no verdict).");
  }

  /** The interval of how far above, or of how far below. */
  private static Interval along(double difference, Interval interval) {
    return difference < 0 ? new Interval(-interval.high(), -interval.low()) : interval;
  }

  /**
   * Whether a series still gains.
   *
   * @param series its name
   * @param units which system stands first
   */
  public static String trend(String series, AgeTrend trend, UnitSystem units) {
    String ages =
        "between " + Figures.age(trend.firstAgeDays()) + " and " + Figures.age(trend.lastAgeDays());
    String count = "n = " + trend.n();
    AgeTrend.Verdict verdict = trend.verdict();
    if (verdict instanceof AgeTrend.Gains gains) {
      return series
          + (" gains " + Figures.stress(gains.gainMegapascals(), units) + " " + ages)
          + interval(gains.interval(), count, units);
    }
    if (verdict instanceof AgeTrend.Falls falls) {
      return series
          + (" falls by " + Figures.stress(-falls.gainMegapascals(), units) + " " + ages)
          + interval(along(-1, falls.interval()), count, units)
          + " Look at the specimens before believing it.";
    }
    if (verdict instanceof AgeTrend.NoGainShown none) {
      return "No gain shown for "
          + (series + " " + ages + ": ")
          + (Figures.stress(none.gainMegapascals(), units)
              + interval(none.interval(), count, units))
          + " With this scatter and so many specimens a true gain of "
          + Figures.stress(none.smallestDetectableGainMegapascals(), units)
          + " would have been shown four times out of five, a smaller one less often.";
    }
    return "No verdict on the gain of "
        + (series + " (" + count + "): ")
        + ((AgeTrend.TooFew) verdict).reason()
        + ".";
  }

  private static String interval(Interval interval, String count, UnitSystem units) {
    return " (95 % interval " + Figures.stressInterval(interval, units) + "; " + count + ").";
  }

  /**
   * The curves of strength over age.
   *
   * @param series its name
   * @param units which system stands first
   */
  public static String curves(
      String series,
      Optional<AgeCurves.AciFit> aci,
      Optional<AgeCurves.EnFit> en,
      UnitSystem units) {
    List<String> parts = new ArrayList<>();
    aci.ifPresent(
        fit ->
            parts.add(
                "ACI 209R with "
                    + Figures.stress(fit.strength28Megapascals().value(), units)
                    + (" at 28 days, a = " + Figures.plain(fit.aDays().value()) + " d and b = ")
                    + Figures.plain(fit.b().value())));
    en.ifPresent(
        fit ->
            parts.add(
                "EN 1992-1-1 with "
                    + Figures.stress(fit.strength28Megapascals().value(), units)
                    + (" at 28 days and s = " + Figures.plain(fit.s().value()))));
    return parts.isEmpty()
        ? "No curve of strength over age fits " + series + "."
        : "Curves through " + series + ": " + String.join("; ", parts) + ".";
  }

  /**
   * Names a suspected outlier; says nothing of a sound series.
   *
   * @param specimen name of the specimen that the finding is about
   */
  public static Optional<String> outlier(String specimen, int n, Grubbs.Finding finding) {
    if (!finding.suspected()) {
      return Optional.empty();
    }
    return Optional.of(
        specimen
            + " stands "
            + Figures.fixed(finding.statistic(), 3)
            + (" standard deviations from the mean of its set of " + n + ", more than the ")
            + Figures.fixed(finding.critical(), 3)
            + " that chance explains (Grubbs, "
            + Figures.plainPercent(finding.significance())
            + "). It is kept in every figure; look for a cause.");
  }
}
