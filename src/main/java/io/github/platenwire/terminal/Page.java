package io.github.platenwire.terminal;

import java.util.ArrayList;
import java.util.List;

/** A page of text while it is put together: headings, sentences, tables. Not thread-safe. */
final class Page {
  private static final int NARROWEST = 30;

  private final int columns;
  private final int room;
  private final Look look;
  private final List<String> lines = new ArrayList<>();

  /** A page as wide as the terminal. */
  Page(int columns, Look look) {
    this.columns = columns;
    this.room = Math.max(NARROWEST, columns - 1);
    this.look = look;
  }

  /** How many columns a line has. */
  int room() {
    return room;
  }

  Look look() {
    return look;
  }

  Page blank() {
    lines.add("");
    return this;
  }

  /** A heading with an empty line before it. */
  Page heading(String title) {
    blank();
    return paragraph(" ", Style.STRONG, title);
  }

  /** One entry of a list. */
  Page item(String text) {
    return paragraph("   - ", Style.PLAIN, text);
  }

  /** A sentence or two, broken between words, its later lines as far in as its first. */
  Page paragraph(String beginning, Style style, String text) {
    Line line = new Line(look).add(beginning);
    int column = line.columns();
    for (String part : TextWidth.wrap(look.glyphs().text(text), room - column)) {
      lines.add(line.add(style, part).render(room));
      line = new Line(look).to(column);
    }
    return this;
  }

  Page line(Line line) {
    lines.add(line.render(room));
    return this;
  }

  Page table(TextTable table) {
    lines.addAll(table.lines(columns, look));
    return this;
  }

  List<String> lines() {
    return List.copyOf(lines);
  }
}
