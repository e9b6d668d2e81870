package io.github.platenwire.terminal;

import java.util.ArrayList;
import java.util.List;

/** One line while it is put together out of styled pieces. Not thread-safe. */
final class Line {
  private final Look look;
  private final List<Piece> pieces = new ArrayList<>();
  private int columns;

  private record Piece(Style style, String text) {}

  Line(Look look) {
    this.look = look;
  }

  /** Adds a text in a style, made safe to write. */
  Line add(Style style, String raw) {
    String text = look.glyphs().text(raw);
    pieces.add(new Piece(style, text));
    columns += TextWidth.columns(text);
    return this;
  }

  /** Adds a text without style, made safe to write. */
  Line add(String raw) {
    return add(Style.PLAIN, raw);
  }

  /** Adds spaces up to a column, counted from 0; nothing if the line is already there. */
  Line to(int column) {
    return add(" ".repeat(Math.max(0, column - columns)));
  }

  int columns() {
    return columns;
  }

  /** The line in at most so many columns, without spaces at its end; a sign shows a cut. */
  String render(int room) {
    String sign = columns > room ? TextWidth.head(look.glyphs().cut(), room) : "";
    int left = Math.min(columns, room) - TextWidth.columns(sign);
    StringBuilder out = new StringBuilder();
    for (Piece piece : pieces) {
      String text = TextWidth.head(piece.text, left);
      left -= TextWidth.columns(text);
      out.append(look.palette().paint(piece.style, text));
      if (text.length() < piece.text.length()) {
        break;
      }
    }
    return out.append(sign).toString().stripTrailing();
  }
}
