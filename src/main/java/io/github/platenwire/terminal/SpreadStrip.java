package io.github.platenwire.terminal;

import io.github.platenwire.statistics.Interval;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleFunction;

/**
 * Single values over one common scale, each set on its own line with its mean and interval: points
 * are shown one by one, never as a bar alone. Not thread-safe.
 */
final class SpreadStrip {
  private static final int LABEL_GAP = 2;
  private static final int NARROWEST = 12;

  private final List<Row> rows = new ArrayList<>();

  private record Row(String label, List<Double> values, double mean, Optional<Interval> interval) {}

  /** Adds a set. */
  void add(String label, List<Double> values, double mean, Optional<Interval> interval) {
    rows.add(new Row(label, List.copyOf(values), mean, interval));
  }

  /**
   * The lines, each set on its own, and the ends of the scale below; empty where the terminal is
   * too narrow or all is one value.
   *
   * @param words how a value is written
   */
  List<Line> lines(int room, Look look, DoubleFunction<String> words) {
    int labels = rows.stream().mapToInt(row -> TextWidth.columns(row.label())).max().orElse(0);
    int width = room - labels - LABEL_GAP - 2;
    double low = rows.stream().mapToDouble(SpreadStrip::low).min().orElse(0);
    double high = rows.stream().mapToDouble(SpreadStrip::high).max().orElse(0);
    List<Line> lines = new ArrayList<>();
    if (width < NARROWEST || !(high > low)) {
      return lines;
    }
    for (Row row : rows) {
      Line line = new Line(look).add(" ").add(row.label()).to(1 + labels + LABEL_GAP);
      for (String cell : cells(row, low, high, width, look.glyphs())) {
        line.add(cell);
      }
      lines.add(line);
    }
    String end = words.apply(high);
    lines.add(
        new Line(look)
            .to(1 + labels + LABEL_GAP)
            .add(words.apply(low))
            .to(1 + labels + LABEL_GAP + width - TextWidth.columns(end))
            .add(end));
    return lines;
  }

  private static String[] cells(Row row, double low, double high, int width, Glyphs glyphs) {
    String[] cells = new String[width];
    Arrays.fill(cells, " ");
    row.interval()
        .ifPresent(
            interval -> {
              int from = place(interval.low(), low, high, width);
              int to = place(interval.high(), low, high, width);
              Arrays.fill(cells, from, to + 1, glyphs.rule());
              cells[from] = glyphs.bandStart();
              cells[to] = glyphs.bandEnd();
            });
    cells[place(row.mean(), low, high, width)] = "|";
    for (double value : row.values()) {
      cells[place(value, low, high, width)] = glyphs.marker();
    }
    return cells;
  }

  private static int place(double value, double low, double high, int width) {
    return (int) Math.round((value - low) / (high - low) * (width - 1));
  }

  private static double low(Row row) {
    double least = row.values().stream().min(Double::compare).orElse(row.mean());
    return row.interval().map(interval -> Math.min(interval.low(), least)).orElse(least);
  }

  private static double high(Row row) {
    double greatest = row.values().stream().max(Double::compare).orElse(row.mean());
    return row.interval().map(interval -> Math.max(interval.high(), greatest)).orElse(greatest);
  }
}
