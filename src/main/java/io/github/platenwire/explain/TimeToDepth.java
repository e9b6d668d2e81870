package io.github.platenwire.explain;

import io.github.platenwire.method.MethodResult.Figure;
import io.github.platenwire.quantity.Unit;
import io.github.platenwire.statistics.StudentT;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Tells when a fitted line reaches a depth, and the 95 % interval of that. Immutable. */
final class TimeToDepth {
  private static final Pattern NAME = Pattern.compile("time-to-([0-9.]+)-mm-.*");
  private static final double LEVEL = 0.95;
  private static final double HAIR = 1e-6;

  private final Evidence evidence;
  private final LineSums line;
  private final boolean inTime;

  TimeToDepth(Evidence evidence, LineSums line, boolean inTime) {
    this.evidence = evidence;
    this.line = line;
    this.inTime = inTime;
  }

  void tell(Figure figure, Telling telling) {
    Matcher name = NAME.matcher(figure.name());
    if (!name.matches()) {
      throw new IllegalStateException("no time to a depth: " + figure.name());
    }
    double depth = Double.parseDouble(name.group(1));
    telling.more(
        "Its slope b is "
            + FigureWords.number(line.slope())
            + (inTime ? " mm/s." : " mm/sqrt(s)."));
    if (figure.name().endsWith("-from") || figure.name().endsWith("-to")) {
      bound(depth, figure, telling);
    } else {
      reached(depth, figure, telling);
    }
  }

  private void reached(double depth, Figure figure, Telling telling) {
    telling.step(
        "The line reaches "
            + Term.millimetres(depth).both(evidence.first())
            + " at"
            + (inTime ? " the time:" : " this root of time, squared:"));
    String places = "{} + ({} mm - {} mm) / {}";
    telling.formula(
        inTime
            ? Formula.inSi(
                "(mean t + (depth - mean d) / b) / 60",
                "(" + places + ") / 60",
                n -> (n[0] + (n[1] - n[2]) / n[3]) / 60,
                terms(depth))
            : Formula.inSi(
                "(mean x + (depth - mean d) / b)² / 60",
                "(" + places + ")² / 60",
                n -> Math.pow(n[0] + (n[1] - n[2]) / n[3], 2) / 60,
                terms(depth)),
        figure);
  }

  private Term[] terms(double depth) {
    return new Term[] {
      Term.plain(line.meanX()),
      Term.plain(depth),
      Term.plain(line.meanY()),
      Term.plain(line.slope())
    };
  }

  /**
   * At the end of the interval the line's own 95 % interval just still has the depth in it: both
   * sides of that are told. Fieller's theorem solves it.
   */
  private void bound(double depth, Figure figure, Telling telling) {
    double seconds = Unit.MINUTE.toBase(figure.exact());
    double x = inTime ? seconds : Math.sqrt(seconds);
    int free = line.count() - 2;
    double t = StudentT.twoSided(LEVEL, free);
    double scatter = Math.sqrt(line.residualSquares() / free);
    double from = x - line.meanX();
    if (!isBound(depth - line.at(x), t * scatter, from)) {
      telling.noFormula(figure);
      return;
    }
    telling.step(
        "Interval: times at which the depth lies within the 95 % interval of the line itself"
            + " (Fieller). This is the "
            + (figure.name().endsWith("-from") ? "earliest" : "latest")
            + ", "
            + FigureWords.number(figure.exact())
            + " min = "
            + FigureWords.number(seconds)
            + " s. There the line is off the depth by "
            + Term.millimetres(Math.abs(depth - line.at(x))).both(evidence.first())
            + ",");
    telling.more(
        "and half the line's interval is as much, with Student's t for "
            + free
            + " free readings and their scatter s about the line:");
    telling.formula(
        Formula.inSi(
            "t s sqrt(1 / n + (x - mean x)² / sum of x²)",
            "{} x {} mm x sqrt(1 / {} + ({})² / {})",
            n -> n[0] * n[1] * Math.sqrt(1 / n[2] + n[3] * n[3] / n[4]),
            Term.plain(t),
            Term.plain(scatter),
            Term.plain(line.count()),
            Term.plain(Math.abs(from)),
            Term.plain(line.xx())),
        Unit.MILLIMETRE,
        Unit.INCH);
  }

  /** Both sides must agree, or the interval's end is not where it is said to be. */
  private boolean isBound(double off, double scale, double from) {
    double half = scale * Math.sqrt(1.0 / line.count() + from * from / line.xx());
    return Math.abs(Math.abs(off) - half) <= HAIR * half;
  }
}
