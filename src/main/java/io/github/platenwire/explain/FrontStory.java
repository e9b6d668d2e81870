package io.github.platenwire.explain;

import io.github.platenwire.method.FrontPart;
import io.github.platenwire.method.MethodResult.Figure;
import io.github.platenwire.quantity.Unit;
import java.util.List;

/**
 * Tells of a log of depths against time: its readings, the two lines through them, and when a line
 * reaches a depth. Immutable.
 */
final class FrontStory implements Story {
  private final Evidence evidence;
  private final List<FrontPart.Reading> readings;

  FrontStory(Evidence evidence) {
    this.evidence = evidence;
    readings = evidence.trail().readings();
  }

  @Override
  public boolean tells(Figure figure) {
    return evidence.kind().equals("front")
        && !readings.isEmpty()
        && (figure.name().startsWith("rate-")
            || figure.name().startsWith("deviation-")
            || figure.name().startsWith("time-to-"));
  }

  @Override
  public void tell(Figure figure, Telling telling) {
    boolean inTime = !figure.name().contains("in-root-time");
    new ReadingsList(evidence).tell(readings, telling);
    LineSums line =
        LineSums.of(
            readings.stream()
                .map(one -> new LineSums.Point(x(one.seconds(), inTime), one.base()))
                .toList());
    line(line, inTime, telling);
    if (figure.name().startsWith("rate-")) {
      slope(line, inTime, figure, telling);
    } else if (figure.name().startsWith("deviation-")) {
      deviation(line, figure, telling);
    } else {
      new TimeToDepth(evidence, line, inTime).tell(figure, telling);
    }
  }

  private static double x(double seconds, boolean inTime) {
    return inTime ? seconds : Math.sqrt(seconds);
  }

  private void line(LineSums line, boolean inTime, Telling telling) {
    String x = inTime ? "time t" : "root of time, x = sqrt(t)";
    String unit = inTime ? " s" : " sqrt(s)";
    telling.step(
        "Line of depth d on "
            + x
            + " by least squares through all "
            + line.count()
            + " readings. Its centre: "
            + FigureWords.number(line.meanX())
            + unit
            + ", "
            + Term.millimetres(line.meanY()).both(evidence.first())
            + ".");
  }

  private static void slope(LineSums line, boolean inTime, Figure figure, Telling telling) {
    telling.step("Slope, with the sums of the differences from the centre:");
    telling.formula(
        inTime
            ? Formula.inSi(
                "60 x sum of d t / sum of t²",
                "60 x {} mm s / {} s²",
                n -> 60 * n[0] / n[1],
                Term.plain(line.xy()),
                Term.plain(line.xx()))
            : Formula.inSi(
                "sum of d x / sum of x²",
                "{} mm sqrt(s) / {} s",
                n -> n[0] / n[1],
                Term.plain(line.xy()),
                Term.plain(line.xx())),
        figure);
  }

  private void deviation(LineSums line, Figure figure, Telling telling) {
    boolean inTime = figure.name().equals("deviation-in-time");
    double squares = 0;
    FrontPart.Reading farthest = readings.get(0);
    double most = -1;
    for (FrontPart.Reading one : readings) {
      double off = one.base() - line.at(x(one.seconds(), inTime));
      squares += off * off;
      if (Math.abs(off) > most) {
        most = Math.abs(off);
        farthest = one;
      }
    }
    telling.more(
        "Its slope is "
            + FigureWords.number(line.slope())
            + (inTime ? " mm/s" : " mm/sqrt(s)")
            + "; farthest off it is row "
            + farthest.seq()
            + ", by "
            + Term.millimetres(most).both(evidence.first())
            + ".");
    telling.step("Scatter: the root of the squares that the line leaves over, n - 2 of them free:");
    telling.formula(
        Formula.inSi(
            "sqrt(sum of squares / (n - 2))",
            "sqrt({} mm² / ({} - 2))",
            n -> Math.sqrt(n[0] / (n[1] - 2)),
            Term.plain(squares),
            Term.plain(line.count())),
        figure);
  }

  /** Minutes of a time in seconds. */
  static Term minutes(double seconds) {
    return Term.same(Unit.MINUTE.fromBase(seconds), Unit.MINUTE);
  }
}
