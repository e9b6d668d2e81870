package io.github.platenwire.terminal;

import java.util.ArrayList;
import java.util.List;

/**
 * A small table of text: columns aligned, numbers to the right, long words wrapped to the width. A
 * number is never cut; where the columns do not fit at all, each row is written as a list. Not
 * thread-safe.
 */
public final class TextTable {
  private static final int GAP = 3;
  private static final int NARROWEST_WORDS = 10;

  private final List<Column> columns;
  private final List<List<String>> rows = new ArrayList<>();

  /**
   * One column.
   *
   * @param title what stands above it
   * @param number whether it holds numbers, which stand to the right and are never broken
   */
  private record Column(String title, boolean number) {}

  private TextTable(List<Column> columns) {
    this.columns = columns;
  }

  /** A table without columns yet. */
  public static TextTable empty() {
    return new TextTable(new ArrayList<>());
  }

  /** Adds a column of words. Must come before the rows. */
  public TextTable words(String title) {
    return column(new Column(title, false));
  }

  /** Adds a column of numbers. Must come before the rows. */
  public TextTable numbers(String title) {
    return column(new Column(title, true));
  }

  private TextTable column(Column column) {
    if (!rows.isEmpty()) {
      throw new IllegalStateException("columns come before rows, title=" + column.title);
    }
    columns.add(column);
    return this;
  }

  /**
   * Adds a row.
   *
   * @throws IllegalArgumentException if it has not one cell for each column
   */
  public TextTable row(String... cells) {
    if (cells.length != columns.size()) {
      throw new IllegalArgumentException(
          "a row needs a cell for each column: cells="
              + cells.length
              + " columns="
              + columns.size());
    }
    rows.add(List.of(cells));
    return this;
  }

  /** The lines: titles, a rule, and the rows. */
  public List<String> lines(int terminalColumns, Look look) {
    int room = Math.max(20, terminalColumns - 1);
    int[] widths = naturalWidths(look);
    return shrink(widths, room) ? aligned(widths, look) : listed(room, look);
  }

  private int[] naturalWidths(Look look) {
    int[] widths = new int[columns.size()];
    for (int c = 0; c < widths.length; c++) {
      widths[c] = TextWidth.columns(look.glyphs().text(columns.get(c).title()));
      for (List<String> row : rows) {
        widths[c] = Math.max(widths[c], TextWidth.columns(look.glyphs().text(row.get(c))));
      }
    }
    return widths;
  }

  /** Takes width from the widest column of words until all fit; false if they cannot. */
  private boolean shrink(int[] widths, int room) {
    int total = 1 - GAP;
    for (int width : widths) {
      total += width + GAP;
    }
    while (total > room) {
      int widest = -1;
      for (int c = 0; c < widths.length; c++) {
        boolean shrinks = !columns.get(c).number() && widths[c] > NARROWEST_WORDS;
        if (shrinks && (widest < 0 || widths[c] > widths[widest])) {
          widest = c;
        }
      }
      if (widest < 0) {
        return false;
      }
      widths[widest]--;
      total--;
    }
    return true;
  }

  private List<String> aligned(int[] widths, Look look) {
    List<String> lines = new ArrayList<>();
    addAligned(lines, columns.stream().map(Column::title).toList(), widths, Style.STRONG, look);
    Line rule = new Line(look).add(" ");
    for (int c = 0; c < widths.length; c++) {
      rule.add(look.glyphs().rule().repeat(widths[c])).add(" ".repeat(GAP));
    }
    lines.add(rule.render(Integer.MAX_VALUE));
    rows.forEach(row -> addAligned(lines, row, widths, Style.PLAIN, look));
    return lines;
  }

  private void addAligned(
      List<String> lines, List<String> cells, int[] widths, Style style, Look look) {
    List<List<String>> wrapped = new ArrayList<>();
    int height = 1;
    for (int c = 0; c < widths.length; c++) {
      wrapped.add(TextWidth.wrap(look.glyphs().text(cells.get(c)), widths[c]));
      height = Math.max(height, wrapped.get(c).size());
    }
    for (int i = 0; i < height; i++) {
      Line line = new Line(look).add(" ");
      for (int c = 0; c < widths.length; c++) {
        String text = i < wrapped.get(c).size() ? wrapped.get(c).get(i) : "";
        boolean right = columns.get(c).number();
        String cell =
            right ? TextWidth.padLeft(text, widths[c]) : TextWidth.padRight(text, widths[c]);
        line.add(style, cell).add(" ".repeat(GAP));
      }
      lines.add(line.render(Integer.MAX_VALUE));
    }
  }

  private List<String> listed(int room, Look look) {
    List<String> lines = new ArrayList<>();
    for (List<String> row : rows) {
      if (!lines.isEmpty()) {
        lines.add("");
      }
      for (int c = 0; c < columns.size(); c++) {
        String text = look.glyphs().text(columns.get(c).title() + ": " + row.get(c));
        for (String part : TextWidth.wrap(text, room - 1)) {
          lines.add(" " + part);
        }
      }
    }
    return lines;
  }
}
