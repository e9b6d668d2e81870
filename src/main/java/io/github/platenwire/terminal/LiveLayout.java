package io.github.platenwire.terminal;

import io.github.platenwire.method.ChordPart;
import io.github.platenwire.method.CrackPart;
import io.github.platenwire.method.LiveView;
import io.github.platenwire.method.LiveView.Phase;
import io.github.platenwire.quantity.UnitSystem;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Lays out a running test for a size of terminal. Pure: the same arguments give the same lines. Not
 * thread-safe while it works.
 */
final class LiveLayout {
  /*
   * Rows are built in reading order, each with its weight. When there are more rows than lines, the
   * lightest go first, the lower of two equal ones before the upper. The last column stays empty,
   * because terminals differ in what they do once it is written.
   */
  private enum Weight {
    SPACE,
    BIG,
    BAND,
    COUNT,
    FILE,
    EVENT,
    STRESS,
    BAR,
    NAME,
    FIGURE
  }

  private record Row(Weight weight, Line line) {}

  private static final int WIDE_COLUMNS = 64;
  private static final int WIDEST_BAR = 60;

  private final LiveFrame frame;
  private final LiveView view;
  private final TestFacts facts;
  private final TerminalSize size;
  private final Look look;
  private final boolean wide;
  private final int room;
  private final List<Row> rows = new ArrayList<>();

  private LiveLayout(LiveFrame frame, TestFacts facts, TerminalSize size, Look look) {
    this.frame = frame;
    this.view = frame.view();
    this.facts = facts;
    this.size = size;
    this.look = look;
    this.wide = size.columns() >= WIDE_COLUMNS;
    this.room = Math.max(1, size.columns() - 1);
  }

  /** The lines, no more than the size has, each at least one column narrower. */
  static List<String> lines(LiveFrame frame, TestFacts facts, TerminalSize size, Look look) {
    LiveLayout layout = new LiveLayout(frame, facts, size, look);
    layout.build();
    return layout.chosen();
  }

  private void build() {
    names();
    phase();
    space();
    big();
    view.crack().ifPresentOrElse(this::crack, this::compression);
    view.chord().ifPresent(this::chord);
    space();
    text(Weight.EVENT, "event", frame.lastEvent().map(LiveEvent::text).orElse("none yet"));
    text(Weight.FILE, "file", facts.fileName());
    count();
  }

  private void names() {
    Line line = start().add(" ").add(Style.STRONG, facts.specimen());
    String right =
        (facts.series().isEmpty() ? "" : "series " + facts.series() + "   ") + "rig " + facts.rig();
    add(Weight.NAME, atRight(line, right));
  }

  private void phase() {
    Style style = view.phase() == Phase.LOADING ? Style.STRONG : Style.PLAIN;
    Line line = start().add(" ").add(style, view.phase().words());
    add(Weight.FIGURE, atRight(line, clock(view.elapsedMicros())));
  }

  private Line atRight(Line line, String raw) {
    String right = look.glyphs().text(raw);
    int column = Math.max(line.columns() + 3, room - TextWidth.columns(right));
    return line.to(column).add(right);
  }

  private void space() {
    add(Weight.SPACE, start());
  }

  private void big() {
    boolean over = view.phase() == Phase.TAIL || view.phase() == Phase.ENDED;
    double newtons = over ? view.peakNewtons() : view.loadNewtons();
    String number =
        TextWidth.padLeft(
            Shown.LOAD.number(newtons, look.first()), look.first() == UnitSystem.SI ? 7 : 6);
    String unit = Shown.LOAD.unit(look.first()).symbol();
    Optional<int[]> cell = bigCell(number, TextWidth.columns(unit));
    if (cell.isEmpty()) {
      return;
    }
    List<String> lines =
        BigDigits.draw(number, cell.get()[0], cell.get()[1], look.glyphs().block());
    for (int i = 0; i < lines.size(); i++) {
      Line line = start().add(" ").add(Style.STRONG, lines.get(i));
      if (i == lines.size() - 1) {
        line.add("  ").add(Style.STRONG, unit);
      } else if (i == lines.size() - 2) {
        line.add("  ").add(over ? "peak" : "load");
      }
      add(Weight.BIG, line);
    }
    space();
  }

  /** The largest cell, in columns and lines, with which the number and all other rows fit. */
  private Optional<int[]> bigCell(String number, int unitColumns) {
    int otherRows =
        view.crack().map(crack -> 15 + crack.gauges().size()).orElse(13)
            + view.chord().map(chord -> chord.across().isPresent() ? 5 : 4).orElse(0);
    for (int[] cell : new int[][] {{6, 3}, {4, 2}, {2, 1}, {1, 1}}) {
      int columns = 1 + BigDigits.columns(number, cell[0]) + 2 + Math.max(4, unitColumns);
      if (columns <= room && BigDigits.CELLS_HIGH * cell[1] + 1 + otherRows <= size.lines()) {
        return Optional.of(cell);
      }
    }
    return Optional.empty();
  }

