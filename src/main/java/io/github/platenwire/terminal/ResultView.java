package io.github.platenwire.terminal;

import io.github.platenwire.method.MethodResult;
import io.github.platenwire.method.MethodResult.Check;
import io.github.platenwire.method.MethodResult.Figure;
import io.github.platenwire.quantity.UnitSystem;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/** Shows what a test came to. Pure; each call to {@link #lines} stands for itself. */
public final class ResultView {
  private static final int VALUE_COLUMN = 30;
  private static final int NARROW_VALUE_COLUMN = 5;
  private static final int PATH_COLUMN = 14;
  private static final int WIDE = 64;

  private final int room;
  private final Look look;
  private final List<String> lines = new ArrayList<>();

  private ResultView(int room, Look look) {
    this.room = room;
    this.look = look;
  }

  /**
   * The lines.
   *
   * @param result what it came to
   * @param places where its files are
   * @param columns width of the terminal
   * @param look how it looks
   */
  public static List<String> lines(
      MethodResult result, List<Place> places, int columns, Look look) {
    ResultView view = new ResultView(Math.max(30, columns - 1), look);
    view.figures(result.figures());
    view.checks(result.checks());
    view.sentences("Departures from the method", result.departures());
    view.suspects(result.suspects());
    view.places(places);
    return List.copyOf(view.lines);
  }

  private void figures(List<Figure> figures) {
    heading("Result");
    if (figures.isEmpty()) {
      pair("", Style.PLAIN, "none: the test came to no figure");
    }
    figures.forEach(this::figure);
  }

  private void figure(Figure figure) {
    pair(figure.title(), Style.STRONG, value(figure));
    figure
        .uncertainty()
        .ifPresent(
            budget ->
                pair(
                    "",
                    Style.PLAIN,
                    "± " + bound(figure, budget.expanded()) + ", expanded, k = 2"));
    figure
        .samplingBound()
        .filter(bound -> bound > 0)
        .ifPresent(
            bound -> pair("", Style.PLAIN, "sampling bound " + bound(figure, bound) + ", upwards"));
    if (!figure.rows().isEmpty()) {
      String word = figure.rows().size() == 1 ? "row " : "rows ";
      pair("", Style.PLAIN, "rests on " + word + numbers(figure.rows()));
    }
  }

  private String value(Figure figure) {
    String si = join(figure.rounded(), figure.unit().symbol());
    String inchPound = join(figure.inchPoundRounded(), figure.inchPoundUnit().symbol());
    return both(figure, si, inchPound);
  }

  private String bound(Figure figure, double value) {
    String si = join(twoDigits(value), figure.unit().symbol());
    double converted = figure.unit().convert(value, figure.inchPoundUnit());
    return both(figure, si, join(twoDigits(converted), figure.inchPoundUnit().symbol()));
  }

  private String both(Figure figure, String si, String inchPound) {
    if (figure.unit() == figure.inchPoundUnit()) {
      return si;
    }
    boolean siFirst = look.first() == UnitSystem.SI;
    return siFirst ? si + " (" + inchPound + ")" : inchPound + " (" + si + ")";
  }

  private static String join(String number, String unit) {
    return unit.equals("1") ? number : number + " " + unit;
  }

  /**
   * At most two significant digits, as JCGM 100:2008 (GUM) 7.2.6 says of an uncertainty; rounded
   * up, so that it is never understated.
   */
  static String twoDigits(double value) {
    if (!Double.isFinite(value)) {
      return "unknown";
    }
    BigDecimal rounded =
        BigDecimal.valueOf(value).round(new MathContext(2, RoundingMode.UP)).stripTrailingZeros();
    int scale = rounded.signum() == 0 ? 0 : rounded.precision() - rounded.scale();
    int decimals = Math.max(0, rounded.signum() == 0 ? 0 : 2 - scale);
    return rounded.setScale(decimals, RoundingMode.UNNECESSARY).toPlainString();
  }

  private void checks(List<Check> checks) {
    if (checks.isEmpty()) {
      return;
    }
    heading("Checks");
    for (Check check : checks) {
      String mark = check.met() ? look.glyphs().passed() : look.glyphs().failed();
      Style style = check.met() ? Style.GOOD : Style.BAD;
      Line line = new Line(look).add("   ").add(style, mark + (check.met() ? " met" : " not met"));
      hanging(line.to(14), check.name() + ": " + check.words());
    }
  }

  private void sentences(String title, List<String> sentences) {
    if (sentences.isEmpty()) {
      return;
    }
    heading(title);
    sentences.forEach(sentence -> hanging(new Line(look).add("   - "), sentence));
  }

  private void suspects(List<Long> rows) {
    if (!rows.isEmpty()) {
      heading("Left out as impossible");
      String word = rows.size() == 1 ? "row " : "rows ";
      hanging(new Line(look).add("   "), word + numbers(rows) + " of the raw file");
    }
  }

  private static String numbers(List<Long> rows) {
    String shown = rows.stream().limit(8).map(String::valueOf).collect(Collectors.joining(", "));
    return rows.size() > 8 ? shown + " and " + (rows.size() - 8) + " more" : shown;
  }

  private void places(List<Place> places) {
    if (!places.isEmpty()) {
      heading("Files");
      places.forEach(this::place);
    }
  }

  /** A path stays in one piece, even beyond the width, so that it can be copied. */
  private void place(Place place) {
    String path = look.glyphs().text(place.path());
    Line line = new Line(look).add("   ").add(place.label()).to(PATH_COLUMN - 2).add("  ");
    if (line.columns() + TextWidth.columns(path) > room) {
      lines.add(line.render(room));
      line = new Line(look).to(NARROW_VALUE_COLUMN);
    }
    lines.add(line.add(path).render(Integer.MAX_VALUE));
  }

  private void heading(String title) {
    if (!lines.isEmpty()) {
      lines.add("");
    }
    lines.add(new Line(look).add(" ").add(Style.STRONG, title).render(room));
  }

  private void pair(String label, Style style, String value) {
    boolean wide = room >= WIDE;
    int column = wide ? VALUE_COLUMN : NARROW_VALUE_COLUMN;
    Line line = new Line(look).add("   ").add(label);
    boolean fits = line.columns() + 2 <= column;
    if (!fits && !label.isEmpty()) {
      lines.add(line.render(room));
      line = new Line(look);
    }
    hanging(line.to(column), style, value);
  }

  private void hanging(Line line, String text) {
    hanging(line, Style.PLAIN, text);
  }

  /** Writes a text behind the beginning of a line, its further lines below its first word. */
  private void hanging(Line beginning, Style style, String text) {
    int column = beginning.columns();
    Line line = beginning;
    for (String part : TextWidth.wrap(look.glyphs().text(text), room - column)) {
      lines.add(line.add(style, part).render(room));
      line = new Line(look).to(column);
    }
  }
}
