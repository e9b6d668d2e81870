package io.github.platenwire.report;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * A table of a page: its head is repeated on each sheet of paper, its rows are never broken. The
 * same table can be handed on as CSV. Not thread-safe.
 */
public final class PageTable {
  private static final String HIDDEN = "hidden";

  private final String name;
  private final String caption;
  private final List<Column> columns = new ArrayList<>();
  private final List<Row> rows = new ArrayList<>();

  /**
   * One column.
   *
   * @param heading for people
   * @param key the heading in CSV
   * @param style of its cells
   */
  private record Column(String heading, String key, String style) {}

  /**
   * One row: cells, or the heading of those that follow.
   *
   * @param heading empty for an ordinary row
   */
  private record Row(List<Cell> cells, Optional<Inline> heading) {}

  private PageTable(String name, String caption) {
    this.name = name;
    this.caption = caption;
  }

  /**
   * A table without columns yet.
   *
   * @param name short and fixed: lower-case words with hyphens; the CSV file's name
   * @param caption one line above it; empty for none
   */
  public static PageTable named(String name, String caption) {
    return new PageTable(name, caption);
  }

  /** Adds a column of words. Must come before the rows. */
  public PageTable words(String heading) {
    return column(new Column(heading, heading, "words"));
  }

  /** Adds a column of words that are never wrapped. Must come before the rows. */
  public PageTable names(String heading) {
    return column(new Column(heading, heading, "words whole"));
  }

  /**
   * Adds a column of numbers, which stand to the right. Must come before the rows.
   *
   * @param key the heading in CSV, with the unit of the full value, such as {@code strength_mpa}
   */
  public PageTable numbers(String heading, String key) {
    return column(new Column(heading, key, "number"));
  }

  /** A column of numbers whose cells hand on what they show. */
  public PageTable numbers(String heading) {
    return numbers(heading, heading);
  }

  /** Adds a column that only other programs see. Must come before the rows. */
  public PageTable hidden(String key) {
    return column(new Column("", key, HIDDEN));
  }

  private PageTable column(Column column) {
    if (!rows.isEmpty()) {
      throw new IllegalStateException("columns come before rows, heading=" + column.heading);
    }
    columns.add(column);
    return this;
  }

  /**
   * Adds a row.
   *
   * @throws IllegalArgumentException if it has not one cell for each column
   */
  public PageTable row(Cell... cells) {
    if (cells.length != columns.size()) {
      throw new IllegalArgumentException(
          "a row needs a cell for each column: cells="
              + cells.length
              + " columns="
              + columns.size());
    }
    rows.add(new Row(List.of(cells), Optional.empty()));
    return this;
  }

  /** Adds a row of plain words. */
  public PageTable row(String... cells) {
    return row(Arrays.stream(cells).map(Cell::of).toArray(Cell[]::new));
  }

  /** Adds a heading over the rows that follow; other programs do not see it. */
  public PageTable group(Inline heading) {
    rows.add(new Row(List.of(), Optional.of(heading)));
    return this;
  }

  /** Whether it has no row. */
  public boolean isEmpty() {
    return rows.isEmpty();
  }

  String name() {
    return name;
  }

  /** Head and rows for CSV. */
  List<List<String>> values() {
    List<List<String>> values = new ArrayList<>();
    values.add(columns.stream().map(Column::key).toList());
    for (Row row : rows) {
      if (row.heading.isEmpty()) {
        values.add(row.cells.stream().map(Cell::value).toList());
      }
    }
    return values;
  }

  String markup() {
    StringBuilder out = new StringBuilder();
    if (!caption.isEmpty()) {
      out.append("<p class=\"caption\">").append(Markup.escape(caption)).append("</p>\n");
    }
    out.append("<table class=\"data\">\n");
    out.append("<thead><tr>");
    for (Column column : shown()) {
      out.append("<th scope=\"col\" class=\"").append(column.style).append("\">");
      out.append(Markup.escape(column.heading)).append("</th>");
    }
    out.append("</tr></thead>\n");
    boolean parts = !rows.isEmpty() && rows.get(0).heading.isPresent();
    out.append(parts ? "" : "<tbody>\n");
    for (int i = 0; i < rows.size(); i++) {
      if (rows.get(i).heading.isPresent()) {
        // A part of its own, which paper breaks only where it must
        out.append(i == 0 ? "" : "</tbody>\n").append("<tbody class=\"part\">\n");
      }
      append(out, rows.get(i));
    }
    return out.append("</tbody></table>\n").toString();
  }

  private List<Column> shown() {
    return columns.stream().filter(column -> !column.style.equals(HIDDEN)).toList();
  }

  private void append(StringBuilder out, Row row) {
    out.append("<tr>");
    row.heading.ifPresent(
        heading ->
            out.append("<th scope=\"rowgroup\" class=\"group\" colspan=\"")
                .append(shown().size())
                .append("\">")
                .append(heading.markup())
                .append("</th>"));
    for (int i = 0; i < row.cells.size(); i++) {
      Cell cell = row.cells.get(i);
      if (columns.get(i).style.equals(HIDDEN)) {
        continue;
      }
      String tone = cell.tone() == Tone.PLAIN ? "" : " " + cell.tone().style();
      out.append("<td class=\"").append(columns.get(i).style).append(tone).append("\">");
      out.append(cell.shown().markup()).append("</td>");
    }
    out.append("</tr>\n");
  }
}
