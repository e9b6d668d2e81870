package io.github.platenwire.chart;

import io.github.platenwire.method.MethodResult;
import io.github.platenwire.method.MethodResult.Figure;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** The marks on a crack's curve, out of the figures of the test. Immutable. */
final class CrackMarks {
  private final CrackTrace trace;
  private final MethodResult result;
  private final Theme theme;

  CrackMarks(CrackTrace trace, MethodResult result, Theme theme) {
    this.trace = trace;
    this.result = result;
    this.theme = theme;
  }

  /**
   * One mark.
   *
   * @param kind what it marks
   * @param seconds when it was
   * @param newtons at what load
   * @param millimetres at what width
   * @param words for a person, both systems of units
   */
  record Mark(Kind kind, double seconds, double newtons, double millimetres, String words) {}

  /** What is marked. */
  enum Kind {
    FIRST_CRACK,
    THRESHOLD,
    CYCLE
  }

  /**
   * A stretch at one load.
   *
   * @param from seconds
   * @param to seconds
   * @param words for a person
   */
  record Hold(double from, double to, String words) {}

  /** First cracks, thresholds and what cycles left, from the greatest load down. */
  List<Mark> all() {
    List<Mark> marks = new ArrayList<>();
    for (Figure figure : result.figures()) {
      if (figure.rows().isEmpty()) {
        continue;
      }
      switch (figure.name()) {
        case "first-crack-departure" ->
            marks.add(atLoad(Kind.FIRST_CRACK, figure, "first crack, left its line: "));
        case "first-crack-width" ->
            marks.add(atLoad(Kind.FIRST_CRACK, figure, "first crack, small opening: "));
        default -> addOther(marks, figure);
      }
    }
    marks.sort(Comparator.comparingDouble(Mark::newtons).reversed());
    return marks;
  }

  private void addOther(List<Mark> marks, Figure figure) {
    if (figure.name().startsWith("load-at-")) {
      String width = figure.name().substring("load-at-".length()).replace('-', ' ');
      marks.add(atLoad(Kind.THRESHOLD, figure, width + ": "));
    } else if (figure.name().startsWith("residual-")) {
      String cycle = figure.name().substring("residual-".length());
      int at = trace.indexOf(lastRow(figure));
      marks.add(
          new Mark(
              Kind.CYCLE,
              trace.seconds()[at],
              trace.newtons()[at],
              figure.unit().toBase(figure.exact()),
              "left by cycle " + cycle + ": " + HouseStyle.words(figure, theme)));
    }
  }

  private Mark atLoad(Kind kind, Figure figure, String before) {
    int at = trace.indexOf(lastRow(figure));
    return new Mark(
        kind,
        trace.seconds()[at],
        figure.unit().toBase(figure.exact()),
        Math.max(0, trace.millimetres()[at]),
        before + HouseStyle.words(figure, theme));
  }

  private static long lastRow(Figure figure) {
    return figure.rows().get(figure.rows().size() - 1);
  }

  /** The holds with the creep in each. */
  List<Hold> holds() {
    double[] seconds = trace.seconds();
    return result.figures().stream()
        .filter(figure -> figure.name().startsWith("creep-") && !figure.rows().isEmpty())
        .map(
            figure ->
                new Hold(
                    seconds[trace.indexOf(figure.rows().get(0))],
                    seconds[trace.indexOf(lastRow(figure))],
                    "hold "
                        + figure.name().substring("creep-".length())
                        + ": creep "
                        + HouseStyle.words(figure, theme)))
        .toList();
  }
}
