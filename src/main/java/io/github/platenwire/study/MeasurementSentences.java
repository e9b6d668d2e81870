package io.github.platenwire.study;

import io.github.platenwire.method.Absorption;
import io.github.platenwire.method.FrontAdvance;
import io.github.platenwire.quantity.UnitSystem;
import io.github.platenwire.statistics.ConfidenceSet;
import io.github.platenwire.statistics.Interval;
import io.github.platenwire.statistics.LineFit;
import io.github.platenwire.statistics.Values;
import java.util.Optional;

/**
 * Sentences made from the numbers about cracks, fronts and absorption, in the manner of {@link
 * PlainSentences}. Stateless; safe for use by several threads.
 */
public final class MeasurementSentences {
  private static final int MINUTE = 60;
  private static final int HOUR = 3600;
  private static final int DAY = 86_400;

  private MeasurementSentences() {}

  /**
   * How many times wider the cracks of one series are at a load.
   *
   * @param units which system stands first
   */
  public static String widthRatio(
      double loadNewtons,
      String first,
      String second,
      CrackRatio.Outcome outcome,
      UnitSystem units) {
    String head = "At " + Figures.load(loadNewtons, units) + " the crack of " + first + " is ";
    return crack(head, " times as wide as that of " + second, outcome)
        .orElseGet(
            () -> {
              CrackRatio.NearNoise noise = (CrackRatio.NearNoise) outcome;
              return "At "
                  + Figures.load(loadNewtons, units)
                  + (" no ratio of crack widths is given for " + first + " and " + second)
                  + ": near the noise (the smallest width is "
                  + Figures.width(noise.smallestWidthMillimetres(), units)
                  + ", a ratio needs "
                  + Figures.width(noise.leastUsableMillimetres(), units)
                  + ("; " + Figures.counts(noise.nFirst(), noise.nSecond()) + ").");
            });
  }

  /**
   * How many times the load is that opens the crack to a width.
   *
   * @param units which system stands first
   */
  public static String loadRatio(
      double widthMillimetres,
      String first,
      String second,
      CrackRatio.Outcome outcome,
      UnitSystem units) {
    String place = Figures.width(widthMillimetres, units);
    String head = "To open the crack to " + place + " " + first + " takes ";
    return crack(head, " times the load of " + second, outcome)
        .orElseGet(() -> "At " + place + " no ratio of loads is given: near the noise.");
  }

  private static Optional<String> crack(String head, String tail, CrackRatio.Outcome outcome) {
    if (outcome instanceof CrackRatio.Found found) {
      int decimals = Figures.decimalsWithin(found.ratio(), found.interval());
      return Optional.of(
          head
              + Figures.fixed(found.ratio(), decimals)
              + (tail + " (95 % interval " + Figures.interval(found.interval(), decimals))
              + ("; " + Figures.counts(found.nFirst(), found.nSecond()) + ").")
              + (found.interval().contains(1)
                  ? " The interval holds 1: no difference is shown."
                  : ""));
    }
    if (outcome instanceof CrackRatio.FigureOnly figure) {
      return Optional.of(
          head
              + Figures.plain(figure.ratio())
              + (tail + " (" + Figures.counts(figure.nFirst(), figure.nSecond()))
              + "; fewer than three specimens in a series, so no interval and no verdict).");
    }
    return Optional.empty();
  }

  /**
   * Which of the two lines a front follows, if the readings tell.
   *
   * @param units which system stands first
   */
  public static String shape(FrontAdvance front, UnitSystem units) {
    String residuals =
        " (residual deviation "
            + Figures.width(front.linear().residualDeviation(), units)
            + " about the line in time, "
            + Figures.width(front.squareRoot().residualDeviation(), units)
            + (" about the line in its square root; n = " + front.linear().n() + ").");
    return front
            .better()
            .map(
                shape ->
                    switch (shape) {
                      case LINEAR -> "The front advances in proportion to time";
                      case SQUARE_ROOT ->
                          "The front advances in proportion to the square root of time";
                    })
            .orElse("The readings do not tell whether the front goes with time or its square root")
        + residuals;
  }

  /**
   * When a front reaches a depth.
   *
   * @param units which system stands first
   */
  public static String timeTo(
      double depthMillimetres, Optional<FrontAdvance.TimeToDepth> reached, UnitSystem units) {
    String depth = Figures.width(depthMillimetres, units);
    if (reached.isEmpty()) {
      return "Along this line the front does not come to " + depth + " after its start.";
    }
    FrontAdvance.TimeToDepth time = reached.get();
    double unit = unitSeconds(time.seconds());
    String tail =
        time.beyondReadings() ? " This lies beyond the last reading, if it goes on so." : "";
    if (time.set() instanceof ConfidenceSet.Bounded bounded) {
      Interval scaled =
          new Interval(bounded.interval().low() / unit, bounded.interval().high() / unit);
      int decimals = Figures.decimalsWithin(time.seconds() / unit, scaled);
      return "The front reaches "
          + (depth + " after " + Figures.fixed(time.seconds() / unit, decimals))
          + (unitName(unit) + " (95 % interval " + Figures.interval(scaled, decimals))
          + (unitName(unit) + ").")
          + tail;
    }
    return "The front reaches "
        + (depth + " after " + Figures.plain(time.seconds() / unit))
        + unitName(unit)
        + " (no bounded 95 % interval: the readings do not show that it advances)."
        + tail;
  }

  /** The rate of absorption, or why there is none. */
  public static String absorption(Absorption.Outcome outcome) {
    if (outcome instanceof Absorption.Rate rate) {
      LineFit line = rate.line();
      Interval interval = line.slopeInterval(Values.LEVEL);
      int decimals = Figures.decimalsWithin(line.slope(), interval);
      return "Rate of absorption "
          + (Figures.fixed(line.slope(), decimals) + " mm/√s (95 % interval ")
          + (Figures.interval(interval, decimals) + "; r = ")
          + (Figures.fixed(line.correlation(), 4) + "; n = " + line.n() + ").");
    }
    if (outcome instanceof Absorption.NotALine bent) {
      return "No rate of absorption: the points do not follow a line (r = "
          + Figures.fixed(bent.correlation(), 4)
          + ", at least "
          + Figures.plain(bent.asked())
          + " is asked).";
    }
    return "No rate of absorption: only "
        + ((Absorption.TooFew) outcome).points()
        + " readings in this stretch, three are needed.";
  }

  private static double unitSeconds(double seconds) {
    if (seconds < 2 * MINUTE) {
      return 1;
    }
    if (seconds < 3 * HOUR) {
      return MINUTE;
    }
    return seconds < 3 * DAY ? HOUR : DAY;
  }

  private static String unitName(double unitSeconds) {
    return switch ((int) unitSeconds) {
      case 1 -> " s";
      case MINUTE -> " min";
      case HOUR -> " h";
      default -> " days";
    };
  }
}