  private void compression() {
    figures();
    rate();
  }

  private void crack(CrackPart crack) {
    CrackLines lines = new CrackLines(crack, look, wide);
    add(Weight.FIGURE, figure("load", Shown.LOAD, view.loadNewtons()));
    add(Weight.STRESS, figure("peak", Shown.LOAD, view.peakNewtons()));
    add(Weight.FIGURE, lines.width());
    lines.gauges().forEach(line -> add(Weight.BAR, line));
    add(Weight.BAND, lines.rotation());
    lines.facts().forEach(line -> add(Weight.STRESS, line));
  }

  private void chord(ChordPart chord) {
    ChordLines lines = new ChordLines(view, chord, look, wide);
    lines.strains().forEach(line -> add(Weight.FIGURE, line));
    lines.facts().forEach(line -> add(Weight.FIGURE, line));
  }

  private void figures() {
    Line load = figure("load", Shown.LOAD, view.loadNewtons());
    add(Weight.FIGURE, load);
    Line peak = figure("peak", Shown.LOAD, view.peakNewtons());
    if (wide && Double.isFinite(view.peakStressMegapascals())) {
      peak.add("   at " + Shown.STRESS.both(view.peakStressMegapascals(), look.first()));
    }
    add(Weight.FIGURE, peak);
    add(Weight.STRESS, figure("stress", Shown.STRESS, view.stressMegapascals()));
  }

  private Line figure(String label, Shown shown, double base) {
    UnitSystem first = look.first();
    UnitSystem second = Shown.other(first);
    Line line = label(label);
    cell(line, shown, base, first, wide ? 8 : 7);
    return cell(line.add(wide ? "   " : ""), shown, base, second, wide ? 8 : 6);
  }

  private static Line cell(Line line, Shown shown, double base, UnitSystem system, int digits) {
    String unit = TextWidth.padRight(shown.unit(system).symbol(), 5);
    return line.add(TextWidth.padLeft(shown.number(base, system), digits) + " " + unit);
  }

  private void rate() {
    RateJudgement judgement = RateJudgement.of(view);
    Line line = figure("rate", Shown.RATE, view.rateMegapascalsPerSecond());
    if (wide) {
      line.add("   ").add(judgement.style(), judgement.word());
    } else if (judgement != RateJudgement.NOT_JUDGED) {
      line.add(" ").add(judgement.style(), judgement.word());
    }
    add(Weight.FIGURE, line);
    view.band().ifPresent(this::band);
  }

  private void band(LiveView.RateBand band) {
    Line line = label("").add("slow ");
    int columns = Math.max(9, Math.min(WIDEST_BAR, room - line.columns() - 5));
    line.add(RateBar.draw(view.rateMegapascalsPerSecond(), band, columns, look.glyphs()));
    add(Weight.BAR, line.add(" fast"));
    double low = band.lowMegapascalsPerSecond();
    double high = band.highMegapascalsPerSecond();
    add(Weight.BAND, label("band").add(Shown.RATE.range(low, high, look.first())));
  }

  private void count() {
    long marked = frame.markedReadings();
    Line line = label(wide ? "readings" : "read").add(frame.readings() + "   marked ");
    add(Weight.COUNT, line.add(marked > 0 ? Style.WARNING : Style.PLAIN, String.valueOf(marked)));
  }

  private void text(Weight weight, String label, String text) {
    add(weight, label(label).add(text));
  }

  private Line label(String label) {
    return start().add(" " + label).to(wide ? 11 : 7);
  }

  private Line start() {
    return new Line(look);
  }

  private void add(Weight weight, Line line) {
    rows.add(new Row(weight, line));
  }

  private List<String> chosen() {
    for (Weight weight : Weight.values()) {
      for (int i = rows.size() - 1; i >= 0 && rows.size() > size.lines(); i--) {
        if (rows.get(i).weight() == weight) {
          rows.remove(i);
        }
      }
    }
    return rows.stream().map(row -> row.line().render(room)).toList();
  }

  /** {@code 1:02.3}, or {@code 1:01:02.3} from an hour on. */
  static String clock(long micros) {
    long tenths = micros / 100_000;
    long hours = tenths / 36_000;
    long minutes = tenths / 600 % 60;
    double seconds = tenths % 600 / 10.0;
    return hours > 0
        ? String.format(Locale.ROOT, "%d:%02d:%04.1f", hours, minutes, seconds)
        : String.format(Locale.ROOT, "%d:%04.1f", minutes, seconds);
  }
}
